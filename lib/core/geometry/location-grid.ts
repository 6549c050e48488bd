import type { LocationGrid } from '../repair/types'
import type { Bounds, Point } from './types'

/** No I and no O: they read as 1 and 0. */
const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** More rows or columns than this are a wrong cell size, not a grid to draw. */
const mostCells = 1000

/** A row or a column of the grid, with the stretch of u or v that it covers. */
export interface GridStrip {
  readonly name: string
  readonly fromMm: number
  readonly toMm: number
}

export interface GridStrips {
  /** Rows along v, from the top downwards. */
  readonly rows: readonly GridStrip[]
  /** Columns along u, from the left. */
  readonly columns: readonly GridStrip[]
}

/**
 * Name of the cell that a point lies in, "B5": letter of the row, number of the column. On a line between cells it
 * belongs to the cell below or to the right. RangeError on a cell size that is not above 0 or a point that is no number.
 */
export function cellOf(grid: LocationGrid, [u, v]: Point): string {
  assertGrid(grid)
  if (!(Number.isFinite(u) && Number.isFinite(v)))
    throw new RangeError(`no cell holds the point (${u}, ${v})`)
  const row = Math.floor((grid.originMm[1] - v) / grid.cellMm)
  const column = Math.floor((u - grid.originMm[0]) / grid.cellMm)
  return rowName(row) + columnName(column)
}

/** The rows and columns that bounds reach into. RangeError when there are more than 1000 of either. */
export function gridStrips(grid: LocationGrid, [uMin, vMin, uMax, vMax]: Bounds): GridStrips {
  assertGrid(grid)
  const { originMm, cellMm } = grid
  const downwards = strips(originMm[1] - vMax, originMm[1] - vMin, cellMm, rowName)
  return {
    rows: downwards.map(({ name, fromMm, toMm }) => ({
      name,
      fromMm: originMm[1] - toMm,
      toMm: originMm[1] - fromMm,
    })),
    columns: strips(uMin - originMm[0], uMax - originMm[0], cellMm, columnName).map((strip) => ({
      name: strip.name,
      fromMm: originMm[0] + strip.fromMm,
      toMm: originMm[0] + strip.toMm,
    })),
  }
}

/**
 * A, B ... Z without I and O, then AA, AB ...; counted from 0. The grid is never laid anew, so a boundary may come to
 * reach above its origin: rows there are -A, -B ... upwards.
 */
export function rowName(index: number): string {
  if (index < 0) return `-${rowName(-1 - index)}`
  const rest = Math.floor(index / letters.length)
  return (rest > 0 ? rowName(rest - 1) : '') + letters[index % letters.length]
}

/** 1, 2, 3 ... counted from 0; left of the origin -1, -2 ... (there is no column 0). */
export function columnName(index: number): string {
  return String(index < 0 ? index : index + 1)
}

function strips(
  from: number,
  to: number,
  cellMm: number,
  name: (index: number) => string,
): readonly GridStrip[] {
  const first = Math.floor(from / cellMm)
  const count = Math.max(1, Math.ceil(to / cellMm) - first)
  if (!(count <= mostCells)) {
    throw new RangeError(`a location grid of ${count} rows or columns can't be drawn: cell of ${cellMm} mm`)
  }
  return Array.from({ length: count }, (_, step) => ({
    name: name(first + step),
    fromMm: (first + step) * cellMm,
    toMm: (first + step + 1) * cellMm,
  }))
}

function assertGrid({ cellMm }: LocationGrid): void {
  if (!(cellMm > 0 && Number.isFinite(cellMm))) {
    throw new RangeError(`cell of the location grid must be above 0 mm, got ${cellMm}`)
  }
}
