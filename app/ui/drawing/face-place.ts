import { type FaceModel, type FaceSheet, toFace, type Xy } from '#lib/core/drawing/index'
import { type Point, placeWords } from '#lib/core/geometry/index'
import { figure } from '#lib/core/units'

export interface FacePlace {
  readonly model: FaceModel
  readonly at: Point
}

/** The face that a point of a sheet lies on, and where on it; null between the frames. */
export function facePlace(sheet: FaceSheet, models: readonly FaceModel[], [x, y]: Xy): FacePlace | null {
  const index = sheet.faces.findIndex(
    ({ frame }) => x >= frame.left && x <= frame.right && y >= frame.top && y <= frame.bottom,
  )
  const [face, model] = [sheet.faces[index], models[index]]
  return face && model ? { model, at: toFace(face.placement, [x, y]) } : null
}

/** "floor B5, 84 mm from D03 · u 412.3, v 230.1 mm" */
export function facePlaceWords({ model, at }: FacePlace): string {
  const place = placeWords(at, { name: model.areaName, grid: model.grid }, model.dowels)
  return `${place} · u ${figure(at[0], 1)}, v ${figure(at[1], 1)} mm`
}
