import { flattenArc } from './arc'
import { dropRepeatedPoints } from './loop'
import type { Bounds, Loop, Point } from './types'

/**
 * Counter-clockwise polygon for a circle: its corners lie on the circle, its edges within 0.005 mm inside it.
 * RangeError unless the radius is above 0.
 */
export function circle(centre: Point, radiusMm: number): Loop {
  if (!(radiusMm > 0)) throw new RangeError(`radius of a circle must be above 0 mm, got ${radiusMm}`)
  return flattenArc({ centre, radiusMm, startRad: 0, sweepRad: 2 * Math.PI }).slice(0, -1)
}

/**
 * Counter-clockwise rectangle with round corners inside the given box; radius 0 leaves the corners sharp.
 * RangeError on a box without area, and on a radius below 0 or above half the shorter side.
 */
export function roundedRectangle([uMin, vMin, uMax, vMax]: Bounds, radiusMm: number): Loop {
  const [lengthMm, widthMm] = [uMax - uMin, vMax - vMin]
  if (!(lengthMm > 0 && widthMm > 0)) {
    throw new RangeError(`sides of a rectangle must be above 0 mm, got ${lengthMm} x ${widthMm}`)
  }
  const largestMm = Math.min(lengthMm, widthMm) / 2
  if (!(radiusMm >= 0 && radiusMm <= largestMm)) {
    throw new RangeError(
      `corner radius must be from 0 to ${largestMm} mm, half the shorter side, got ${radiusMm}`,
    )
  }
  const corner = (centre: Point, quarter: number): Loop =>
    radiusMm === 0
      ? [centre]
      : flattenArc({ centre, radiusMm, startRad: (quarter * Math.PI) / 2, sweepRad: Math.PI / 2 })
  return dropRepeatedPoints([
    ...corner([uMin + radiusMm, vMin + radiusMm], 2),
    ...corner([uMax - radiusMm, vMin + radiusMm], 3),
    ...corner([uMax - radiusMm, vMax - radiusMm], 0),
    ...corner([uMin + radiusMm, vMax - radiusMm], 1),
  ])
}
