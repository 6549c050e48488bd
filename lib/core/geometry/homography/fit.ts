import { inverseOf } from '../../linear-algebra'
import type { Point } from '../types'
import { directLinear } from './direct-linear'
import { normalised } from './normalised'
import { leastWeight, type Projection, productOf, projected, projectionOf, weightOf } from './projection'
import { refined, slopes } from './refined'
import type { Mark, Pixel } from './types'

export interface Fit {
  readonly toFace: Projection
  /** Where a point of the picture lies on the face. RangeError at or beyond the horizon. */
  readonly place: (pixel: Pixel) => Point
  /** w: 1 in the middle of the marks, 0 on the horizon. */
  readonly weightAt: (pixel: Pixel) => number
  /** Sum of the squared residuals, mm2. */
  readonly sumMm2: number
  /**
   * Covariance of a placed point in mm2, [uu, uv, vv], when every coordinate of the marks has a standard deviation of 1 mm
   * on the face.
   */
  readonly covarianceAt: (pixel: Pixel) => readonly [number, number, number]
}

/** beyond-horizon: no view of a plane shows the marks as they were set. */
export type Unfitted = 'beyond-horizon' | 'not-converged'

/**
 * Fits picture to face: normalised direct linear transform, then least squares of the residuals on the face in mm. Marks are
 * weighted alike there, so a mark far off in an oblique picture counts as much as a near one. Four marks at least that don't
 * lie in a line: see `straightness`. A fit of nearly the same marks may be given to begin `near`.
 */
export function fitMarks(marks: readonly Mark[], near?: Projection): Fit | Unfitted {
  const picture = normalised(marks.map((mark) => mark.atPx))
  const face = normalised(marks.map((mark) => mark.atMm))
  const first =
    near === undefined
      ? directLinear(picture.points, face.points)
      : productOf(face.to, productOf(near, picture.from))
  const start = projectionOf(first.flat().map((value) => value / first[2][2]))
  const seen = (projection: Projection) =>
    picture.points.every((point) => weightOf(projection, point) > leastWeight)
  if (!seen(start)) return 'beyond-horizon'
  const best = refined(start, picture.points, face.points)
  if (best === null) return 'not-converged'
  if (!seen(best)) return 'beyond-horizon'
  const toFace = productOf(face.from, productOf(best, picture.to))
  return {
    toFace,
    place: (pixel) => projected(toFace, pixel),
    weightAt: (pixel) => weightOf(toFace, pixel),
    sumMm2: marks.reduce((sum, mark) => sum + offMm(toFace, mark) ** 2, 0),
    covarianceAt: covariance(best, picture.points, picture.to),
  }
}

/** How far the fit puts a mark from its known place. */
export function offMm(toFace: Projection, { atPx, atMm }: Mark): number {
  const [u, v] = projected(toFace, atPx)
  return Math.hypot(u - atMm[0], v - atMm[1])
}

/** Least squares to the first order (Hartley and Zisserman, 5.2): G (J' J)^-1 G'. The size of the face falls out of it. */
function covariance(best: Projection, points: readonly Point[], to: Projection): Fit['covarianceAt'] {
  const rows = slopes(best, points)
  const eight = Array.from({ length: 8 }, (_, index) => index)
  const normal = eight.map((i) => eight.map((j) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0)))
  const figures = inverseOf(normal)
  return (pixel) => {
    const [alongU, alongV] = slopes(best, [projected(to, pixel)])
    const form = (p: readonly number[], q: readonly number[]) =>
      eight.reduce(
        (sum, i) => sum + p[i]! * eight.reduce((inner, j) => inner + figures[i]![j]! * q[j]!, 0),
        0,
      )
    return [form(alongU!, alongU!), form(alongU!, alongV!), form(alongV!, alongV!)]
  }
}

/** Standard deviation along the worse direction of a covariance. */
export function worstSpread([uu, uv, vv]: readonly [number, number, number]): number {
  return Math.sqrt((uu + vv) / 2 + Math.hypot((uu - vv) / 2, uv))
}
