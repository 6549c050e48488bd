import { addPage, type Paper, rule } from './paper'
import { drawFrame, frameOf } from './sheet-frame'
import { stripTop } from './title-strip'
import { block, blockHeight, type WordStyle, words, wrap } from './words'

/** Rows that run down the page and on to further pages. `y` is where the next row begins. */
export interface Flow {
  readonly paper: Paper
  y: number
}

/** Room for rows inside the frame. */
export function innerOf(paper: Paper): {
  readonly left: number
  readonly right: number
  readonly width: number
} {
  const { left, right, width } = frameOf(paper)
  return { left: left + 3, right: right - 3, width: width - 6 }
}

function topOf(paper: Paper): number {
  return frameOf(paper).top + 4
}

export function roomLeft({ paper, y }: Flow): number {
  return stripTop(paper, paper.pages.length === 1) - 2 - y
}

export function nextPage(flow: Flow): void {
  addPage(flow.paper, 'portrait')
  drawFrame(flow.paper)
  flow.y = topOf(flow.paper)
}

/** A heading stays with so many millimetres of what follows it. */
export function heading(flow: Flow, text: string, keepMm: number): void {
  if (roomLeft(flow) < 9 + keepMm) nextPage(flow)
  else if (flow.y > topOf(flow.paper)) flow.y += 3
  words(flow.paper, innerOf(flow.paper).left, flow.y + 4.2, text, { sizeMm: 3.5, font: 'semibold' })
  flow.y += 6.4
}

export interface Column {
  readonly x: number
  readonly width: number
  readonly anchor?: 'start' | 'end'
}

export interface Cell {
  readonly text: string
  readonly style?: Partial<WordStyle>
}

const cellStyle: WordStyle = { sizeMm: 2.7 }
const cellPadding = 1.1

/** One row of a table: each cell a stack of paragraphs, wrapped to its column; a hairline below. */
export interface Row {
  readonly cells: readonly (readonly Cell[])[]
  /** Least height, for rows that are written in. */
  readonly leastMm?: number
  /** What else is drawn in the row. */
  readonly extra?: (y: number, heightMm: number) => void
}

/** Draws a row, on the next page when it no longer fits; `repeat` is drawn again on top of each new page. */
export function tableRow(flow: Flow, columns: readonly Column[], row: Row, repeat?: () => void): void {
  const { paper } = flow
  const laid = row.cells.map((cells, i) =>
    cells.map((cell) => {
      const style: WordStyle = { ...cellStyle, ...cell.style }
      return { style, lines: wrap(paper, cell.text, columns[i]!.width, style) }
    }),
  )
  const heights = laid.map((cells) =>
    cells.reduce((sum, { lines, style }) => sum + blockHeight(lines, style), 0),
  )
  const height = Math.max(row.leastMm ?? 0, ...heights) + 2 * cellPadding
  if (roomLeft(flow) < height && flow.y > topOf(paper)) {
    nextPage(flow)
    repeat?.()
  }
  for (const [i, cells] of laid.entries()) {
    const column = columns[i]!
    let y = flow.y + cellPadding
    for (const { lines, style } of cells) {
      const x = column.anchor === 'end' ? column.x + column.width : column.x
      y = block(paper, x, y, lines, { ...style, anchor: column.anchor ?? 'start' })
    }
  }
  row.extra?.(flow.y, height)
  flow.y += height
  const { left, right } = innerOf(paper)
  rule(paper, [left, flow.y], [right, flow.y], 'hair', 'hair')
}

/** The head of a table: small and soft, with a full line below. */
export function tableHead(flow: Flow, columns: readonly Column[], names: readonly string[]): void {
  const style = { sizeMm: 2.3, role: 'soft' } as const
  for (const [i, name] of names.entries()) {
    const column = columns[i]!
    const x = column.anchor === 'end' ? column.x + column.width : column.x
    words(flow.paper, x, flow.y + 3, name, { ...style, anchor: column.anchor ?? 'start' })
  }
  flow.y += 4.2
  const { left, right } = innerOf(flow.paper)
  rule(flow.paper, [left, flow.y], [right, flow.y], 'dimension')
}
