import { figure } from '#lib/core/units'
import { paperDate, paperMoment } from './dates'
import { type Paper, rule } from './paper'
import { paperSizes } from './paper-sizes'
import { frameOf } from './sheet-frame'
import type { PatchSheet } from './types'
import { clip, widthOf, words, wrap } from './words'

export const notForLoads =
  'For tooling only. A part that carries people, or flight or road loads, is for a licensed or responsible engineer.'

const sideWords = {
  'pattern-back': ['against the pattern', 'from the back'],
  'place-back': ['in place, caul on the face', 'from the back'],
  'place-face': ['in place', 'from the face'],
} as const

/** One field of a strip's row: its share of the width, a small label, the value, and what stands under it. */
export interface Field {
  readonly share: number
  readonly label: string
  readonly value: string
  readonly under?: string
}

const padding = 1.6
export const rowA = 15
export const rowB = 9.6
export const rowC = 5.4

/** Top of the strip on a first page, where it carries the plan's data, or on those that follow. */
export function stripTop(paper: Paper, isFirst: boolean): number {
  return frameOf(paper).bottom - (isFirst ? rowA : 0) - rowB - rowC
}

/** The title strip at the foot of a page (fields after ISO 7200): what it shows, its state, who and when. */
export function drawTitleStrip(
  paper: Paper,
  sheet: PatchSheet,
  page: { readonly number: number; readonly of: number },
): void {
  const first = page.number === 1
  const frame = frameOf(paper)
  let y = stripTop(paper, first)
  if (first) {
    drawFirstRow(paper, sheet, y)
    y += rowA
  }
  drawRow(paper, y, rowB, first ? signatureFields(sheet, page) : laterFields(sheet, page))
  y += rowB
  rule(paper, [frame.left, y], [frame.right, y])
  words(paper, frame.left + padding, y + 3.6, notForLoads, { sizeMm: 2.5, font: 'semibold' })
  drawFooter(paper, sheet)
}

function drawFirstRow(paper: Paper, sheet: PatchSheet, y: number): void {
  const { plan, mould, input, patch } = sheet
  const { lengths } = patch
  const cover = patch.plies.filter((ply) => ply.replaces === null).length
  const measured = lengths.measuredThicknessMm
  const edge = input.edge === 'scarf' ? 'Scarf' : 'Steps'
  const spread = lengths.measuredSpreadMm
  const netM2 = patch.takeOff.reduce((total, each) => total + each.netAreaM2, 0)
  const [how, from] = sideWords[input.side]
  const frame = frameOf(paper)
  drawRow(paper, y, rowA, [
    {
      share: 55,
      label: `${mould.code} ${mould.name}`,
      value: plan.name,
      under: `${plan.code}, ${patch.place}`,
    },
    { share: 34, label: 'Worked', value: how, under: from },
    {
      share: 25,
      label: `${edge}, ${figure(lengths.ratioReached, 1)} : 1`,
      value: `${figure(lengths.lengthMm, 1)} mm`,
      under: lengths.governs === 'ratio' ? 'the ratio governs' : 'mm a ply governs',
    },
    {
      share: 26,
      label: 'Built / measured',
      value: `${figure(patch.builtThicknessMm, 2)} / ${measured === null ? '–' : figure(measured, 2)} mm`,
      under: spread === null ? 'not measured' : `spread ${figure(spread, 2)} mm`,
    },
    {
      share: 20,
      label: 'Plies',
      value: `${patch.plies.length - cover}${cover > 0 ? ` + ${cover}` : ''}`,
      under: `${figure(netM2, 2)} m² net`,
    },
    { share: 20, label: '', value: '' },
  ])
  drawStamp(paper, plan.state, frame.right - (frame.width * stampShare) / 2, y + rowA / 2)
}

/** The stamp's field, share of the first row. */
export const stampShare = 20 / 180

/** Widest word of a stamp. */
const stampMm = 15.4

/** The state in the strip's last field: a word, boxed and slightly turned, as a rubber stamp leaves it. */
export function drawStamp(paper: Paper, state: string, x: number, y: number): void {
  const { doc } = paper
  const word = state.charAt(0).toUpperCase() + state.slice(1)
  const plain = { sizeMm: 2.7, font: 'semibold', anchor: 'middle' } as const
  const style = { ...plain, sizeMm: Math.min(2.7, (2.7 * stampMm) / widthOf(paper, word, plain)) }
  const half = widthOf(paper, word, style) / 2 + 1.2
  doc.save().rotate(-2.5, { origin: [x, y] })
  doc.lineWidth(0.6).strokeColor('#000000').undash()
  doc.rect(x - half, y - 2.6, 2 * half, 5.2).stroke()
  words(paper, x, y + 0.95, word, style)
  doc.restore()
}

