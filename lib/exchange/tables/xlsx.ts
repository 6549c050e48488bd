import writeXlsxFile, { type CellObject } from 'write-excel-file/node'
import { sheetName } from './names'
import { sheetText, storedText } from './sheet-text'
import { type Cell, cellOf, type Row, type TableColumn, type TableHead } from './types'
import { type WallTime, wallClock } from './wall-clock'

/**
 * Most filled cells that are made into a worksheet: the writer works in one go, and while it does nobody else is
 * answered. Measured: 120,000 (8,000 entries of the log) take 1.6 s of one core and 90 MB.
 */
export const mostSheetCells = 120_000

/** The first day that all spreadsheets count alike; earlier dates stand as text. */
const firstSheetDay = '1900-03-01'

/**
 * A table as a worksheet: numbers as numbers, dates as dates, text as text and never as a formula. The heading is bold
 * and stays in sight. Moments stand as the shop's clock showed them, with the zone in the heading. All of it is
 * held in memory: `mostSheetCells` says how much is taken.
 */
export async function xlsxBytes(
  head: TableHead,
  rows: readonly Row[],
  { timeZone }: { readonly timeZone: string },
): Promise<Uint8Array> {
  const clock = wallClock(timeZone)
  const titles = head.columns.map((column) =>
    column.kind === 'moment' ? `${column.title} (${timeZone})` : column.title,
  )
  const heading = titles.map((title): CellObject => ({ ...textCell(title), fontWeight: 'bold' }))
  const body = rows.map((row) =>
    head.columns.map((column) => sheetCell(column, cellOf(head, column, row), clock)),
  )
  return writeXlsxFile([heading, ...body], {
    sheet: sheetName(head.title),
    stickyRowsCount: 1,
    columns: head.columns.map((column, index) => ({ width: widthOf(column, titles[index] ?? '', rows) })),
  }).toBuffer()
}

/** What a spreadsheet would make a formula, a number or a date of when somebody edits the cell. */
const turnsWhenEdited = /^[\p{C}\p{Z}\s]*['\d.,=+\-@＝＋－＠﹦﹢﹣﹫−]/u

/** Text is never a formula here; where editing would make it one, the cell is marked as text as well. */
function textCell(text: string): CellObject {
  const value = storedText(sheetText(text))
  return turnsWhenEdited.test(text) ? { type: String, value, format: '@' } : { type: String, value }
}

function sheetCell(column: TableColumn, cell: Cell, clock: (moment: string) => WallTime): CellObject | null {
  if (cell === null || cell === '') return null
  if (typeof cell === 'boolean') return { type: Boolean, value: cell }
  if (typeof cell === 'number') return numberCell(cell, column.decimals)
  if (column.kind === 'moment') {
    return { type: Date, value: new Date(clock(cell).shownMs), format: 'yyyy-mm-dd hh:mm:ss' }
  }
  if (column.kind === 'date' && cell >= firstSheetDay) {
    return { type: Date, value: new Date(`${cell}T00:00:00Z`), format: 'yyyy-mm-dd' }
  }
  return textCell(cell)
}

function numberCell(value: number, decimals: number | undefined): CellObject {
  if (decimals === undefined) return { type: Number, value }
  return { type: Number, value, format: decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}` }
}

/** Room for the heading and for most of what stands below it, in signs. */
function widthOf(column: TableColumn, title: string, rows: readonly Row[]): number {
  const fixed = column.kind === 'date' ? 11 : column.kind === 'moment' ? 19 : 0
  const longest = rows.slice(0, 300).reduce((most, row) => {
    const cell = row[column.key]
    return typeof cell === 'string' ? Math.max(most, cell.split('\n', 1)[0]?.length ?? 0) : most
  }, 8)
  return Math.min(60, Math.max(fixed, title.length, fixed === 0 ? longest : 0) + 2)
}
