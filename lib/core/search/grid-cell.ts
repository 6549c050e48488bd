import { rowName } from '../geometry/index'

/** Row and column of a cell, counted from 0 at the grid's origin; above and left of it below 0. */
export interface GridCell {
  readonly row: number
  readonly column: number
}

/** The furthest row and column that a name is looked up for. */
const furthest = 999

const rows: ReadonlyMap<string, number> = new Map(
  Array.from({ length: 2 * furthest + 1 }, (_, index) => [rowName(index - furthest), index - furthest]),
)

/** Reads the name of a cell, "B5" or "b5", "-A3", "C-2"; null for what is none (I and O are no rows, 0 no column, "B05" a tag). */
export function readCell(name: string): GridCell | null {
  const match = /^(-?[A-Z]{1,2})(-?[1-9]\d{0,2})$/.exec(name.toUpperCase())
  const row = rows.get(match?.[1] ?? '')
  const number = Number(match?.[2])
  if (row === undefined) return null
  return { row, column: number > 0 ? number - 1 : number }
}
