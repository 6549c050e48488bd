import { type Orientation, pageSize } from './paper'
import type { PaperName } from './paper-sizes'

/** Where a template's picture may lie on a page, mm from the page's top left corner. */
export interface Area {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** One page of a template: which part of the picture it shows, and where. Picture coordinates are 1:1 mm, y down. */
export interface TemplatePage {
  readonly orientation: Orientation
  readonly area: Area
  /** Point of the picture that lies at the area's top left corner. */
  readonly origin: readonly [number, number]
  /** strip: words stand in a strip at the foot; inside: the picture needs the page, words stand in what it leaves. */
  readonly words: 'strip' | 'inside'
  readonly tile: Tile | null
}

/** Column and row count from 0; "B2" is the second row's second tile. */
export interface Tile {
  readonly column: number
  readonly row: number
  readonly columns: number
  readonly rows: number
}

export const marginMm = 10
export const stripHeightMm = 28
const stripGapMm = 2
/** Neighbouring tiles show so much of the same picture, to be laid over each other. */
export const overlapMm = 12

/** The page is never turned by the layout, so upright is tried first and landscape before any tiling. */
const orientations: readonly Orientation[] = ['portrait', 'landscape']

/** Room of a page inside its margins, with the strip left out where one stands. */
export function areaOf(paper: PaperName, orientation: Orientation, words: TemplatePage['words']): Area {
  const { widthMm, heightMm } = pageSize(paper, orientation)
  const strip = words === 'strip' ? stripHeightMm + stripGapMm : 0
  return {
    left: marginMm,
    top: marginMm,
    width: widthMm - 2 * marginMm,
    height: heightMm - 2 * marginMm - strip,
  }
}

/** The strip's own room at the foot of a page. */
export function stripOf(paper: PaperName, orientation: Orientation): Area {
  const { widthMm, heightMm } = pageSize(paper, orientation)
  const top = heightMm - marginMm - stripHeightMm
  return { left: marginMm, top, width: widthMm - 2 * marginMm, height: stripHeightMm }
}

/** Shares of the free room that lie left of and above a picture: in the middle first, then to one side. */
const alignments: readonly (readonly [number, number])[] = [
  [0.5, 0.5],
  [1, 0.5],
  [0.5, 0],
  [1, 0],
]

/** Single pages that hold a picture of this size whole, the most orderly first. */
export function wholePages(paper: PaperName, widthMm: number, heightMm: number): readonly TemplatePage[] {
  const slack = 1e-6
  return (['strip', 'inside'] as const).flatMap((words) =>
    orientations.flatMap((orientation): readonly TemplatePage[] => {
      const area = areaOf(paper, orientation, words)
      if (widthMm > area.width + slack || heightMm > area.height + slack) return []
      return alignments.map(([left, above]) => ({
        orientation,
        area,
        origin: [(widthMm - area.width) * left, (heightMm - area.height) * above],
        words,
        tile: null,
      }))
    }),
  )
}

/**
 * The picture cut into tiles that overlap, in rows from the top; `isWanted` leaves out tiles that would be blank.
 * The orientation that needs fewer tiles is taken.
 */
export function tiledPages(
  paper: PaperName,
  widthMm: number,
  heightMm: number,
  isWanted: (origin: readonly [number, number], area: Area) => boolean,
): readonly TemplatePage[] {
  const choices = orientations.map((orientation) => {
    const area = areaOf(paper, orientation, 'strip')
    const columns = tilesAlong(widthMm, area.width)
    const rows = tilesAlong(heightMm, area.height)
    const left = (widthMm - covered(columns, area.width)) / 2
    const top = (heightMm - covered(rows, area.height)) / 2
    const pages: TemplatePage[] = []
    for (let row = 0; row < rows; row += 1) {
      for (let column = 0; column < columns; column += 1) {
        const origin = [
          left + column * (area.width - overlapMm),
          top + row * (area.height - overlapMm),
        ] as const
        const tile = { column, row, columns, rows }
        if (isWanted(origin, area)) pages.push({ orientation, area, origin, words: 'strip', tile })
      }
    }
    return pages
  })
  return choices.reduce((best, pages) => (pages.length < best.length ? pages : best))
}

function tilesAlong(length: number, page: number): number {
  return Math.max(1, Math.ceil((length - overlapMm - 1e-6) / (page - overlapMm)))
}

function covered(tiles: number, page: number): number {
  return tiles * (page - overlapMm) + overlapMm
}

export function tileName({ column, row }: Tile): string {
  return `${'ABCDEFGHJKLMNPQRSTUVWXYZ'[row] ?? `row ${row + 1} `}${column + 1}`
}

/** A register mark's place, in picture coordinates, in the middle of an overlap. */
export type RegisterMark = readonly [number, number]

/**
 * Marks of all overlaps between tiles, two for each pair of neighbours. A mark belongs to the picture and not to a
 * page, so both pages draw the very same one.
 */
export function registerMarks(pages: readonly TemplatePage[]): readonly RegisterMark[] {
  const marks: RegisterMark[] = []
  for (const page of pages) {
    const { tile, origin, area } = page
    if (tile === null) continue
    const across = area.width - overlapMm
    const down = area.height - overlapMm
    const has = (column: number, row: number) =>
      pages.some((other) => other.tile?.column === column && other.tile.row === row)
    if (has(tile.column + 1, tile.row)) {
      for (const share of markShares) {
        marks.push([origin[0] + across + overlapMm / 2, origin[1] + overlapMm + share * (down - overlapMm)])
      }
    }
    if (has(tile.column, tile.row + 1)) {
      for (const share of markShares) {
        marks.push([origin[0] + overlapMm + share * (across - overlapMm), origin[1] + down + overlapMm / 2])
      }
    }
  }
  return marks
}

const markShares = [0.12, 0.88] as const
