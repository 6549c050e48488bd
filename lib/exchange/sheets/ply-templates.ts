import { clipLine, type LineStyle, type Xy } from '#lib/core/drawing/index'
import { addPage, closePaper, openPaper, type Paper, rect, rule, setStroke } from './paper'
import type { PaperName } from './paper-sizes'
import {
  barAcross,
  barUpright,
  blockSizes,
  codeBlock,
  codeSideMm,
  directionArrow,
  type PageWords,
  planWords,
  plyWords,
} from './template-blocks'
import { keyPlan, keySideMm } from './template-key-plan'
import {
  type Area,
  type RegisterMark,
  registerMarks,
  stripOf,
  type TemplatePage,
  tiledPages,
  tileName,
  wholePages,
} from './template-layout'
import { showsIn, type TemplatePicture, templatePicture } from './template-picture'
import { onPage, placeWords, registerRadiusMm, type WordPlaces, windowOf } from './template-room'
import type { PatchSheet } from './types'
import { words } from './words'

interface LaidOut {
  readonly picture: TemplatePicture
  readonly pages: readonly TemplatePage[]
  readonly marks: readonly RegisterMark[]
}

/**
 * Templates of all plies true to size, one after another in laying order, each as the one who lays it sees it.
 * A template that fits no page is tiled with overlaps and register marks. A 100 mm bar on both axes of every page
 * says whether the printer kept the size; the file asks for no scaling. RangeError for a plan without plies.
 */
export async function plyTemplates(sheet: PatchSheet): Promise<Uint8Array> {
  const { mould, plan, patch } = sheet
  if (patch.plies.length === 0) throw new RangeError('a plan without plies has no templates')
  const laidOut = patch.plies.map((ply) => layOut(sheet.paper, templatePicture(sheet, ply)))
  const of = laidOut.reduce((total, { pages }) => total + pages.length, 0)
  const title = `${mould.code} ${plan.name}, ply templates 1:1`
  const paper = openPaper(title, `version ${plan.version}`, sheet.printedAt, sheet.paper)
  let number = 0
  for (const { picture, pages, marks } of laidOut) {
    for (const page of pages) {
      number += 1
      addPage(paper, page.orientation)
      const all: PageWords = { sheet, picture, page, number, of }
      drawPicture(paper, page, picture)
      if (page.tile !== null) drawJoins(paper, page, pages, marks)
      drawWords(paper, all, pages, placeWords(page, picture, marks) ?? lastResort(page))
    }
  }
  return closePaper(paper)
}

/**
 * The first single page on which the picture leaves room for bars and words, else one whose strip holds the words
 * while the upright bar crosses a line; tiles when the picture fits no page.
 */
function layOut(paper: PaperName, picture: TemplatePicture): LaidOut {
  const { widthMm, heightMm } = picture
  const candidates = wholePages(paper, widthMm, heightMm)
  const whole =
    candidates.find((page) => placeWords(page, picture, []) !== null) ??
    candidates.find((page) => page.words === 'strip')
  if (whole) return { picture, pages: [whole], marks: [] }
  const pages = tiledPages(paper, widthMm, heightMm, (origin, area) =>
    showsIn(picture, windowOf({ origin, area })),
  )
  return { picture, pages, marks: registerMarks(pages) }
}

/** A page so full of lines that the upright bar must cross some: it stands at the left all the same. */
function lastResort({ area }: TemplatePage): WordPlaces {
  const [width, height] = blockSizes.upright
  const top = area.top + (area.height - height) / 2
  const upright = { left: area.left, top, right: area.left + width, bottom: top + height }
  return { upright, inPicture: null, arrow: null }
}

function drawPicture(paper: Paper, page: TemplatePage, picture: TemplatePicture): void {
  drawLoops(paper, page, picture.opening, 'template-opening')
  drawLoops(paper, page, picture.outline, 'template')
  const { area } = page
  for (const { tag, at } of picture.dowels) {
    const [x, y] = onPage(page, at)
    if (x < area.left || x > area.left + area.width || y < area.top || y > area.top + area.height) continue
    rule(paper, [x - 3, y], [x + 3, y], 'template')
    rule(paper, [x, y - 3], [x, y + 3], 'template')
    words(paper, x + 1, y - 1, tag, { sizeMm: 2.3, role: 'soft' })
  }
}

