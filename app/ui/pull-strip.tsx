import { type PullStrokes, pullStrip } from '#lib/core/drawing/index'
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
  return (
    <div className="sheet" style={{ padding: '10px 12px' }}>
      <Strokes id={id} strokes={pullStrokes(marks, seasons)} />
    </div>
  )
}

/** Strokes at the width of the page, large with their labels. */
export function Strokes({ id, strokes }: { readonly id: string; readonly strokes: PullStrokes }) {
  return (
    <TwoWidths
      id={id}
      widthPx={1340}
      tabletWidthPx={730}
      draw={(medium) =>
        pullStrip(strokes, { kind: 'large', widthPx: medium.kind === 'screen' ? medium.widthPx : 1340 })
      }
    />
  )
}

/** The same in a row of the rack. */
export function SmallPullStrip({ id, marks }: { readonly id: string; readonly marks: StripMarks }) {
  if (marks.pulls.length === 0) return <span className="note">no pull yet</span>
  return <DisplayList id={id} list={pullStrip(pullStrokes(marks, []), { kind: 'small', widthPx: 150 })} />
}
