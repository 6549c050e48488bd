import { edgesOf } from './loop'
import { nearestOnSegment } from './segment'
import { samePointMm } from './tolerance'
import type { Loop, Point, Region } from './types'

export type Whereabouts = 'inside' | 'on' | 'outside'

/** Where a point lies to a loop (even-odd rule); "on" within a millionth of a millimetre of it. */
export function whereInLoop(point: Point, loop: Loop): Whereabouts {
  const [u, v] = point
  let inside = false
  for (const [from, to] of edgesOf(loop)) {
    if (nearestOnSegment(point, from, to).mm <= samePointMm) return 'on'
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
