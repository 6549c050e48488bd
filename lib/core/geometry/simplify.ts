import { distanceBetweenPoints } from './loop'
import { nearestOnSegment } from './segment'
import type { Loop, Point, Region } from './types'

/**
 * The loop with points left out, where no left-out point lies farther than `toleranceMm` from the edge that replaces
 * it; so neither line strays farther than that from the other, nor does the area inside (Douglas and Peucker 1973,
 * from memory). A loop that would keep fewer than three points is answered as it came.
 * Edges that pass each other nearer than the tolerance may cross afterwards. RangeError on a negative tolerance.
 */
export function simplify(loop: Loop, toleranceMm: number): Loop {
  if (!(toleranceMm >= 0)) throw new RangeError(`tolerance must be at least 0 mm, got ${toleranceMm}`)
  if (loop.length <= 3) return loop
  const start = extremeIndex(loop)
  const closed = [...loop.slice(start), ...loop.slice(0, start + 1)]
  const far = farthestFrom(closed[0]!, closed)
  const keep = new Uint8Array(closed.length)
  keep[0] = keep[far] = keep[closed.length - 1] = 1
  const spans: (readonly [number, number])[] = [
    [0, far],
    [far, closed.length - 1],
  ]
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span
    const split = farthestOffChord(closed, from, to, toleranceMm)
    if (split === null) continue
    keep[split] = 1
    spans.push([from, split], [split, to])
  }
  const kept = closed.slice(0, -1).filter((_, index) => keep[index] === 1)
  return kept.length >= 3 ? kept : loop
}

/** Outline and holes simplified, each for itself. */
export function simplifyRegion({ outer, holes }: Region, toleranceMm: number): Region {
  return { outer: simplify(outer, toleranceMm), holes: holes.map((hole) => simplify(hole, toleranceMm)) }
}

/** Lowest point, leftmost among equals: a corner of the hull, so never one to be left out. */
function extremeIndex(loop: Loop): number {
  return loop.reduce((best, point, index) => {
    const lowest = loop[best]!
    return point[1] < lowest[1] || (point[1] === lowest[1] && point[0] < lowest[0]) ? index : best
  }, 0)
}

function farthestFrom(point: Point, points: readonly Point[]): number {
  return points.reduce(
    (best, each, index) =>
      distanceBetweenPoints(point, each) > distanceBetweenPoints(point, points[best]!) ? index : best,
    0,
  )
}

function farthestOffChord(
  points: readonly Point[],
  from: number,
  to: number,
  toleranceMm: number,
): number | null {
  let farthestMm = toleranceMm
  let split: number | null = null
  for (let index = from + 1; index < to; index++) {
    const { mm } = nearestOnSegment(points[index]!, points[from]!, points[to]!)
    if (mm > farthestMm) {
      farthestMm = mm
      split = index
    }
  }
  return split
}
