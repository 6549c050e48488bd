import { difference, union } from './combine'
import { grow } from './grow'
import { area, perimeter } from './region'
import { simplifyRegion } from './simplify'
import { chordErrorMm, gridMm } from './tolerance'
import type { Region } from './types'

/** Left out after two offsets: the points that their rounding leaves beside the outline, mm. */
const tidyMm = 0.002

/**
 * Corners that point into the region opened to a least radius: grown by it and shrunk again (morphological closing),
 * so nothing of the region is lost; notches and gaps narrower than twice the radius fill up. Corners that point
 * outwards stay as they are. A region without such corners comes back as it is. RangeError on a negative radius.
 */
export function openInsideCorners(region: Region, radiusMm: number): Region {
  if (!(radiusMm >= 0)) throw new RangeError(`corner radius must be at least 0 mm, got ${radiusMm}`)
  const closed = grow(grow([region], radiusMm), -radiusMm)
  const noiseMm2 = perimeter([region]) * gridMm * 2 + chordErrorMm * chordErrorMm
  if (area(difference(closed, [region])) <= noiseMm2) return region
  const pieces = union([region, ...closed]).map((piece) => simplifyRegion(piece, tidyMm))
  return pieces.reduce((largest, piece) => (area([piece]) > area([largest]) ? piece : largest), region)
}
