import type { Pair, XY } from './draw-dxf'

/** `major` from the centre; parameters in radians; `up`: z of the direction that it is seen from. */
export function ellipse(
  [x, y]: XY,
  major: XY,
  ratio: number,
  { from = 0, to = 2 * Math.PI, up = 1, layer = 'CUT' } = {},
): readonly Pair[] {
  return [
    [0, 'ELLIPSE'],
    [8, layer],
    [10, x],
    [20, y],
    [30, 0],
    [11, major[0]],
    [21, major[1]],
    [31, 0],
    [210, 0],
    [220, 0],
    [230, up],
    [40, ratio],
    [41, from],
    [42, to],
  ]
}

export function spline(
  degree: number,
  knots: readonly number[],
  controls: readonly XY[],
  { flags = 8, weights = [] as readonly number[], more = [] as readonly Pair[] } = {},
): readonly Pair[] {
  return [
    [0, 'SPLINE'],
    [8, 'CUT'],
    [70, flags],
    [71, degree],
    [72, knots.length],
    [73, controls.length],
    [74, 0],
    ...knots.map((knot): Pair => [40, knot]),
    ...weights.map((weight): Pair => [41, weight]),
    ...controls.flatMap(([x, y]): readonly Pair[] => [
      [10, x],
      [20, y],
      [30, 0],
    ]),
    ...more,
  ]
}

/** Knots from 0 to 1 that hold a curve at its first and last control point. */
export function clamped(degree: number, controls: number): readonly number[] {
  const inner = controls - degree
  return Array.from({ length: controls + degree + 1 }, (_, index) => {
    return Math.min(1, Math.max(0, (index - degree) / inner))
  })
}

/** A whole circle as four rational arcs of degree 2. */
export function circleSpline([x, y]: XY, radius: number): readonly Pair[] {
  const around: readonly XY[] = [
    [1, 0],
    [1, 1],
    [0, 1],
    [-1, 1],
    [-1, 0],
    [-1, -1],
    [0, -1],
    [1, -1],
    [1, 0],
  ]
  return spline(
    2,
    [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
    around.map(([u, v]) => [x + radius * u, y + radius * v]),
    { flags: 8 | 4 | 1, weights: around.map((_, index) => (index % 2 === 0 ? 1 : Math.SQRT1_2)) },
  )
}
