import { type Paper, pageSize, rect, rule } from './paper'
import { words } from './words'

export interface Frame {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly width: number
  readonly height: number
}

/**
 * Frame of an upright page after ISO 5457: 20 mm to file by at the left, 10 mm elsewhere (from memory of the
 * standard, which knows A sizes only; other papers are framed alike).
 */
export function frameOf({ name }: Paper): Frame {
  const { widthMm, heightMm } = pageSize(name, 'portrait')
  const [left, top, right, bottom] = [20, 10, widthMm - 10, heightMm - 10]
  return { left, top, right, bottom, width: right - left, height: bottom - top }
}

/** Length of a grid field, counted from the middle of the frame; letters and numbers leave out I and O. */
const fieldMm = 50
const letters = 'ABCDEFGH'

/** Frame with its reference grid in the border: along the top and the right only, as on A4. */
export function drawFrame(paper: Paper): void {
  const frame = frameOf(paper)
  rect(paper, frame.left, frame.top, frame.width, frame.height, 'opening-cut')
  const across = fields(frame.left, frame.right)
  for (const [i, field] of across.entries()) {
    words(paper, (field.from + field.to) / 2, frame.top - 2.1, `${i + 1}`, fieldWords)
    if (i > 0) rule(paper, [field.from, frame.top - 4.5], [field.from, frame.top], 'dimension')
  }
  const down = fields(frame.top, frame.bottom)
  for (const [i, field] of down.entries()) {
    const middle = (field.from + field.to) / 2
    words(paper, frame.right + 2.5, middle + 0.8, letters[i] ?? '', fieldWords)
    if (i > 0) rule(paper, [frame.right, field.from], [frame.right + 4.5, field.from], 'dimension')
  }
}

const fieldWords = { sizeMm: 2.3, role: 'soft', anchor: 'middle' } as const

function fields(from: number, to: number): readonly { readonly from: number; readonly to: number }[] {
  const middle = (from + to) / 2
  const half = Math.ceil((to - from) / 2 / fieldMm)
  const marks = Array.from({ length: 2 * half - 1 }, (_, i) => middle + (i - half + 1) * fieldMm)
  const edges = [from, ...marks.filter((mark) => mark > from + 8 && mark < to - 8), to]
  return edges.slice(1).map((end, i) => ({ from: edges[i]!, to: end }))
}
