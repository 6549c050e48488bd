import type { ReactNode } from 'react'

/** A line of a short table: label left, value right, a grey line under the label says what it rests on. */
export function FigureLine({
  name,
  value,
  note,
}: {
  readonly name: string
  /** Null: not known. */
  readonly value: ReactNode
  readonly note?: ReactNode
}) {
  return (
    <div>
      <dt>
        {name}
        {note ? <div className="note">{note}</div> : null}
      </dt>
      <dd>{value ?? <span className="soft">not known</span>}</dd>
    </div>
  )
}
