import { leastSquares } from '../../linear-algebra'
import type { Point } from '../types'
import { type Projection, projected, projectionOf, weightOf } from './projection'

/** Steps after which a fit that still moves has not converged; four to ten are usual. */
const mostSteps = 200

/** Below this step, in figures near 1, and below this share of the sum gained, nothing moves any more. */
const stillStep = 1e-12
const stillGain = 1e-14

/** A step that gains nothing and is smaller than this failed by rounding: the sum is flat to its last digits there. */
const roundingStep = 1e-7

/** The start is near: the first steps are all but undamped. */
const firstDamping = 1e-6

/**
 * Moves eight figures of a homography (the ninth is 1) until the sum of squared distances, measured where the points go to,
 * is least: Levenberg and Marquardt's damped steps. Null when it doesn't come to rest. The points are normalised, so that
 * steps and figures are near 1, and all of them lie on one side of the horizon.
 */
export function refined(start: Projection, from: readonly Point[], to: readonly Point[]): Projection | null {
  let best = start
  let bestSum = sumOfSquares(best, from, to)
  let damping = firstDamping
  for (let step = 0; step < mostSteps; step += 1) {
    const rows = slopes(best, from)
    const right = residuals(best, from, to).map((residual) => -residual)
    const change = dampedStep(rows, right, damping)
    const next = changed(best, change)
    const nextSum = sumOfSquares(next, from, to)
    const moved = Math.hypot(...change) / Math.hypot(...best.flat())
    if (nextSum <= bestSum) {
      const atRest = moved <= stillStep || bestSum - nextSum <= stillGain * bestSum
      best = next
      bestSum = nextSum
      if (atRest) return best
      damping /= 10
    } else {
      if (moved <= roundingStep) return best
      damping *= 10
    }
  }
  return null
}

/** Two rows for each point, along u and along v: how far it goes for each of the eight figures. */
export function slopes(projection: Projection, from: readonly Point[]): readonly (readonly number[])[] {
  return from.flatMap((point) => {
    const w = weightOf(projection, point)
    const [u, v] = projected(projection, point)
    const [x, y] = point
    return [
      [x / w, y / w, 1 / w, 0, 0, 0, (-u * x) / w, (-u * y) / w],
      [0, 0, 0, x / w, y / w, 1 / w, (-v * x) / w, (-v * y) / w],
    ]
  })
}

function residuals(projection: Projection, from: readonly Point[], to: readonly Point[]): readonly number[] {
  return from.flatMap((point, index) => {
    const [u, v] = projected(projection, point)
    const [knownU, knownV] = to[index]!
    return [u - knownU, v - knownV]
  })
}

/** Infinite when a point would lie at or beyond the horizon: such a step is never taken. */
function sumOfSquares(projection: Projection, from: readonly Point[], to: readonly Point[]): number {
  if (from.some((point) => !(weightOf(projection, point) > 0))) return Infinity
  return residuals(projection, from, to).reduce((sum, residual) => sum + residual * residual, 0)
}

function dampedStep(
  rows: readonly (readonly number[])[],
  right: readonly number[],
  damping: number,
): readonly number[] {
  const count = rows[0]!.length
  const damped = Array.from({ length: count }, (_, column) => {
    const length = Math.hypot(...rows.map((row) => row[column]!))
    return Array.from({ length: count }, (_unused, other) =>
      other === column ? Math.sqrt(damping) * length : 0,
    )
  })
  return leastSquares([...rows, ...damped], [...right, ...new Array<number>(count).fill(0)])
}

function changed(projection: Projection, change: readonly number[]): Projection {
  return projectionOf([
    ...projection
      .flat()
      .slice(0, 8)
      .map((value, index) => value + change[index]!),
    1,
  ])
}
