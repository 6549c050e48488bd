import { selfCrossings } from './crossings'
import { dropRepeatedPoints } from './loop'
import type { Loop } from './types'

/** Longer outlines are not typed in the wrong order; they are drawn wrong. */
const mostPoints = 200

/**
 * The same points in an order that does not cross itself: wherever two edges cross, the run of points between them is
 * turned round, which shortens the line each time (2-opt). Null when that does not end in a clean outline. A person
 * must look at the answer: points in the wrong order can be joined in more than one way.
 */
export function uncrossed(loop: Loop): Loop | null {
  let points = dropRepeatedPoints(loop)
  if (points.length > mostPoints) return null
  for (let round = 0; round < 10 * mostPoints; round++) {
    const meetings = selfCrossings(points, mostPoints * mostPoints)
    if (meetings.length === 0) return points
    const crossing = meetings.find(({ kind }) => kind === 'crossing')
    if (crossing === undefined) return null
    const [first, second] = crossing.edges
    points = [
      ...points.slice(0, first + 1),
      ...points.slice(first + 1, second + 1).reverse(),
      ...points.slice(second + 1),
    ]
  }
  return null
}
