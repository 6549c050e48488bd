import { combine, offset } from './clipping'
import { raggedCorners } from './ragged'
import { simplifyRegion } from './simplify'
import { chordErrorMm, gridMm } from './tolerance'
import type { Region } from './types'

/** What each step of a growth by steps may leave out, mm. */
export const stepSimplificationMm = 0.002

/** More sharp corners than this make one large offset slow: each throws an arc over its neighbours' arcs. */
const mostRaggedCorners = 200

/** Shares of an offset of a ragged outline: the first small ones smooth it, the large one then comes cheap. */
const raggedShares = [1 / 16, 3 / 16, 3 / 4] as const

/**
 * Regions grown outwards by `mm` with round corners, or shrunk when it is negative: true offsets. Every point of the
 * new outline lies `mm` from the old one, less at most 0.005 mm for chords; an outline with over 200 sharp corners
 * (traced, noisy) goes in three parts and is that of `mm` give or take `steppedErrorMm(1)`. Regions that meet come
 * out as one, narrow necks fall apart, what is narrower than twice the shrinkage is gone. Loops may run either way.
 * RangeError on a length that is no number.
 */
export function grow(regions: readonly Region[], mm: number): readonly Region[] {
  const clean = combine('union', regions, [])
  return isRagged(clean) ? inParts(clean, mm) : offset(clean, mm)
}

/**
 * Grown step by step, each from the one before it: answers the regions after every step. Between steps points are
 * left out within 0.002 mm, which keeps long series on noisy outlines quick; what that adds up to is
 * `steppedErrorMm`. RangeError on a negative step: shrinking does not keep the errors bounded.
 */
export function growSteps(
  regions: readonly Region[],
  stepsMm: readonly number[],
): readonly (readonly Region[])[] {
  let last = combine('union', regions, [])
  let smooth = !isRagged(last)
  return stepsMm.map((stepMm) => {
    if (!(stepMm > -gridMm)) throw new RangeError(`a growing step must be at least 0 mm, got ${stepMm}`)
    if (stepMm < gridMm) return last
    last = smooth ? steppedOut(last, stepMm) : inParts(last, stepMm)
    smooth = true
    return last
  })
}

/**
 * Farthest that an outline may lie off the true one after so many steps of `growSteps`, mm. Growing brings no two
 * sets farther apart than they were, so chords, simplification and rounding of each step add up and no more. The
 * first step of a ragged outline counts for three.
 */
export function steppedErrorMm(steps: number): number {
  return (steps + raggedShares.length - 1) * (chordErrorMm + stepSimplificationMm + gridMm)
}

function isRagged(regions: readonly Region[]): boolean {
  return raggedCorners(regions) > mostRaggedCorners
}

function inParts(regions: readonly Region[], mm: number): readonly Region[] {
  return raggedShares.reduce((last, share) => steppedOut(last, mm * share), regions)
}

function steppedOut(regions: readonly Region[], mm: number): readonly Region[] {
  const grown = offset(regions, mm).map((region) => simplifyRegion(region, stepSimplificationMm))
  return combine('union', grown, [])
}
