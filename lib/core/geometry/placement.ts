import { unitVector } from './direction'
import { counterClockwise } from './loop'
import { orientRegion } from './region'
import type { Loop, Point, Region } from './types'

/**
 * Where a drawn outline lies on a face. Mirrored first (u becomes -u, about the v axis through the reference), then
 * turned counter-clockwise about the reference, then shifted.
 */
export interface Placement {
  readonly shiftMm: Point
  readonly turnDeg: number
  readonly mirrored: boolean
}

/** As drawn. */
export const asDrawn: Placement = { shiftMm: [0, 0], turnDeg: 0, mirrored: false }

/** The point of the drawing that mirror and turn leave in place when nothing else is said. */
const ownOrigin: Point = [0, 0]

export function placePoint(
  [u, v]: Point,
  { shiftMm, turnDeg, mirrored }: Placement,
  reference: Point = ownOrigin,
): Point {
  const own = (u - reference[0]) * (mirrored ? -1 : 1)
  const up = v - reference[1]
  if (!Number.isFinite(turnDeg)) throw new RangeError(`a turn must be a number of degrees, got ${turnDeg}`)
  const [cos, sin] = unitVector((turnDeg * Math.PI) / 180)
  return [reference[0] + own * cos - up * sin + shiftMm[0], reference[1] + own * sin + up * cos + shiftMm[1]]
}

/** A placed outline runs counter-clockwise whether it was mirrored or not. */
export function placeLoop(loop: Loop, placement: Placement, reference?: Point): Loop {
  return counterClockwise(loop.map((point) => placePoint(point, placement, reference)))
}

export function placeRegion({ outer, holes }: Region, placement: Placement, reference?: Point): Region {
  const place = (loop: Loop) => loop.map((point) => placePoint(point, placement, reference))
  return orientRegion({ outer: place(outer), holes: holes.map(place) })
}

/** The placement, about the same reference, that brings what was placed back to where it was drawn. */
export function inversePlacement({ shiftMm, turnDeg, mirrored }: Placement): Placement {
  const back: Placement = { shiftMm: [0, 0], turnDeg: mirrored ? turnDeg : -turnDeg, mirrored }
  const [u, v] = placePoint(shiftMm, back)
  return { ...back, shiftMm: [0 - u, 0 - v] }
}
