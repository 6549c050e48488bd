import { nearestOnSegment } from './segment'
import { samePointMm } from './tolerance'
import type { Loop, Point, Region } from './types'

export type Whereabouts = 'inside' | 'on' | 'outside'

/**
 * Where a point lies to a loop (even-odd rule); "on" within a millionth of a millimetre of it. Only edges whose box
 * the point lies in or at are measured: for the others the distance can't be that small.
 */
export function whereInLoop(point: Point, loop: Loop): Whereabouts {
  const [u, v] = point
  let inside = false
  for (let index = 0; index < loop.length; index += 1) {
    const from = loop[index]!
    const to = loop[index + 1 === loop.length ? 0 : index + 1]!
    const low = Math.min(from[1], to[1])
    const high = Math.max(from[1], to[1])
    if (v < low - samePointMm || v > high + samePointMm) continue
    if (u > Math.max(from[0], to[0]) + samePointMm) continue
    const besideBox = u < Math.min(from[0], to[0]) - samePointMm
    if (!besideBox && nearestOnSegment(point, from, to).mm <= samePointMm) return 'on'
    const straddles = from[1] > v !== to[1] > v
    if (straddles && u < from[0] + ((v - from[1]) / (to[1] - from[1])) * (to[0] - from[0])) inside = !inside
  }
  return inside ? 'inside' : 'outside'
}

/** On the loop counts as inside. */
export function pointInLoop(point: Point, loop: Loop): boolean {
  return whereInLoop(point, loop) !== 'outside'
}

/** On an outline counts as inside, that of a hole too. */
export function pointInRegion(point: Point, { outer, holes }: Region): boolean {
  return pointInLoop(point, outer) && !holes.some((hole) => whereInLoop(point, hole) === 'inside')
}
