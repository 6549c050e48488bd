import { type Paper, rect, rule } from './paper'
import { words } from './words'

/** Frame of an A4 page after ISO 5457: 20 mm to file by at the left, 10 mm elsewhere (from memory of the standard). */
export const frame = { left: 20, top: 10, right: 200, bottom: 287 } as const
export const frameWidth = frame.right - frame.left

/** Length of a grid field, counted from the middle of the frame; letters and numbers leave out I and O. */
const fieldMm = 50
const letters = 'ABCDEFGH'

/** Frame with its reference grid in the border: on A4 along the top and the right only. */
export function drawFrame(paper: Paper): void {
  rect(paper, frame.left, frame.top, frameWidth, frame.bottom - frame.top, 'opening-cut')
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
