import type { LocationGrid } from '../repair/types'
import { boxOf } from './boxes'
import { type DrawnFace, faceAt, faceExtent, faceMargins, footMm } from './face-drawing'
import type { FaceModel, SeenFrom } from './face-model'
import { foot, viewWords } from './foot'
import { type Medium, nextReduction, paperRoom, type Sizes, scaleToFit, sizesAt } from './medium'
import { type Packed, packBlocks } from './packing'
import { toDrawing } from './placement'
import { text } from './primitives'
import { shiftBox, shiftItems } from './shift'
import type { Box, DisplayList, FacePlacement, Item, LegendKey, Xy } from './types'

/** Where a face lies on a sheet. */
export interface FaceOnSheet {
  readonly areaName: string
  readonly grid: LocationGrid
  readonly placement: FacePlacement
  /** The frame of its location grid, sheet mm. */
  readonly frame: Box
}

/** One or several faces of a mould on one sheet, all at the same scale. */
export interface FaceSheet {
  readonly list: DisplayList
  readonly faces: readonly FaceOnSheet[]
}

/** Room for the name over an area that stands beside others, paper mm. */
const nameMm = 6.5
/** Between two areas, paper mm. */
const gapMm = 3
const triesOnScreen = 30

/**
 * Faces on one sheet at one scale, beside and below each other as it fits; a single one stands without its name.
 * RangeError without a face, and for one without extent.
 */
export function faceSheet(
  models: readonly FaceModel[],
  medium: Medium,
  seenFrom: SeenFrom = 'cavity',
): FaceSheet {
  const [first] = models
  if (first === undefined) throw new RangeError('a sheet needs a face to show')
  if (models.length === 1) {
    const extent = faceExtent(first)
    const sizes = scaleToFit(extent[2] - extent[0], extent[3] - extent[1], faceMargins, medium)
    const drawn = faceAt(first, sizes, seenFrom)
    const { placement, frame } = drawn
    return { list: drawn.list, faces: [{ areaName: first.areaName, grid: first.grid, placement, frame }] }
  }
  const { sizes, packed } = scaleForAll(models, medium)
  const drawn = models.map((model) => faceAt(model, sizes, seenFrom, false))
  const shifts = packed.places.map(
    ({ left, top }): Xy => [left * sizes.denominator, (top + nameMm) * sizes.denominator],
  )
  const faces = models.map((model, i) => onSheet(model, drawn[i]!, shifts[i]!))
  return {
    list: {
      title: `${first.mouldCode}, all areas, ${viewWords(seenFrom)}`,
      description: models.map((model, i) => `${model.areaName}: ${drawn[i]!.list.description}`).join(' '),
      widthMm: packed.width * sizes.denominator,
      heightMm: (packed.height + footMm) * sizes.denominator,
      denominator: sizes.denominator,
      textMm: sizes.textMm,
      placement: null,
      legend: legendOfAll(drawn),
      omittedLabels: drawn.flatMap(({ list }) => list.omittedLabels),
      items: [
        ...models.flatMap((model, i) => [
          nameOf(model, drawn[i]!.frame, shifts[i]!, sizes),
          ...shiftItems(drawn[i]!.list.items, shifts[i]!),
        ]),
        ...foot(aroundAll(faces), seenFrom, sizes),
      ],
    },
    faces,
  }
}

function aroundAll(faces: readonly FaceOnSheet[]): Box {
  return boxOf(
    faces.flatMap(({ frame }): readonly Xy[] => [
      [frame.left, frame.top],
      [frame.right, frame.bottom],
    ]),
  )
}

/** The sheet with air above and below, so that a flat face can be zoomed into in more than a slit. */
export function padSheet(sheet: FaceSheet, leastHeightMm: number): FaceSheet {
  const { list, faces } = sheet
  const air = (leastHeightMm - list.heightMm) / 2
  if (!(air > 0)) return sheet
  const shift: Xy = [0, air]
  return {
    list: {
      ...list,
      heightMm: leastHeightMm,
      placement: list.placement && { ...list.placement, vAtTop: list.placement.vAtTop + air },
      items: shiftItems(list.items, shift),
    },
    faces: faces.map((face) => ({
      ...face,
      frame: shiftBox(face.frame, shift),
      placement: { ...face.placement, vAtTop: face.placement.vAtTop + air },
    })),
  }
}

/**
 * The sheet laid out again for being looked at so many times larger: names that had no room find it, symbols and
 * words keep their size on the screen. Every face stays where it was on the sheet.
 */
