import { inverseOf } from '../../linear-algebra'

/** Rows of three, in the order u, v, shear. */
export type Row3 = readonly [number, number, number]
export type Matrix3 = readonly [Row3, Row3, Row3]

/** The four blocks of a 6 by 6 matrix: [[a, b], [c, d]]. */
export interface Blocks {
  readonly a: Matrix3
  readonly b: Matrix3
  readonly c: Matrix3
  readonly d: Matrix3
}

/** Inverse of a 6 by 6 matrix given by its blocks. RangeError when it has none. */
export function inverseOfBlocks({ a, b, c, d }: Blocks): Blocks {
  const top = a.map((row, index) => [...row, ...b[index as 0 | 1 | 2]])
  const bottom = c.map((row, index) => [...row, ...d[index as 0 | 1 | 2]])
  // Forces are far larger than moments per millimetre: scaled to one size, the inverse keeps its digits.
  const scale = Math.sqrt(Math.abs(trace(d) / trace(a))) || 1
  const size = [1, 1, 1, scale, scale, scale]
  const scaled = (rows: readonly (readonly number[])[]) =>
    rows.map((row, i) => row.map((value, j) => value / size[i]! / size[j]!))
  const inverted = scaled(inverseOf(scaled([...top, ...bottom])))
  const block = (row: number, column: number): Matrix3 => {
    const line = (index: number): Row3 => {
      const values = inverted[row + index]!
      return [values[column]!, values[column + 1]!, values[column + 2]!]
    }
    return [line(0), line(1), line(2)]
  }
  return { a: block(0, 0), b: block(0, 3), c: block(3, 0), d: block(3, 3) }
}

/** Matrix times column. */
export function times(matrix: Matrix3, [x, y, z]: Row3): Row3 {
  const line = (row: Row3) => row[0] * x + row[1] * y + row[2] * z
  return [line(matrix[0]), line(matrix[1]), line(matrix[2])]
}

function trace(matrix: Matrix3): number {
  return matrix[0][0] + matrix[1][1] + matrix[2][2]
}
