import {
  type Box,
  clipLine,
  directionInView,
  type FacePlacement,
  inside,
  placeWindow,
  seenFromSide,
  segmentsOf,
  toDrawing,
  type Xy,
} from '#lib/core/drawing/index'
import type { Region } from '#lib/core/geometry/types'
import type { PlannedPly } from '#lib/core/repair/types'
import type { PatchSheet } from './types'

/** What is drawn true to size for one ply, as the one who lays it sees it; mm, y down, from the outline's corner. */
export interface TemplatePicture {
  readonly ply: PlannedPly
  readonly widthMm: number
  readonly heightMm: number
  readonly outline: readonly (readonly Xy[])[]
  readonly opening: readonly (readonly Xy[])[]
  readonly dowels: readonly { readonly tag: string; readonly at: Xy }[]
  readonly placement: FacePlacement
  readonly seenFrom: 'cavity' | 'back'
  /** The fibre direction as it runs on this picture: degrees, counter-clockwise from the right. */
  readonly directionInViewDeg: number
}

export function templatePicture(sheet: PatchSheet, ply: PlannedPly): TemplatePicture {
  const seenFrom = seenFromSide(sheet.input.side)
  const mirrored = seenFrom === 'back'
  const [uMin, vMin, uMax, vMax] = ply.boundsMm
  const placement = placeWindow(ply.boundsMm, [0, 0], mirrored)
  const loops = (regions: readonly Region[]) =>
    regions.flatMap((region) =>
      [region.outer, ...region.holes].map((loop) => loop.map((point) => toDrawing(placement, point))),
    )
  const outline = loops(ply.outline)
  return {
    ply,
    widthMm: uMax - uMin,
    heightMm: vMax - vMin,
    outline,
    opening: loops([sheet.patch.opening]),
    dowels: sheet.input.area.dowels
      .map((dowel) => ({ tag: dowel.tag, at: toDrawing(placement, dowel.at) }))
      .filter(({ at }) => inside(at, outline)),
    placement,
    seenFrom,
    directionInViewDeg: directionInView(ply.directionDeg, mirrored),
  }
}

/** Whether any of the ply shows in a window of the picture. */
export function showsIn(picture: TemplatePicture, window: Box): boolean {
  const middle: Xy = [(window.left + window.right) / 2, (window.top + window.bottom) / 2]
  if (inside(middle, picture.outline)) return true
  return picture.outline.some((loop) => segmentsOf(loop, true).some((segment) => touches(segment, window)))
}

function touches([a, b]: readonly [Xy, Xy], window: Box): boolean {
  return clipLine([a, b], false, window).length > 0
}
