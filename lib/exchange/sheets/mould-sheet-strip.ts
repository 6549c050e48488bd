import { viewWords } from '#lib/core/drawing/index'
import { figure } from '#lib/core/units'
import { paperMoment } from './dates'
import type { MouldSheet } from './mould-sheet'
import { type Paper, rule } from './paper'
import { paperSizes } from './paper-sizes'
import { frameOf } from './sheet-frame'
import { drawRow, drawStamp, notForLoads, rowA, rowB, stampShare, stripTop } from './title-strip'
import { words } from './words'

interface PageOf {
  readonly number: number
  readonly of: number
}

/** The title strip of a mould's sheet: what it is, what it bears, where it stands, its state, and how it is seen. */
export function drawMouldStrip(paper: Paper, sheet: MouldSheet, page: PageOf): void {
  const frame = frameOf(paper)
  const first = page.number === 1
  let y = stripTop(paper, first)
  if (first) {
    drawData(paper, sheet, y)
    y += rowA
  }
  drawRow(paper, y, rowB, [
    first
      ? { share: 62, label: 'View', value: viewOf(sheet) }
      : { share: 62, label: sheet.mould.name, value: sheet.mould.code },
    first
      ? { share: 46, label: 'Before the next lay-up', value: openWords(sheet) }
      : { share: 46, label: 'State', value: sheet.state.word },
    { share: 22, label: 'Points', value: issueWords(sheet) },
    { share: 34, label: 'Printed', value: paperMoment(sheet.printedAt, sheet.timeZone) },
    { share: 16, label: 'Page', value: `${page.number} of ${page.of}` },
  ])
  y += rowB
  rule(paper, [frame.left, y], [frame.right, y])
  words(paper, frame.left + 1.6, y + 3.6, notForLoads, { sizeMm: 2.5, font: 'semibold' })
  const small = { sizeMm: 2.1, role: 'soft', anchor: 'end' } as const
  words(paper, frame.right, frame.bottom + 4, paperSizes[sheet.paper].name, small)
}

function drawData(paper: Paper, sheet: MouldSheet, y: number): void {
  const { mould, heat, stack, state } = sheet
  const frame = frameOf(paper)
  const degrees = (value: number | null) => (value === null ? '?' : figure(value))
  drawRow(paper, y, rowA, [
    {
      share: 56,
      label: [mould.code, ...mould.about].join(', '),
      value: mould.name,
      under: state.reason ?? '',
    },
    {
      share: 30,
      label: stack === null ? 'Stack' : `Stack, ${figure(stack.builtMm, 1)} mm built`,
      value: stack?.plies ?? 'not known',
      under:
        stack === null || stack.measuredMm === null
          ? 'not measured'
          : `${figure(stack.measuredMm, 1)} measured`,
    },
    {
      share: 30,
      label: 'Heat, in use / free',
      value: `${degrees(heat.inUseC)} / ${degrees(heat.freeC)} °C`,
      under: heat.tgDryC === null ? 'Tg not known' : `Tg dry ${figure(heat.tgDryC)}`,
    },
    {
      share: 20,
      label: 'Clocks',
      value: `${sheet.pulls} ${sheet.pulls === 1 ? 'pull' : 'pulls'}`,
      under: `${sheet.pullsThisSeason} this season`,
    },
    { share: 24, label: 'Place', value: sheet.place ?? 'not known' },
    { share: 20, label: '', value: '' },
  ])
  drawStamp(paper, state.word, frame.right - (frame.width * stampShare) / 2, y + rowA / 2)
}

function viewOf({ faces, seenFrom }: MouldSheet): string {
  const what = faces.length === 1 ? (faces[0]?.areaName ?? '') : 'all areas'
  return `${what}, ${viewWords(seenFrom)}`
}

function issueWords({ issueNumber }: MouldSheet): string {
  return issueNumber === null ? 'none' : `issue ${issueNumber}`
}

function openWords({ matters }: MouldSheet): string {
  if (matters.length === 0) return 'nothing open'
  const stops = matters.filter((matter) => matter.severity === 'stop').length
  const open = `${matters.length} ${matters.length === 1 ? 'line' : 'lines'} open`
  return stops === 0 ? open : `${open}, ${stops} ${stops === 1 ? 'stop' : 'stops'}`
}
