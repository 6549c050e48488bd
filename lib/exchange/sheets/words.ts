import type { Role } from '#lib/core/drawing/index'
import type { SheetFont } from './fonts'
import { inkOf, type Paper } from './paper'

export interface WordStyle {
  /** The em, mm. */
  readonly sizeMm: number
  readonly font?: SheetFont
  readonly role?: Role
  readonly anchor?: 'start' | 'middle' | 'end'
  /** Clockwise as seen. */
  readonly turnDeg?: number
  /** White rim of this width, mm. */
  readonly haloMm?: number
}

export const lineHeightEm = 1.32

/** One line of words on its baseline. */
export function words(paper: Paper, x: number, y: number, text: string, style: WordStyle): void {
  if (text === '') return
  const { doc } = paper
  const anchor = style.anchor ?? 'start'
  const width = widthOf(paper, text, style)
  const turn = style.turnDeg ?? 0
  const left = x - (anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width)
  doc.save()
  if (turn !== 0) doc.rotate(turn, { origin: [x, y] })
  if (style.haloMm !== undefined) {
    doc.lineWidth(style.haloMm).strokeColor('#ffffff').undash()
    doc.text(text, left, y, { lineBreak: false, baseline: 'alphabetic', fill: false, stroke: true })
  }
  doc.fillColor(inkOf[style.role ?? 'ink'])
  doc.text(text, left, y, { lineBreak: false, baseline: 'alphabetic' })
  doc.restore()
}

export function widthOf({ doc }: Paper, text: string, style: WordStyle): number {
  return doc
    .font(style.font ?? 'regular')
    .fontSize(style.sizeMm)
    .widthOfString(text)
}

/** Breaks words into lines of a width; a word wider than the line is broken after a stroke or hyphen if it has one. */
export function wrap(paper: Paper, text: string, widthMm: number, style: WordStyle): readonly string[] {
  const lines: string[] = []
  for (const paragraph of text.split('\n')) {
    let line = ''
    for (const word of paragraph.split(/\s+/).filter((each) => each !== '')) {
      const longer = line === '' ? word : `${line} ${word}`
      if (widthOf(paper, longer, style) <= widthMm) {
        line = longer
        continue
      }
      if (line !== '') lines.push(line)
      const pieces = breakWord(paper, word, widthMm, style)
      lines.push(...pieces.slice(0, -1))
      line = pieces[pieces.length - 1] ?? ''
    }
    if (line !== '') lines.push(line)
  }
  return lines
}

function breakWord(paper: Paper, word: string, widthMm: number, style: WordStyle): readonly string[] {
  const pieces: string[] = []
  let piece = ''
  for (const letter of word) {
    if (piece !== '' && widthOf(paper, piece + letter, style) > widthMm) {
      const seam = Math.max(piece.lastIndexOf('/'), piece.lastIndexOf('-')) + 1
      const end = seam > piece.length / 3 ? seam : piece.length
      pieces.push(piece.slice(0, end))
      piece = piece.slice(end)
    }
    piece += letter
  }
  return [...pieces, piece]
}

/** Lines below each other; returns the y below the last one. `y` is the top of the first. */
export function block(
  paper: Paper,
  x: number,
  y: number,
  lines: readonly string[],
  style: WordStyle,
): number {
  const height = lineHeightEm * style.sizeMm
  for (const [i, line] of lines.entries()) words(paper, x, y + height * i + style.sizeMm * 0.98, line, style)
  return y + height * lines.length
}

export function blockHeight(lines: readonly string[], style: WordStyle): number {
  return lines.length * lineHeightEm * style.sizeMm
}

/** The words if they fit, else their beginning with an ellipsis; for fields that can't grow. */
export function clip(paper: Paper, text: string, widthMm: number, style: WordStyle): string {
  if (widthOf(paper, text, style) <= widthMm) return text
  const letters = [...text]
  while (letters.length > 0 && widthOf(paper, `${letters.join('')}…`, style) > widthMm) letters.pop()
  return `${letters.join('').trimEnd()}…`
}
