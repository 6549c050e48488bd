export type ColumnKind = 'text' | 'number' | 'date' | 'moment' | 'yes-no'

export interface TableColumn {
  /** Stable name of the column, the key of its cells in a row. */
  readonly key: string
  /** Heading with its unit: "thickness (mm)". */
  readonly title: string
  readonly kind: ColumnKind
  /** Places behind the point that a spreadsheet shows; the cell itself keeps the full figure. */
  readonly decimals?: number
}

/**
 * What a cell holds: text, a finite number, a date "2026-03-14", a moment as ISO 8601 with an offset, yes or no.
 * Null: not known, or nothing to say; the cell stays empty.
 */
export type Cell = string | number | boolean | null

/** A line of a table: one cell for each column, by its key. */
export type Row = Readonly<Record<string, Cell>>

/** A table without its rows. */
export interface TableHead {
  /** As in an address and a file name: "thickness-readings". */
  readonly name: string
  readonly title: string
  readonly columns: readonly TableColumn[]
}

/** Rows as they come: all at once, or in batches from the database. */
export type Batches = Iterable<readonly Row[]> | AsyncIterable<readonly Row[]>

/** The cell of a row, checked against its column; RangeError where a row is not of this table. */
export function cellOf(head: TableHead, column: TableColumn, row: Row): Cell {
  const cell = row[column.key]
  if (cell === undefined) throw new RangeError(`${head.name}: a row has no "${column.key}"`)
  if (cell === null) return null
  const wanted = { text: 'string', number: 'number', date: 'string', moment: 'string', 'yes-no': 'boolean' }
  if (typeof cell !== wanted[column.kind]) {
    throw new RangeError(`${head.name}: "${column.key}" is ${column.kind}, got ${typeof cell} ${cell}`)
  }
  // A figure that could not be computed is no figure.
  return typeof cell === 'number' && !Number.isFinite(cell) ? null : cell
}
