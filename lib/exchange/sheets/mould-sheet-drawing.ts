import { faceSheet, pullStrip, pxPerPaperMm } from '#lib/core/drawing/index'
import { drawLegend } from './bench-drawing'
import { drawList } from './draw-list'
import type { MouldSheet } from './mould-sheet'
import { type Paper, rule } from './paper'
import { frameOf } from './sheet-frame'
import { stripTop } from './title-strip'
import { block, words, wrap } from './words'

const gap = 3
/** What the legend, the notes below it and the pull strip take of the first page, besides some lines of the list. */
const belowMm = 62

/** The faces with their legend, and the pull strip below them. Answers where they end. */
export function drawMouldDrawing(paper: Paper, sheet: MouldSheet): number {
  const frame = frameOf(paper)
  const top = frame.top + gap
  const { list } = faceSheet(
    sheet.faces,
    {
      kind: 'paper',
      widthMm: frame.width - 2 * gap,
      heightMm: stripTop(paper, true) - top - belowMm,
    },
    sheet.seenFrom,
  )
  const left = frame.left + (frame.width - list.widthMm / list.denominator) / 2
  drawList(paper, list, left, top)
  let y = drawLegend(paper, list.legend, frame.left + gap, top + list.heightMm / list.denominator + 1.5)
  if (list.omittedLabels.length > 0) {
    const style = { sizeMm: 2.3, role: 'soft' } as const
    const text = `No room at this scale for the names: ${list.omittedLabels.join(', ')}.`
    y = block(paper, frame.left + gap, y, wrap(paper, text, frame.width - 2 * gap, style), style)
  }
  y += 1.2
  rule(paper, [frame.left, y], [frame.right, y], 'dimension')
  y = drawPulls(paper, sheet, y)
  rule(paper, [frame.left, y], [frame.right, y], 'dimension')
  return y
}

function drawPulls(paper: Paper, { strokes }: MouldSheet, y: number): number {
  const frame = frameOf(paper)
  const style = { sizeMm: 2.3, role: 'soft' } as const
  if (strokes.pulls.length === 0) {
    words(paper, frame.left + gap, y + 4.4, 'No pull yet.', style)
    return y + 7
  }
  words(
    paper,
    frame.left + gap,
    y + 4,
    'Pulls: the taller the stroke, the harder it came out; triangles are coats',
    style,
  )
  const list = pullStrip(strokes, { kind: 'large', widthPx: (frame.width - 2 * gap) * pxPerPaperMm })
  drawList(paper, list, frame.left + gap, y + 5.5)
  return y + 6.5 + list.heightMm / list.denominator
}