export function relaidSheet(
  sheet: FaceSheet,
  models: readonly FaceModel[],
  zoom: number,
  seenFrom: SeenFrom,
): DisplayList {
  const sizes = sizesAt(sheet.list.denominator / zoom, 'screen')
  const omitted: string[] = []
  const items = models.flatMap((model, i): readonly Item[] => {
    const drawn = faceAt(model, sizes, seenFrom, models.length === 1)
    const was = toDrawing(sheet.faces[i]!.placement, [0, 0])
    const is = toDrawing(drawn.placement, [0, 0])
    const shift: Xy = [was[0] - is[0], was[1] - is[1]]
    omitted.push(...drawn.list.omittedLabels)
    const named = models.length > 1 ? [nameOf(model, drawn.frame, shift, sizes)] : []
    return [...named, ...shiftItems(drawn.list.items, shift)]
  })
  if (models.length > 1) items.push(...foot(aroundAll(sheet.faces), seenFrom, sizes))
  return {
    ...sheet.list,
    denominator: sizes.denominator,
    textMm: sizes.textMm,
    items,
    omittedLabels: omitted,
  }
}

function scaleForAll(
  models: readonly FaceModel[],
  medium: Medium,
): { readonly sizes: Sizes; readonly packed: Packed } {
  const room = paperRoom(medium)
  const extents = models.map(faceExtent)
  const pack = (denominator: number): Packed | null => {
    const blocks = extents.map(([uMin, vMin, uMax, vMax]) => ({
      width: (uMax - uMin) / denominator + faceMargins.left + faceMargins.right + gapMm,
      height: (vMax - vMin) / denominator + faceMargins.top + faceMargins.bottom - footMm + nameMm,
    }))
    const packed = packBlocks(blocks, room.widthMm)
    return packed !== null && packed.height + footMm <= room.heightMm ? packed : null
  }
  const least = extents.reduce((most, [uMin, vMin, uMax, vMax]) => {
    const margins = { ...faceMargins, right: faceMargins.right + gapMm, top: faceMargins.top + nameMm }
    return Math.max(most, scaleToFit(uMax - uMin, vMax - vMin, margins, medium).denominator)
  }, 0)
  return medium.kind === 'paper' ? byStandardScales(least, pack) : bySearch(least, pack)
}

type Pack = (denominator: number) => Packed | null

/** So small that every further step would only shrink the frames round nothing. */
const mostDenominator = 1e5

function byStandardScales(least: number, pack: Pack) {
  for (let denominator = least; denominator < mostDenominator; denominator = nextReduction(denominator)) {
    const packed = pack(denominator)
    if (packed !== null) return { sizes: sizesAt(denominator, 'paper'), packed }
  }
  throw new RangeError('no scale puts all areas on the sheet: the room is too small for their frames')
}

/** The largest scale at which all fit, by halving; the height falls as the scale does, give or take a place. */
function bySearch(least: number, pack: Pack) {
  let low = least
  let high = least
  while (pack(high) === null) {
    low = high
    high *= 2
    if (high > mostDenominator) {
      throw new RangeError('no scale puts all areas on the sheet: the room is too small for their frames')
    }
  }
  for (let i = 0; i < triesOnScreen && high - low > low * 1e-3; i += 1) {
    const middle = (low + high) / 2
    if (pack(middle) === null) low = middle
    else high = middle
  }
  return { sizes: sizesAt(high, 'screen'), packed: pack(high)! }
}

function nameOf(model: FaceModel, frame: Box, shift: Xy, sizes: Sizes): Item {
  const lift = faceMargins.top * 0.62 * sizes.denominator
  return text([frame.left + shift[0], frame.top + shift[1] - lift], model.areaName, sizes.textMm * 1.08, {
    weight: 'semibold',
  })
}

function onSheet(model: FaceModel, { placement, frame }: DrawnFace, shift: Xy): FaceOnSheet {
  const [dx, dy] = shift
  return {
    areaName: model.areaName,
    grid: model.grid,
    frame: shiftBox(frame, shift),
    placement: {
      mirrored: placement.mirrored,
      uAtLeft: placement.uAtLeft + (placement.mirrored ? dx : -dx),
      vAtTop: placement.vAtTop + dy,
    },
  }
}

function legendOfAll(drawn: readonly DrawnFace[]): readonly LegendKey[] {
  return [...new Set(drawn.flatMap(({ list }) => list.legend))]
}
