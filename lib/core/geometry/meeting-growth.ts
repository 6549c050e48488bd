import { distanceBetweenLoops } from './distance'
import { pointInRegion } from './inside'
import { loopsOf } from './region'
import type { Region } from './types'

/**
 * How far two sets of regions must each grow until they meet, mm: half the least distance between them; 0 where they
 * touch, overlap or lie in one another already. True offsets with round corners keep distances, so this holds for any
 * outlines. RangeError on a set without regions.
 */
export function meetingGrowthMm(a: readonly Region[], b: readonly Region[]): number {
  if (a.length === 0 || b.length === 0) throw new RangeError('nothing to meet: a set has no regions')
  if (liesIn(a, b) || liesIn(b, a)) return 0
  const distances = loopsOf(a).flatMap((one) => loopsOf(b).map((other) => distanceBetweenLoops(one, other)))
  return distances.reduce((least, mm) => Math.min(least, mm), Infinity) / 2
}

/** Whether a piece of one lies in the other; where their outlines cross the distance tells it. */
function liesIn(inner: readonly Region[], outer: readonly Region[]): boolean {
  return inner.some(({ outer: loop }) => outer.some((region) => pointInRegion(loop[0]!, region)))
}
