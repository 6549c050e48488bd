import type { FaceModel, PullStrokes, SeenFrom } from '#lib/core/drawing/index'
import type { Matter } from '#lib/core/log/index'
import type { Flow } from './flow'
import { drawMouldDrawing } from './mould-sheet-drawing'
import { drawMouldStrip } from './mould-sheet-strip'
import { drawMatters, drawMoves, drawPlaces } from './mould-sheet-tables'
import { addPage, closePaper, openPaper, toPage } from './paper'
import type { PaperName } from './paper-sizes'
import { drawFrame } from './sheet-frame'

/** Everything that the sheet of a mould says. The caller reads it from the records. */
export interface MouldSheet {
  readonly mould: {
    readonly code: string
    readonly name: string
    /** "piece 1 of 3", "off pattern LH-PAT": what it is beside its name. */
    readonly about: readonly string[]
  }
  readonly state: { readonly word: string; readonly reason: string | null }
  readonly place: string | null
  /** Degrees Celsius; null: not known. */
  readonly heat: {
    readonly inUseC: number | null
    readonly freeC: number | null
    readonly tgDryC: number | null
  }
  /** "1 + 8 + 1" with the built and the measured thickness; null: not known. */
  readonly stack: {
    readonly plies: string
    readonly builtMm: number
    readonly measuredMm: number | null
  } | null
  readonly pulls: number
  readonly pullsThisSeason: number
  /** Number of the table issue that the points come from. */
  readonly issueNumber: number | null
  readonly faces: readonly FaceModel[]
  readonly seenFrom: SeenFrom
  readonly strokes: PullStrokes
  readonly matters: readonly Matter[]
  /** Moment of printing, ISO 8601 with an offset; the sheet has no clock of its own. */
  readonly printedAt: string
  /** The shop's zone, e.g. "Europe/Berlin". */
  readonly timeZone: string
  readonly paper: PaperName
}

/**
 * The sheet of a mould, upright: its faces to scale with the title strip, its pull strip, what stands before the next
 * lay-up, and where patches and moved points lie. Same model, same bytes. RangeError for a `printedAt` that is no moment.
 */
export async function mouldSheet(sheet: MouldSheet): Promise<Uint8Array> {
  const { code } = sheet.mould
  const paper = openPaper(`${code}, mould sheet`, sheet.mould.name, sheet.printedAt, sheet.paper)
  addPage(paper, 'portrait')
  drawFrame(paper)
  const flow: Flow = { paper, y: drawMouldDrawing(paper, sheet) }
  drawMatters(flow, sheet)
  drawPlaces(flow, sheet)
  drawMoves(flow, sheet)
  const of = paper.pages.length
  for (let index = 0; index < of; index += 1) {
    toPage(paper, index)
    drawMouldStrip(paper, sheet, { number: index + 1, of })
  }
  return closePaper(paper)
}
