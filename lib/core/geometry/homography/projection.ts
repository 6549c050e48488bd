import { inverseOf } from '../../linear-algebra'
import type { Point } from '../types'

type Row = readonly [number, number, number]

/** A homography of the plane: three rows of three; [x, y, 1] goes to w times the new point. */
export type Projection = readonly [Row, Row, Row]

/** Below this share of its size in the middle of the marks w counts as 0: the point lies at or beyond the horizon. */
export const leastWeight = 1e-6

/** w of a point: 0 on the horizon, of the other sign beyond it. */
export function weightOf([, , last]: Projection, [x, y]: Point): number {
  return last[0] * x + last[1] * y + last[2]
}

/** Where a point goes. RangeError for a point at or beyond the horizon, which has no place on the other side. */
export function projected(projection: Projection, point: Point): Point {
  const w = weightOf(projection, point)
  if (!(w > 0)) throw new RangeError(`(${point[0]}, ${point[1]}) lies at or beyond the horizon (w = ${w})`)
  const [x, y] = point
  const [first, second] = projection
  return [(first[0] * x + first[1] * y + first[2]) / w, (second[0] * x + second[1] * y + second[2]) / w]
}

export function productOf(a: Projection, b: Projection): Projection {
  const row = ([p, q, r]: Row): Row => [
    p * b[0][0] + q * b[1][0] + r * b[2][0],
    p * b[0][1] + q * b[1][1] + r * b[2][1],
    p * b[0][2] + q * b[1][2] + r * b[2][2],
  ]
  return [row(a[0]), row(a[1]), row(a[2])]
}

/** The way back. w keeps its sign: what is seen from one side is seen from the other. RangeError when there is none. */
export function inverseProjection(projection: Projection): Projection {
  return projectionOf(inverseOf(projection).flat())
}

/** From nine figures, row by row. RangeError on another count. */
export function projectionOf(figures: readonly number[]): Projection {
  const [a, b, c, d, e, f, g, h, i, ...more] = figures
  if (i === undefined || more.length > 0) {
    throw new RangeError(`a homography has nine figures, got ${figures.length}`)
  }
  return [
    [a!, b!, c!],
    [d!, e!, f!],
    [g!, h!, i],
  ]
}

/** Positive when the map keeps the way round, negative when it turns it over, as between y downwards and v upwards. */
export function determinantOf([[a, b, c], [d, e, f], [g, h, i]]: Projection): number {
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
}

/** How far a short step at a point goes on the other side, along the way enlarged most and along that enlarged least. */
export function enlargementAt(
  projection: Projection,
  point: Point,
): { readonly most: number; readonly least: number } {
  const [u, v] = projected(projection, point)
  const w = weightOf(projection, point)
  const [first, second, last] = projection
  const a = (first[0] - u * last[0]) / w
  const b = (first[1] - u * last[1]) / w
  const c = (second[0] - v * last[0]) / w
  const d = (second[1] - v * last[1]) / w
  // Singular values of [[a, b], [c, d]] without a difference of nearly equal squares.
  const sum = Math.hypot(a + d, b - c)
  const difference = Math.hypot(a - d, b + c)
  return { most: (sum + difference) / 2, least: Math.abs(sum - difference) / 2 }
}
