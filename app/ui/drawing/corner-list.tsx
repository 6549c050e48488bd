'use client'
import { type DrawnOutline, edgeOf, endOfEdge, type OutlineEdit } from '#lib/core/drawing/index'
import styles from './drawing.module.css'
import { ExactField } from './exact-field'

/** The corners of an outline as figures: everything that dragging does can be typed here, and more exactly. */
export function CornerList({
  outline,
  edit,
}: {
  readonly outline: DrawnOutline
  readonly edit: (edit: OutlineEdit) => void
}) {
  if (outline.points.length === 0) {
    return (
      <p className="note">No corner yet. Each one will stand here with its u and v, to be typed exactly.</p>
    )
  }
  return (
    <div className={styles.corners}>
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">Corner</th>
            <th scope="col">u, mm</th>
            <th scope="col">v, mm</th>
            <th scope="col">to the next, mm</th>
            <th scope="col">at, °</th>
            <th scope="col">
              <span className="quiet">Acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {outline.points.map((point, index) => (
            <CornerRow
              // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the order
              key={index}
              {...{ outline, edit, index }}
              u={point[0]}
              v={point[1]}
            />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function CornerRow({
  outline,
  edit,
  index,
  u,
  v,
}: {
  readonly outline: DrawnOutline
  readonly edit: (edit: OutlineEdit) => void
  readonly index: number
  readonly u: number
  readonly v: number
}) {
  const number = index + 1
  const edge = edgeOf(outline, index)
  const end = endOfEdge(outline, index)
  const next = end === null ? null : outline.points[end]
  const select = () => edit({ kind: 'select', index })
  return (
    <tr className={outline.selected === index ? styles.chosen : undefined}>
      <th scope="row">{number}</th>
      <td data-label="u, mm">
        <ExactField
          label={`u of corner ${number}`}
          value={u}
          quantity="length"
          decimals={3}
          focused={select}
          take={(value) => edit({ kind: 'move', index, to: [value, v] })}
        />
      </td>
      <td data-label="v, mm">
        <ExactField
          label={`v of corner ${number}`}
          value={v}
          quantity="length"
          decimals={3}
          focused={select}
          take={(value) => edit({ kind: 'move', index, to: [u, value] })}
        />
      </td>
      <td data-label="to the next, mm">
        {edge ? (
          <ExactField
            label={`Length from corner ${number} to the next`}
            value={edge.lengthMm}
            quantity="length"
            decimals={3}
            above={0}
            take={(lengthMm) =>
              edit({ kind: 'edge', edge: index, lengthMm, directionDeg: edge.directionDeg })
            }
          />
        ) : null}
      </td>
      <td data-label="at, °">
        {edge && edge.lengthMm > 0 ? (
          <ExactField
            label={`Direction from corner ${number} to the next`}
            value={edge.directionDeg}
            quantity="angle"
            decimals={2}
            take={(directionDeg) =>
              edit({ kind: 'edge', edge: index, lengthMm: edge.lengthMm, directionDeg })
            }
          />
        ) : null}
      </td>
      <td>
        <span className={styles.cornerActs}>
          {next ? (
            <button
              type="button"
              className="btn plain"
              aria-label={`Insert a corner after corner ${number}`}
              onClick={() =>
                edit({ kind: 'insert', edge: index, at: [(u + next[0]) / 2, (v + next[1]) / 2] })
              }
            >
              Insert
            </button>
          ) : null}
          <button
            type="button"
            className="btn plain"
            aria-label={`Remove corner ${number}`}
            onClick={() => edit({ kind: 'remove', index })}
          >
            Remove
          </button>
        </span>
      </td>
    </tr>
  )
}
