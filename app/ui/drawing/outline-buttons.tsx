'use client'
import type { OutlineEdit, OutlineHistory } from '#lib/core/drawing/index'
import styles from './drawing.module.css'

/** What can be done to an outline as a whole, as buttons; their words keep their width, so that nothing jumps under the pointer. */
export function OutlineButtons({
  history: { now, past, future },
  edit,
  snapping,
  setSnapping,
}: {
  readonly history: OutlineHistory
  readonly edit: (edit: OutlineEdit) => void
  readonly snapping: boolean
  readonly setSnapping: (on: boolean) => void
}) {
  const { points, closed, selected } = now
  return (
    <div className={styles.tools}>
      <Act name="Undo" off={past.length === 0} act={() => edit({ kind: 'undo' })} />
      <Act name="Redo" off={future.length === 0} act={() => edit({ kind: 'redo' })} />
      <Act
        name={closed ? 'Open it again' : 'Close outline'}
        off={!closed && points.length < 3}
        act={() => edit({ kind: closed ? 'open' : 'close' })}
      />
      <Act
        name="Remove the corner"
        says={selected === null ? 'Remove the corner set last' : `Remove the corner ${selected + 1}`}
        off={points.length === 0}
        act={() => edit({ kind: 'take-back' })}
      />
      <Act name="Begin again" off={points.length === 0} act={() => edit({ kind: 'clear' })} />
      <label className="tick">
        <input type="checkbox" checked={snapping} onChange={({ target }) => setSnapping(target.checked)} />
        Snapping
      </label>
    </div>
  )
}

function Act({
  name,
  says,
  off,
  act,
}: {
  readonly name: string
  /** For a screen reader, beginning with the name. */
  readonly says?: string
  readonly off: boolean
  readonly act: () => void
}) {
  return (
    <button
      type="button"
      className="btn"
      aria-disabled={off}
      {...(says ? { 'aria-label': says } : {})}
      onClick={act}
    >
      {name}
    </button>
  )
}