function signatureFields(sheet: PatchSheet, page: { number: number; of: number }): readonly Field[] {
  const { sketched, signed, plan } = sheet
  const signatures = signed.map(
    (each) => `${each.name}, ${paperDate(each.on)}${each.selfChecked ? ' (self-checked)' : ''}`,
  )
  return [
    {
      share: 42,
      label: 'Sketched',
      value: sketched === null ? '–' : `${sketched.name}, ${paperDate(sketched.on)}`,
    },
    {
      share: 66,
      label: 'Signed',
      value: signatures.length === 0 ? 'not signed: not for the bench' : signatures.join('; '),
    },
    { share: 16, label: 'Version', value: `${plan.version}` },
    { share: 36, label: 'Printed', value: paperMoment(sheet.printedAt, sheet.timeZone) },
    { share: 20, label: 'Page', value: `${page.number} of ${page.of}` },
  ]
}

function laterFields(sheet: PatchSheet, page: { number: number; of: number }): readonly Field[] {
  const { mould, plan } = sheet
  return [
    { share: 88, label: `${mould.code} ${mould.name}`, value: `${plan.name} (${plan.code})` },
    { share: 36, label: `Version ${plan.version}`, value: plan.state },
    { share: 36, label: 'Printed', value: paperMoment(sheet.printedAt, sheet.timeZone) },
    { share: 20, label: 'Page', value: `${page.number} of ${page.of}` },
  ]
}

export function drawRow(paper: Paper, y: number, height: number, fields: readonly Field[]): void {
  const frame = frameOf(paper)
  rule(paper, [frame.left, y], [frame.right, y])
  const total = fields.reduce((sum, field) => sum + field.share, 0)
  let x = frame.left
  for (const [i, field] of fields.entries()) {
    const width = (frame.width * field.share) / total
    if (i > 0) rule(paper, [x, y], [x, y + height])
    drawField(paper, field, x + padding, y, width - 2 * padding, i === 0 && height === rowA)
    x += width
  }
}

const labelStyle = { sizeMm: 2.3, role: 'soft' } as const

function drawField(paper: Paper, field: Field, x: number, y: number, width: number, isTitle: boolean): void {
  words(paper, x, y + 3.1, clip(paper, field.label, width, labelStyle), labelStyle)
  const valueStyle = { sizeMm: isTitle ? 4 : 2.9, font: 'semibold' } as const
  const lines = wrap(paper, field.value, width, valueStyle)
  if (lines.length <= 1) words(paper, x, y + (isTitle ? 8.2 : 7.1), field.value, valueStyle)
  else drawTwoLines(paper, field, x, y, width, isTitle)
  if (field.under !== undefined) {
    words(paper, x, y + (isTitle ? 13 : 12.2), clip(paper, field.under, width, labelStyle), labelStyle)
  }
}

/** A value too long for its line: two smaller ones, and an ellipsis where those don't hold it either. */
function drawTwoLines(
  paper: Paper,
  field: Field,
  x: number,
  y: number,
  width: number,
  isTitle: boolean,
): void {
  const roomy = field.under !== undefined
  const style = { sizeMm: isTitle ? 2.7 : roomy ? 2.5 : 2.3, font: 'semibold' } as const
  const lines = wrap(paper, field.value, width, style)
  const second = clip(paper, lines.slice(1).join(' '), width, style)
  const firstBase = y + (roomy ? 6.3 : 5.7)
  words(paper, x, firstBase, lines[0] ?? '', style)
  words(paper, x, firstBase + style.sizeMm * 1.22, second, style)
}

function drawFooter(paper: Paper, sheet: PatchSheet): void {
  const frame = frameOf(paper)
  const line = `Calculation ${sheet.calculationVersion}, record ${sheet.recordId}`
  words(paper, frame.left, frame.bottom + 4, line, { sizeMm: 2.1, role: 'soft' })
  words(paper, frame.right, frame.bottom + 4, paperSizes[sheet.paper].name, {
    sizeMm: 2.1,
    role: 'soft',
    anchor: 'end',
  })
}
