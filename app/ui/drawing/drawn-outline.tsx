import type { Box, DrawnOutline, Xy } from '#lib/core/drawing/index'
import type { Point } from '#lib/core/geometry/index'
import styles from './drawing.module.css'

export interface DrawnMark {
  readonly at: Xy
  /** Beside the pointer: what caught it, and how long the edge is that is being drawn. */
  readonly words: string
  readonly caught: boolean
}

/** Handles keep their size on the screen, px. */
const size = { corner: 5, middle: 4, finger: 22, cross: 11, words: 13 } as const
/** An edge shorter than this has no handle in its middle, px. */
const leastForHandle = 34

/** The outline that is being drawn, over the face: corners, handles on its edges, where it crosses itself, the pointer's catch. */
export function DrawnOutlineOver({
  outline,
  crossings,
  mark,
  cursor,
  place,
  mmPerPx,
  window,
}: {
  readonly outline: DrawnOutline
  readonly crossings: readonly Point[]
  readonly mark: DrawnMark | null
  /** Where the keyboard's cursor stands. */
  readonly cursor: Xy | null
  /** From the face to the sheet. */
  readonly place: (point: Point) => Xy
  readonly mmPerPx: number
  /** What is shown of the sheet: words stand on the side that has room. */
  readonly window: Box
}) {
  const points = outline.points.map(place)
  const last = points[points.length - 1]
  const d =
    points.length === 0 ? '' : `M${points.map(([x, y]) => `${x} ${y}`).join('L')}${outline.closed ? 'Z' : ''}`
  const leftward = mark !== null && mark.at[0] > (window.left + window.right) / 2
  const px = (count: number) => count * mmPerPx
  const edges = points
    .map((from, index) => ({
      from,
      index,
      to: points[index + 1] ?? (outline.closed ? points[0] : undefined),
    }))
    .filter(
      ({ from, to }) => to !== undefined && Math.hypot(to[0] - from[0], to[1] - from[1]) > px(leastForHandle),
    )
  return (
    <g>
      <path d={d} className={outline.closed ? styles.drawnClosed : styles.drawn} />
      {mark && last && !outline.closed ? (
        <path d={`M${last[0]} ${last[1]}L${mark.at[0]} ${mark.at[1]}`} className={styles.rubber} />
      ) : null}
      {edges.map(({ from, to, index }) => (
        <circle
          key={`middle ${index}`}
          cx={(from[0] + to![0]) / 2}
          cy={(from[1] + to![1]) / 2}
          r={px(size.middle)}
          className={styles.middle}
        />
      ))}
      {points.map(([x, y], index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the order
        <g key={`corner ${index}`}>
          <circle cx={x} cy={y} r={px(size.finger)} className={styles.finger} />
          <rect
            x={x - px(size.corner)}
            y={y - px(size.corner)}
            width={px(2 * size.corner)}
            height={px(2 * size.corner)}
            className={outline.selected === index ? styles.cornerChosen : styles.corner}
          />
        </g>
      ))}
      {crossings.map((point) => {
        const [x, y] = place(point)
        return <circle key={`${x} ${y}`} cx={x} cy={y} r={px(size.cross)} className={styles.crossing} />
      })}
      {cursor ? <Cross at={cursor} arm={px(size.cross)} className={styles.cursor ?? ''} /> : null}
      {mark ? (
        <>
          {mark.caught ? (
            <circle cx={mark.at[0]} cy={mark.at[1]} r={px(size.corner + 2)} className={styles.caught} />
          ) : null}
          <text
            x={mark.at[0] + (leftward ? -px(14) : px(14))}
            textAnchor={leftward ? 'end' : 'start'}
            y={mark.at[1] - px(12)}
            fontSize={px(size.words)}
            strokeWidth={px(4)}
            className={styles.catchWords}
          >
            {mark.words}
          </text>
        </>
      ) : null}
    </g>
  )
}

function Cross({ at: [x, y], arm, className }: { at: Xy; arm: number; className: string }) {
  return <path d={`M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`} className={className} />
}
