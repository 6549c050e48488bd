import { pointInRegion } from './inside'
import { edgesOf } from './loop'
import { loopsOf } from './region'
import { type Nearest, nearestBetweenSegments, nearestOnSegment } from './segment'
import type { Loop, Point, Region } from './types'

type Edge = readonly [Point, Point]

/** Distance from a point to a loop's line, inside or outside alike. RangeError on a loop without points. */
export function distanceToLoop(point: Point, loop: Loop): number {
  if (loop.length === 0) throw new RangeError('a loop without points has no distance')
  return edgesOf(loop).reduce((least, [a, b]) => Math.min(least, nearestOnSegment(point, a, b).mm), Infinity)
}

/** Least distance between the lines of two loops, 0 where they cross or touch. One lying inside the other is no matter. */
export function distanceBetweenLoops(a: Loop, b: Loop): number {
  return nearestOfEdges(edgesOf(a), edgesOf(b)).mm
}

/**
 * The point of a line that comes nearest to the regions: 0 mm where the line reaches into them. `closed` joins the
 * last point to the first; the line is a line then still, so regions that lie inside it keep a distance to it.
 */
export function nearestToPath(
  regions: readonly Region[],
  points: readonly Point[],
  closed: boolean,
): Nearest {
  const inside = points.find((point) => regions.some((region) => pointInRegion(point, region)))
  if (inside !== undefined) return { mm: 0, at: inside }
  return nearestOfEdges(outlineEdges(regions), pathEdges(points, closed))
}

/** Distance of a point from the regions: 0 mm in or on one of them. */
export function nearestToPoint(regions: readonly Region[], point: Point): Nearest {
  return nearestToPath(regions, [point], false)
}

/** The point of the area inside `outline` that comes nearest to the regions: 0 mm where they overlap. */
export function nearestToRegion(regions: readonly Region[], outline: Loop): Nearest {
  const around: Region = { outer: outline, holes: [] }
  const overlapping = regions.find(({ outer }) => pointInRegion(outer[0]!, around))
  if (overlapping !== undefined) return { mm: 0, at: overlapping.outer[0]! }
  return nearestToPath(regions, outline, true)
}

function outlineEdges(regions: readonly Region[]): readonly Edge[] {
  return loopsOf(regions).flatMap(edgesOf)
}

function pathEdges(points: readonly Point[], closed: boolean): readonly Edge[] {
  return closed || points.length === 1 ? edgesOf(points) : edgesOf(points).slice(0, -1)
}

/** The nearest point lies on one of `to`. Pairs whose boxes are farther apart than the best so far are skipped. */
function nearestOfEdges(from: readonly Edge[], to: readonly Edge[]): Nearest {
  if (from.length === 0 || to.length === 0) throw new RangeError('nothing to measure a distance to')
  let best: Nearest = { mm: Infinity, at: to[0]![0] }
  for (const [c, d] of to) {
    for (const [a, b] of from) {
      if (gap(a[0], b[0], c[0], d[0]) >= best.mm || gap(a[1], b[1], c[1], d[1]) >= best.mm) continue
      const nearest = nearestBetweenSegments(a, b, c, d)
      if (nearest.mm < best.mm) best = nearest
    }
    if (best.mm === 0) return best
  }
  return best
}

/** How far the interval between two values lies from another; negative when they overlap. */
function gap(a: number, b: number, c: number, d: number): number {
  return Math.max(Math.min(a, b) - Math.max(c, d), Math.min(c, d) - Math.max(a, b))
}
