import {
  type Box,
  clipLine,
  findRoom,
  inside,
  type Segment,
  segmentsOf,
  type Xy,
} from '#lib/core/drawing/index'
import { blockSizes } from './template-blocks'
import type { Area, RegisterMark, TemplatePage } from './template-layout'
import type { TemplatePicture } from './template-picture'

/** Where the words and bars of a template page stand; in strip mode only what is not in the strip. */
export interface WordPlaces {
  readonly upright: Box
  /** Null: they stand in the strip. */
  readonly inPicture: { readonly across: Box; readonly plan: Box; readonly ply: Box } | null
  /** The fibre arrow, null where even a small one finds no room. */
  readonly arrow: Box | null
}

export const registerRadiusMm = 3
const rasterMm = 3
/** Along a tile's edges stand the words that say what joins there. */
const joinWordsMm = 5
const arrowSides = [46, 34, 24, 18] as const

/** The page's window of the picture, in picture coordinates. */
export function windowOf({ origin, area }: Pick<TemplatePage, 'origin' | 'area'>): Box {
  return { left: origin[0], top: origin[1], right: origin[0] + area.width, bottom: origin[1] + area.height }
}

/** From the picture to the page. */
export function onPage({ origin, area }: TemplatePage, [x, y]: Xy): Xy {
  return [x - origin[0] + area.left, y - origin[1] + area.top]
}

/**
 * Seeks room for the bars, the words and the arrow where no line of the picture crosses them. Null when a bar or the
 * words find none.
 */
export function placeWords(
  page: TemplatePage,
  picture: TemplatePicture,
  marks: readonly RegisterMark[],
): WordPlaces | null {
  const area = boxOf(page.area, page.tile === null ? 0 : joinWordsMm)
  const outline = linesOn(page, picture.outline)
  const opening = linesOn(page, picture.opening)
  const lines = [...outline, ...opening]
  const taken: Box[] = [
    ...marks.map((mark) => about(onPage(page, mark), registerRadiusMm + 1)),
    ...picture.dowels.map(({ at }) => about(onPage(page, at), 4)),
  ]
  const seek = ([widthMm, heightMm]: readonly [number, number], near: Xy): Box | null => {
    const box = findRoom({ widthMm, heightMm, near, stepMm: rasterMm }, area, taken, lines)
    if (box) taken.push(box)
    return box
  }
  const [cx, cy] = [(area.left + area.right) / 2, (area.top + area.bottom) / 2]
  if (page.words === 'strip') {
    const upright = seek(blockSizes.upright, [area.left, area.bottom - blockSizes.upright[1]])
    if (!upright) return null
    return { upright, inPicture: null, arrow: placeArrow(page, picture, area, taken, outline, opening) }
  }
  const across = seek(blockSizes.across, [cx - 52, cy + 34])
  const plan = seek(blockSizes.plan, [across?.left ?? cx - 52, across?.bottom ?? cy])
  const ply = seek(blockSizes.ply, [cx + 55, cy + 34])
  const upright = seek(blockSizes.upright, [cx - 66, cy - 45])
  if (!across || !plan || !ply || !upright) return null
  return {
    upright,
    inPicture: { across, plan, ply },
    arrow: placeArrow(page, picture, area, taken, outline, opening),
  }
}

/** Inside the ply and near its middle; the thin opening line may be crossed if nothing else helps. */
function placeArrow(
  page: TemplatePage,
  picture: TemplatePicture,
  area: Box,
  taken: readonly Box[],
  outline: readonly Segment[],
  opening: readonly Segment[],
): Box | null {
  const loops = picture.outline.map((loop) => loop.map((point) => onPage(page, point)))
  const [x, y] = onPage(page, [picture.widthMm / 2, picture.heightMm / 2])
  for (const lines of [[...outline, ...opening], outline]) {
    for (const side of arrowSides) {
      const wish = {
        widthMm: side,
        heightMm: side,
        near: [x - side / 2, y - side / 2] as const,
        stepMm: rasterMm,
      }
      const isInside = (box: Box) => inside([(box.left + box.right) / 2, (box.top + box.bottom) / 2], loops)
      const box = findRoom(wish, area, taken, lines, isInside)
      if (box) return box
    }
  }
  return null
}

function linesOn(page: TemplatePage, loops: readonly (readonly Xy[])[]): readonly Segment[] {
  const window = windowOf(page)
  return loops.flatMap((loop) =>
    clipLine(loop, true, window).flatMap((piece) =>
      segmentsOf(
        piece.map((point) => onPage(page, point)),
        false,
      ),
    ),
  )
}

function boxOf({ left, top, width, height }: Area, insetMm: number): Box {
  return {
    left: left + insetMm,
    top: top + insetMm,
    right: left + width - insetMm,
    bottom: top + height - insetMm,
  }
}

function about([x, y]: Xy, reach: number): Box {
  return { left: x - reach, top: y - reach, right: x + reach, bottom: y + reach }
}