/** What of the loops lies on the page; a loop that lies on it whole is drawn as one closed path. */
function drawLoops(
  paper: Paper,
  page: TemplatePage,
  loops: readonly (readonly Xy[])[],
  style: LineStyle,
): void {
  const { doc } = paper
  const window = windowOf(page)
  const isInside = ([x, y]: Xy) =>
    x >= window.left - 1e-6 && x <= window.right + 1e-6 && y >= window.top - 1e-6 && y <= window.bottom + 1e-6
  setStroke(paper, style, 'ink')
  for (const loop of loops) {
    const whole = loop.every(isInside)
    const pieces = whole ? [loop] : clipLine(loop, true, window)
    for (const piece of pieces) {
      for (const [i, point] of piece.entries()) {
        const [x, y] = onPage(page, point)
        if (i === 0) doc.moveTo(x, y)
        else doc.lineTo(x, y)
      }
      if (whole) doc.closePath()
      doc.stroke()
    }
  }
}

/** The tile's edge, the register marks in its overlaps, and which tile joins where. */
function drawJoins(
  paper: Paper,
  page: TemplatePage,
  pages: readonly TemplatePage[],
  marks: readonly RegisterMark[],
): void {
  const { area } = page
  const tile = page.tile!
  rect(paper, area.left, area.top, area.width, area.height, 'template-edge')
  for (const mark of marks) drawMark(paper, onPage(page, mark), area)
  const [cx, cy] = [area.left + area.width * 0.3, area.top + area.height * 0.3]
  const sides = [
    { column: -1, row: 0, x: area.left + 3.2, y: cy, turnDeg: -90 },
    { column: 1, row: 0, x: area.left + area.width - 1.6, y: cy, turnDeg: -90 },
    { column: 0, row: -1, x: cx, y: area.top + 3.2, turnDeg: 0 },
    { column: 0, row: 1, x: cx, y: area.top + area.height - 1.6, turnDeg: 0 },
  ]
  for (const { column, row, x, y, turnDeg } of sides) {
    const other = pages.find(
      (each) => each.tile?.column === tile.column + column && each.tile.row === tile.row + row,
    )
    if (!other?.tile) continue
    const text = `${tileName(tile)} joins ${tileName(other.tile)}: lay mark on mark`
    words(paper, x, y, text, { sizeMm: 2.3, anchor: 'middle', turnDeg, haloMm: 0.6 })
  }
}

function drawMark(paper: Paper, [x, y]: Xy, area: Area): void {
  const slack = 1e-6
  if (x < area.left - slack || x > area.left + area.width + slack) return
  if (y < area.top - slack || y > area.top + area.height + slack) return
  const arm = registerRadiusMm * 1.5
  rule(paper, [x - arm, y], [x + arm, y], 'template')
  rule(paper, [x, y - arm], [x, y + arm], 'template')
  paper.doc.circle(x, y, registerRadiusMm).stroke()
}

function drawWords(paper: Paper, all: PageWords, pages: readonly TemplatePage[], places: WordPlaces): void {
  const { picture } = all
  barUpright(paper)(places.upright.left, places.upright.top)
  if (places.arrow) {
    const side = places.arrow.right - places.arrow.left
    directionArrow(paper, picture, side)(places.arrow.left, places.arrow.top)
  }
  if (places.inPicture) {
    const { across, plan, ply } = places.inPicture
    barAcross(paper)(across.left, across.top)
    planWords(paper, all)(plan.left, plan.top)
    plyWords(paper, all)(ply.left, ply.top)
    return
  }
  drawStrip(paper, all, pages)
}

/** The strip at the foot: bar and plan at the left, the ply beside it, key plan or code at the right. */
function drawStrip(paper: Paper, all: PageWords, pages: readonly TemplatePage[]): void {
  const strip = stripOf(paper.name, all.page.orientation)
  const [left, top] = [strip.left, strip.top]
  const right = left + strip.width
  rect(paper, left, top, strip.width, strip.height, 'thin')
  const second = left + blockSizes.across[0] + 1
  rule(paper, [second, top], [second, top + strip.height], 'thin')
  rule(paper, [left, top + 10], [second, top + 10], 'dimension')
  barAcross(paper)(left, top + 0.6)
  planWords(paper, all)(left, top + 10.4)
  plyWords(paper, all)(second, top)
  if (all.page.tile !== null) keyPlan(paper, all, pages)(right - keySideMm - 1, top + 2)
  else codeBlock(paper, all)(right - codeSideMm - 2, top + (strip.height - codeSideMm) / 2)
}
