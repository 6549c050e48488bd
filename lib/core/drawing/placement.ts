import type { Bounds, Point } from '../geometry/types'
import type { FacePlacement, Xy } from './types'

/**
 * Puts a window of the face at `corner` of a drawing. Seen from the back the picture is mirrored left to right,
 * so the window's greatest u lies at the left.
 */
export function placeWindow(window: Bounds, corner: Xy, mirrored: boolean): FacePlacement {
  const [uMin, , uMax, vMax] = window
  return {
    uAtLeft: mirrored ? uMax + corner[0] : uMin - corner[0],
    vAtTop: vMax + corner[1],
    mirrored,
  }
}

export function toDrawing(placement: FacePlacement, [u, v]: Point): Xy {
  return [placement.mirrored ? placement.uAtLeft - u : u - placement.uAtLeft, placement.vAtTop - v]
}

/** The way back, for a pointer on a drawing. */
export function toFace(placement: FacePlacement, [x, y]: Xy): Point {
  return [placement.mirrored ? placement.uAtLeft - x : x + placement.uAtLeft, placement.vAtTop - y]
}

export function loopToDrawing(placement: FacePlacement, loop: readonly Point[]): readonly Xy[] {
  return loop.map((point) => toDrawing(placement, point))
}

/** A direction in degrees from u as it runs on the drawing: unit vector, y down. */
export function directionOnDrawing(placement: FacePlacement, directionDeg: number): Xy {
  const angle = (directionDeg * Math.PI) / 180
  return [(placement.mirrored ? -1 : 1) * Math.cos(angle), -Math.sin(angle)]
}

/** The same direction as an angle in that view, above -90 and up to 90 degrees (a fibre has no head). */
export function directionInView(directionDeg: number, mirrored: boolean): number {
  const turned = ((((mirrored ? -directionDeg : directionDeg) % 180) + 180) % 180) + 0
  return turned > 90 ? turned - 180 : turned
}
