import type { Point } from '../types'
import type { Projection } from './projection'

/** Points moved and scaled (Hartley and Zisserman, 4.4): their middle at 0, their mean distance from it the root of 2. */
export interface Normalised {
  readonly points: readonly Point[]
  /** From the points as they were to these. */
  readonly to: Projection
  /** And back. */
  readonly from: Projection
}

/** RangeError when all points are one. */
export function normalised(points: readonly Point[]): Normalised {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const x = mean(points.map((point) => point[0]))
  const y = mean(points.map((point) => point[1]))
  const size = mean(points.map((point) => Math.hypot(point[0] - x, point[1] - y))) / Math.SQRT2
  if (!(size > 0)) throw new RangeError('all the marks are at one place')
  return {
    points: points.map((point) => [(point[0] - x) / size, (point[1] - y) / size]),
    to: [
      [1 / size, 0, -x / size],
      [0, 1 / size, -y / size],
      [0, 0, 1],
    ],
    from: [
      [size, 0, x],
      [0, size, y],
      [0, 0, 1],
    ],
  }
}
