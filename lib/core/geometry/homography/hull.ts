import { distanceToLoop } from '../distance'
import { pointInLoop } from '../inside'
import type { Loop, Point } from '../types'

/** The convex hull, counter-clockwise, without points on its edges (Andrew's monotone chain). */
export function convexHull(points: readonly Point[]): Loop {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  return [...chain(sorted), ...chain(sorted.reverse())]
}

/** How far the points reach out of the hull of others: 0 when all lie within. */
export function reachBeyond(points: readonly Point[], hull: Loop): number {
  return points.reduce(
    (most, point) => (pointInLoop(point, hull) ? most : Math.max(most, distanceToLoop(point, hull))),
    0,
  )
}

/** The largest distance between any two of the points. */
export function spanOf(points: readonly Point[]): number {
  const hull = convexHull(points)
  return hull.reduce(
    (most, [u, v]) =>
      hull.reduce((far, other) => Math.max(far, Math.hypot(u - other[0], v - other[1])), most),
    0,
  )
}

/** One side of the hull, without its last point. */
function chain(sorted: readonly Point[]): readonly Point[] {
  const kept: Point[] = []
  for (const point of sorted) {
    while (kept.length > 1 && !turnsLeft(kept.at(-2)!, kept.at(-1)!, point)) kept.pop()
    kept.push(point)
  }
  return kept.slice(0, -1)
}

function turnsLeft(a: Point, b: Point, c: Point): boolean {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0
}
