import type { Point } from '../types'
import type { Mark } from './types'

/**
 * Below this ratio of width to length the marks count as lying in a line: 1 mm on 500 is less than a mark can be set and
 * measured over a face. Below the other one it is told. Both chosen here.
 */
export const degenerateRatio = 0.002
export const narrowRatio = 0.05

export interface Straightness {
  /** Width across their best line over length along it, root mean squares; 0 in a line, at most 1. */
  readonly ratio: number
  /** The mark that was left out, when the others lie nearer to a line than all of them. */
  readonly without: string | null
  /** Largest distance from the line, and length along it: in mm on the face, or in pixels. */
  readonly acrossMost: number
  readonly alongWhole: number
  readonly where: 'face' | 'picture'
}

/**
 * How nearly the marks leave the fit open. Four points no three of which lie in a line fix a homography, and among the marks
 * there are such four unless all of them but one lie in a line (or at one place). Each mark is left out in turn, on the face
 * and in the picture, which shows a face that is seen along its surface as a line; the nearest to a line counts.
 */
export function straightness(marks: readonly Mark[]): Straightness {
  const found = (['face', 'picture'] as const).flatMap((where) => {
    const points = marks.map(({ atMm, atPx }) => (where === 'face' ? atMm : atPx))
    return marks.map(({ tag }, left) => ({
      ...bestLine(points.filter((_, index) => index !== left)),
      without: tag as string | null,
      where,
      whole: bestLine(points),
    }))
  })
  const { whole, ...straightest } = found.reduce((best, next) => (next.ratio < best.ratio ? next : best))
  // All of them in a line: nothing is gained by naming one.
  return whole.ratio < 2 * straightest.ratio + Number.EPSILON
    ? { ...straightest, ...whole, without: null }
    : straightest
}

function bestLine(points: readonly Point[]): Pick<Straightness, 'ratio' | 'acrossMost' | 'alongWhole'> {
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length
  const middle = [mean(0), mean(1)] as const
  const offsets = points.map(([x, y]) => [x - middle[0], y - middle[1]] as const)
  const total = (each: (offset: Point) => number) => offsets.reduce((sum, offset) => sum + each(offset), 0)
  const turn =
    Math.atan2(
      total(([x, y]) => 2 * x * y),
      total(([x, y]) => x * x - y * y),
    ) / 2
  const along = offsets.map(([x, y]) => x * Math.cos(turn) + y * Math.sin(turn))
  const across = offsets.map(([x, y]) => y * Math.cos(turn) - x * Math.sin(turn))
  const length = Math.hypot(...along)
  return {
    ratio: length === 0 ? 0 : Math.hypot(...across) / length,
    acrossMost: Math.max(...across.map(Math.abs)),
    alongWhole: Math.max(...along) - Math.min(...along),
  }
}
