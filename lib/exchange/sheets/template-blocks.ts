import { directionInView } from '#lib/core/drawing/index'
import { figure } from '#lib/core/units'
import { paperMoment } from './dates'
import { type Paper, rule } from './paper'
import { drawQr } from './qr'
import { type TemplatePage, tileName } from './template-layout'
import type { TemplatePicture } from './template-picture'
import type { PatchSheet } from './types'
import { clip, words } from './words'

/** Draws a block of words or marks with its top left corner at a point of the page. */
export type DrawBlock = (x: number, y: number) => void

/** What the words of a page need to know. */
export interface PageWords {
  readonly sheet: PatchSheet
  readonly picture: TemplatePicture
  readonly page: TemplatePage
  readonly number: number
  readonly of: number
}

/** Sizes of the blocks, mm: their places are sought before they are drawn. */
export const blockSizes = {
  across: [104, 9],
  upright: [9, 104],
  plan: [104, 17],
  ply: [62, 28],
} as const

const barMm = 100
const barWords = '100 mm. Measured: ________ mm, must be 100; print at 100 %, no fitting'

/** The check bar: to be measured before anything is cut. One lies across, one stands up. */
export function barAcross(paper: Paper): DrawBlock {
  return (x, y) => {
    const [from, to] = [x + 2, x + 2 + barMm]
    rule(paper, [from, y + 2.6], [to, y + 2.6], 'thin')
    for (const end of [from, to]) rule(paper, [end, y + 0.6], [end, y + 4.6], 'thin')
    words(paper, from, y + 7.7, barWords, { sizeMm: 2.6 })
  }
}

export function barUpright(paper: Paper): DrawBlock {
  return (x, y) => {
    const [from, to] = [y + 2, y + 2 + barMm]
    rule(paper, [x + 2.6, from], [x + 2.6, to], 'thin')
    for (const end of [from, to]) rule(paper, [x + 0.6, end], [x + 4.6, end], 'thin')
    words(paper, x + 7.7, to, barWords, { sizeMm: 2.6, turnDeg: -90 })
  }
}

/** Mould, plan, version, state, when and from which record. */
export function planWords(paper: Paper, { sheet }: PageWords): DrawBlock {
  const width = blockSizes.plan[0] - 4
  const small = { sizeMm: 2.3, role: 'soft' } as const
  const plain = { sizeMm: 2.6 } as const
  const { mould, plan, patch } = sheet
  const title = `${mould.code} ${mould.name}: ${plan.name}`
  const second = `${plan.code}, ${patch.place}. Version ${plan.version}, ${plan.state}`
  const printed = `Printed ${paperMoment(sheet.printedAt, sheet.timeZone)}. For tooling only`
  const record = `Calculation ${sheet.calculationVersion}, record ${sheet.recordId}`
  return (x, y) => {
    words(paper, x + 2, y + 4.4, clip(paper, title, width, titleStyle), titleStyle)
    words(paper, x + 2, y + 8.6, clip(paper, second, width, plain), plain)
    words(paper, x + 2, y + 12.2, printed, small)
    words(paper, x + 2, y + 15.6, clip(paper, record, width, small), small)
  }
}

const titleStyle = { sizeMm: 3.1, font: 'semibold' } as const

/** Which ply, what it is cut from, which way up, and the page. */
export function plyWords(paper: Paper, all: PageWords): DrawBlock {
  const { sheet, picture, page, number, of } = all
  const { ply } = picture
  const width = blockSizes.ply[0] - 4
  const total = sheet.patch.plies.length
  const view = picture.seenFrom === 'back' ? 'seen from the back, mirrored' : 'seen from the cavity'
  const lines: readonly (readonly [
    baseMm: number,
    text: string,
    sizeMm: number,
    font: 'regular' | 'semibold',
  ])[] = [
    [5.4, `Ply ${ply.layingOrder} of ${total}${ply.replaces === null ? ', cover' : ''}`, 4.6, 'semibold'],
    [9.8, ply.material.name, 3, 'semibold'],
    [13.6, directionWords(picture), 2.6, 'regular'],
    [18, 'This side up, as it lies when laid:', 2.6, 'semibold'],
    [21.6, view, 2.6, 'semibold'],
    [
      26,
      `Page ${number} of ${of}${page.tile === null ? '' : `, tile ${tileName(page.tile)}`}`,
      2.6,
      'regular',
    ],
  ]
  return (x, y) => {
    for (const [baseMm, text, sizeMm, font] of lines) {
      const style = { sizeMm, font } as const
      words(paper, x + 2, y + baseMm, clip(paper, text, width, style), style)
    }
  }
}

/** "Fibres 45° on the mould, -45° in this view". */
export function directionWords({
  ply,
  directionInViewDeg,
}: Pick<TemplatePicture, 'ply' | 'directionInViewDeg'>): string {
  const onMould = directionInView(ply.directionDeg, false)
  const inView = degrees(directionInViewDeg)
  return onMould === directionInViewDeg
    ? `Fibres at ${inView} in this view, as on the mould`
    : `Fibres at ${inView} in this view (${degrees(onMould)} on the mould)`
}

export function degrees(value: number): string {
  return `${figure(value, 1).replace('-', '−')}°`
}

/** The way back to the plan. */
export function codeBlock(paper: Paper, { sheet }: PageWords): DrawBlock {
  return (x, y) => drawQr(paper, sheet.address, x, y, codeSideMm)
}

export const codeSideMm = 20

/** A line of 0 degrees and the fibre arrow, for the middle of the ply. */
export function directionArrow(paper: Paper, picture: TemplatePicture, sideMm: number): DrawBlock {
  const angle = (picture.directionInViewDeg * Math.PI) / 180
  const [dx, dy] = [Math.cos(angle), -Math.sin(angle)]
  const half = sideMm / 2 - 3.6
  const label = `Ply ${picture.ply.layingOrder}, ${degrees(picture.directionInViewDeg)}`
  return (x, y) => {
    const [cx, cy] = [x + sideMm / 2, y + sideMm / 2 + 1.4]
    rule(paper, [cx - half, cy], [cx + half, cy], 'centre')
    rule(paper, [cx - dx * half, cy - dy * half], [cx + dx * half, cy + dy * half], 'thin')
    for (const sign of [1, -1]) {
      arrowHead(paper.doc, cx + sign * dx * half, cy + sign * dy * half, sign * dx, sign * dy)
    }
    const style = { sizeMm: 2.8, font: 'semibold', anchor: 'middle', haloMm: 0.6 } as const
    words(paper, cx, cy - Math.abs(dy) * half - 1.6, label, style)
  }
}

function arrowHead(doc: PDFKit.PDFDocument, x: number, y: number, dx: number, dy: number): void {
  const [length, half] = [3.2, 0.85]
  doc
    .moveTo(x, y)
    .lineTo(x - dx * length - dy * half, y - dy * length + dx * half)
    .lineTo(x - dx * length + dy * half, y - dy * length - dx * half)
    .closePath()
    .fill('#000000')
}
