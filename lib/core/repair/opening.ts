import { circle, type Placement, placeLoop, roundedRectangle } from '../geometry/index'
import type { Loop, Region } from '../geometry/types'

/** What an opening was drawn from. Circle and rectangle lie with their middle on the origin before placing. */
export type OpeningShape =
  | { readonly kind: 'circle'; readonly diameterMm: number; readonly placement: Placement }
  | {
      readonly kind: 'rounded-rectangle'
      readonly lengthMm: number
      readonly widthMm: number
      readonly cornerRadiusMm: number
      readonly placement: Placement
    }
  | { readonly kind: 'outline'; readonly points: Loop; readonly placement: Placement }

/** The opening in the area's frame, counter-clockwise. RangeError on sizes that no outline has. */
export function openingRegion(shape: OpeningShape): Region {
  return { outer: placeLoop(loopOf(shape), shape.placement), holes: [] }
}

function loopOf(shape: OpeningShape): Loop {
  if (shape.kind === 'outline') return shape.points
  if (shape.kind === 'circle') return circle([0, 0], shape.diameterMm / 2)
  const { lengthMm, widthMm, cornerRadiusMm } = shape
  return roundedRectangle([-lengthMm / 2, -widthMm / 2, lengthMm / 2, widthMm / 2], cornerRadiusMm)
}
