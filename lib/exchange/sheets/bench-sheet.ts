import { drawBenchDrawing } from './bench-drawing'
import { drawFindings, drawJobLines, drawPlyList, drawTakeOff } from './bench-tables'
import type { Flow } from './flow'
import { addPage, closePaper, openPaper, toPage } from './paper'
import { drawFrame } from './sheet-frame'
import { drawTitleStrip } from './title-strip'
import type { PatchSheet } from './types'

/**
 * The bench sheet of a patch plan, upright: first page with plan view, item list, section and title strip, then
 * findings, material and job lines to tick. Same model, same bytes. RangeError for a `printedAt` that is no moment.
 */
export async function benchSheet(sheet: PatchSheet): Promise<Uint8Array> {
  const { mould, plan } = sheet
  const paper = openPaper(
    `${mould.code} ${plan.name}, bench sheet`,
    `version ${plan.version}`,
    sheet.printedAt,
    sheet.paper,
  )
  addPage(paper, 'portrait')
  drawFrame(paper)
  const flow: Flow = { paper, y: drawBenchDrawing(paper, sheet) }
  drawFindings(flow, sheet)
  drawPlyList(flow, sheet)
  drawTakeOff(flow, sheet)
  drawJobLines(flow, sheet)
  const of = paper.pages.length
  for (let index = 0; index < of; index += 1) {
    toPage(paper, index)
    drawTitleStrip(paper, sheet, { number: index + 1, of })
  }
  return closePaper(paper)
}
