import { guard } from './guard'
import { type Batches, type Cell, cellOf, type Row, type TableColumn, type TableHead } from './types'
import { type WallTime, wallClock } from './wall-clock'

/** point: comma between cells; comma: semicolon between cells, as spreadsheets on the Continent expect. */
export type DecimalMark = 'point' | 'comma'

export interface CsvOptions {
  readonly decimal: DecimalMark
  /** IANA name; moments are told as the shop's clock showed them, with the offset. */
  readonly timeZone: string
}

/**
 * A table as CSV (RFC 4180), batch by batch: UTF-8 with a byte order mark, heading first, CRLF after every line. Texts
 * that a spreadsheet could run are guarded (`guard`); numbers are in full, dates and moments in ISO 8601.
 */
export async function* csvChunks(
  head: TableHead,
  batches: Batches,
  options: CsvOptions,
): AsyncGenerator<string> {
  const write = lineWriter(head, options)
  yield `\uFEFF${headingLine(head, options)}`
  for await (const rows of batches) if (rows.length > 0) yield rows.map(write).join('')
}

/** A whole table at once. */
export async function csvText(head: TableHead, rows: readonly Row[], options: CsvOptions): Promise<string> {
  const chunks: string[] = []
  for await (const chunk of csvChunks(head, [rows], options)) chunks.push(chunk)
  return chunks.join('')
}

function headingLine(head: TableHead, options: CsvOptions): string {
  return lineOf(
    head.columns.map((column) => textCell(column.title)),
    options,
  )
}

function lineWriter(head: TableHead, options: CsvOptions): (row: Row) => string {
  const clock = wallClock(options.timeZone)
  return (row) =>
    lineOf(
      head.columns.map((column) => csvCell(column, cellOf(head, column, row), options.decimal, clock)),
      options,
    )
}

const lineOf = (cells: readonly string[], { decimal }: CsvOptions) =>
  `${cells.join(decimal === 'comma' ? ';' : ',')}\r\n`

function csvCell(
  column: TableColumn,
  cell: Cell,
  decimal: DecimalMark,
  clock: (moment: string) => WallTime,
): string {
  if (cell === null) return ''
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no'
  if (typeof cell === 'number') return numberText(cell, decimal)
  if (column.kind === 'moment') return clock(cell).iso
  return textCell(cell)
}

/** The shortest text that reads back as the same number. */
function numberText(value: number, decimal: DecimalMark): string {
  const text = String(value === 0 ? 0 : value)
  return decimal === 'comma' ? text.replace('.', ',') : text
}

/** Quoted as soon as any program might part it: on both separators, whichever the file has. */
function textCell(text: string): string {
  const guarded = guard(text)
  const plain = guarded === text && !/[",;\t\r\n]|^\s|\s$/.test(text)
  return plain ? text : `"${guarded.replaceAll('"', '""')}"`
}
