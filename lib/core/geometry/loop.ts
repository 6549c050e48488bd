import { samePointMm } from './tolerance'
import type { Bounds, Loop, Point } from './types'

/** Area inside a loop in mm2: positive when it runs counter-clockwise, negative when clockwise (shoelace formula). */
export function signedArea(loop: Loop): number {
  const [u0, v0] = loop[0] ?? [0, 0]
  let doubled = 0
  for (const [from, to] of edgesOf(loop)) {
    doubled += (from[0] - u0) * (to[1] - v0) - (to[0] - u0) * (from[1] - v0)
  }
  return doubled / 2
}

/** Area inside a loop in mm2, whichever way it runs. */
export function loopArea(loop: Loop): number {
  return Math.abs(signedArea(loop))
}

export function loopPerimeter(loop: Loop): number {
  return edgesOf(loop).reduce((sum, [from, to]) => sum + distanceBetweenPoints(from, to), 0)
}

/** RangeError on a loop without points. */
export function loopBounds(loop: Loop): Bounds {
  if (loop.length === 0) throw new RangeError('a loop without points has no bounds')
  let [uMin, vMin, uMax, vMax] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [u, v] of loop) {
    uMin = Math.min(uMin, u)
    vMin = Math.min(vMin, v)
    uMax = Math.max(uMax, u)
    vMax = Math.max(vMax, v)
  }
  return [uMin, vMin, uMax, vMax]
}

/** The loop run counter-clockwise from its first point; the way of outer loops. */
export function counterClockwise(loop: Loop): Loop {
  return signedArea(loop) < 0 ? reversed(loop) : loop
}

/** The loop run clockwise from its first point; the way of holes. */
export function clockwise(loop: Loop): Loop {
  return signedArea(loop) > 0 ? reversed(loop) : loop
}

export function reversed(loop: Loop): Loop {
  return [...loop.slice(0, 1), ...loop.slice(1).reverse()]
}

/** Without points that repeat the one before, and without a last point that repeats the first. */
export function dropRepeatedPoints(loop: Loop, toleranceMm = samePointMm): Loop {
  const kept: Point[] = []
  for (const point of loop) {
    const last = kept.at(-1)
    if (last === undefined || distanceBetweenPoints(last, point) > toleranceMm) kept.push(point)
  }
  while (kept.length > 1 && distanceBetweenPoints(kept[0]!, kept.at(-1)!) <= toleranceMm) kept.pop()
  return kept
}

/** The closed loop's edges, the last one back to the first point. */
export function edgesOf(loop: Loop): readonly (readonly [Point, Point])[] {
  return loop.map((point, index) => [point, loop[(index + 1) % loop.length]!] as const)
}

export function distanceBetweenPoints(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1])
}
