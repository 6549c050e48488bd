import { pullStrip } from '#lib/core/drawing/index'
import { pullStrokes, type StripMarks } from '#lib/core/log/index'
import { DisplayList } from './drawing/display-list'
import { TwoWidths } from './drawing/two-widths'

type Seasons = readonly { readonly name: string; readonly startsOn: string }[]

/** A mould's pulls as strokes, large with its labels. */
export function LargePullStrip({
  id,
  marks,
  seasons,
}: {
  readonly id: string
  readonly marks: StripMarks
  readonly seasons: Seasons
}) {
  if (marks.pulls.length === 0) {
    return (
      <p className="empty">
        No pull yet. Every pull becomes a stroke here, the taller, the harder it came out.
      </p>
    )
  }
  const strokes = pullStrokes(marks, seasons)
  return (
    <div className="sheet" style={{ padding: '10px 12px' }}>
      <TwoWidths
        id={id}
        widthPx={1340}
        draw={(medium) =>
          pullStrip(strokes, { kind: 'large', widthPx: medium.kind === 'screen' ? medium.widthPx : 1340 })
        }
      />
    </div>
  )
}

/** The same in a row of the rack. */
export function SmallPullStrip({ id, marks }: { readonly id: string; readonly marks: StripMarks }) {
  if (marks.pulls.length === 0) return <span className="note">no pull yet</span>
  return <DisplayList id={id} list={pullStrip(pullStrokes(marks, []), { kind: 'small', widthPx: 150 })} />
}
