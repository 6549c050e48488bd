import { difference, union } from './combine'
import { grow } from './grow'
import { area, perimeter } from './region'
import { simplifyRegion } from './simplify'
import { chordErrorMm, gridMm } from './tolerance'
import type { Region } from './types'

/** Left out after two offsets: the points that their rounding leaves beside the outline, mm. */
const tidyMm = 0.002

export interface RoundedCorners {
  readonly regions: readonly Region[]
  /** Area now less area before, mm2; never above 0 but for chords. */
  readonly areaChangeMm2: number
  /** How many pieces narrower than twice the radius went, or fell apart: pieces now less pieces before. */
  readonly piecesChange: number
}

/**
 * Corners of a cut-out rounded to a least radius: shrunk by it and grown again (morphological opening). Nothing is
 * added; corners lose their tips and what is narrower than twice the radius goes. Corners that point into the
 * cut-out stay as they are. RangeError on a negative radius.
 */
export function roundCorners(regions: readonly Region[], radiusMm: number): RoundedCorners {
  assertRadius(radiusMm)
  const before = union(regions)
  const rounded = grow(grow(before, -radiusMm), radiusMm).map((region) => simplifyRegion(region, tidyMm))
  return {
    regions: rounded,
    areaChangeMm2: area(rounded) - area(before),
    piecesChange: rounded.length - before.length,
  }
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
