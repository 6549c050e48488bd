import { difference, union } from './combine'
import { grow, steppedErrorMm } from './grow'
import { area, orientRegion, perimeter } from './region'
import { simplifyRegion } from './simplify'
import { chordErrorMm, gridMm } from './tolerance'
import type { Region } from './types'

/** Left out after two offsets: the points that their rounding leaves beside the outline, mm. */
const tidyMm = 0.002

export interface RoundedCorners {
  /** The region that came in when nothing had to change or the radius does not fit. */
  readonly region: Region
  /** Area now less area before, mm2: what corners lost, so never above 0. */
  readonly changedAreaMm2: number
  readonly possible: boolean
  /** Why the radius does not fit, in words; null when it does. */
  readonly reason: string | null
}

/**
 * Corners of a cut-out that a router or a sanding disc can't cut sharp, rounded within the outline to a least radius:
 * shrunk by it and grown again. Nothing is added, and corners that point into the cut-out stay as they are. Every
 * point asked for stays within one radius of the cut; where it would not, or where a neck would part or a piece go,
 * the region comes back as it was with the reason: circles below the radius, slots and fingers narrower than twice
 * it, tips sharper than 60 degrees. RangeError on a negative radius.
 */
export function roundCorners(region: Region, radiusMm: number): RoundedCorners {
  assertRadius(radiusMm)
  const asked = [orientRegion(region)]
  const [rounded, second] = grow(grow(asked, -radiusMm), radiusMm)
  if (rounded === undefined || second !== undefined || !holds(rounded, asked, radiusMm)) {
    const reason = `The outline is narrower than ${2 * radiusMm} mm in part, or has a tip sharper than 60 degrees: corners of ${radiusMm} mm radius do not fit.`
    return { region, changedAreaMm2: 0, possible: false, reason }
  }
  const changedAreaMm2 = area([rounded]) - area(asked)
  const chordsMm2 = perimeter(asked) * gridMm * 2 + 2 * Math.PI * radiusMm * chordErrorMm
  if (changedAreaMm2 > -chordsMm2) return { region, changedAreaMm2: 0, possible: true, reason: null }
  return { region: simplifyRegion(rounded, tidyMm), changedAreaMm2, possible: true, reason: null }
}

/** No point of what was asked for lies farther than the radius from what is left. */
function holds(rounded: Region, asked: readonly Region[], radiusMm: number): boolean {
  return area(difference(asked, grow([rounded], radiusMm + steppedErrorMm(2)))) === 0
}

/**
 * Corners that point into the region opened to a least radius: grown by it and shrunk again (morphological closing),
 * so nothing of the region is lost; notches and gaps narrower than twice the radius fill up. Corners that point
 * outwards stay as they are. A region without such corners comes back as it is. RangeError on a negative radius.
 */
export function openInsideCorners(region: Region, radiusMm: number): Region {
  assertRadius(radiusMm)
  const closed = grow(grow([region], radiusMm), -radiusMm)
  const noiseMm2 = perimeter([region]) * gridMm * 2 + chordErrorMm * chordErrorMm
  if (area(difference(closed, [region])) <= noiseMm2) return region
  const pieces = union([region, ...closed]).map((piece) => simplifyRegion(piece, tidyMm))
  return pieces.reduce((largest, piece) => (area([piece]) > area([largest]) ? piece : largest), region)
}

function assertRadius(radiusMm: number): void {
  if (!(radiusMm >= 0)) throw new RangeError(`corner radius must be at least 0 mm, got ${radiusMm}`)
}
