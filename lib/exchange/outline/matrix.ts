import type { Point } from '#lib/core/geometry/index'

/** [a, b, c, d, e, f]: x' = a x + c y + e, y' = b x + d y + f, as SVG writes it. */
export type Matrix = readonly [number, number, number, number, number, number]

export const identity: Matrix = [1, 0, 0, 1, 0, 0]

/** First `inner`, then `outer`. */
export function composed(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer
  const [p, q, r, s, t, u] = inner
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f]
}

export function translation(x: number, y: number): Matrix {
  return [1, 0, 0, 1, x, y]
}

export function scaling(x: number, y: number): Matrix {
  return [x, 0, 0, y, 0, 0]
}

/** Counter-clockwise from x to y. Quarter turns come out exact. */
export function rotation(degrees: number): Matrix {
  const quarter = ((degrees % 360) + 360) % 360
  const exact = { 0: [1, 0], 90: [0, 1], 180: [-1, 0], 270: [0, -1] }[quarter]
  const turn = (degrees * Math.PI) / 180
  const [cos, sin] = exact ?? [Math.cos(turn), Math.sin(turn)]
  return [cos!, sin!, -sin!, cos!, 0, 0]
}

export function moved([a, b, c, d, e, f]: Matrix, [x, y]: Point): Point {
  return [a * x + c * y + e + 0, b * x + d * y + f + 0]
}

/** A direction with its length: as a point, but without the shift. */
export function turned([a, b, c, d]: Matrix, [x, y]: Point): Point {
  return [a * x + c * y, b * x + d * y]
}

/** Below 0 when it turns what runs counter-clockwise into clockwise. */
export function determinant([a, b, c, d]: Matrix): number {
  return a * d - b * c
}

/** Whether circles stay circles, mirrored or not; a share of 1e-12 is left to rounding. */
export function isSimilarity([a, b, c, d]: Matrix): boolean {
  const [first, second] = [Math.hypot(a, b), Math.hypot(c, d)]
  const hair = 1e-12 * Math.max(first, second)
  return Math.abs(first - second) <= hair && Math.abs(a * c + b * d) <= hair * Math.max(first, second)
}
