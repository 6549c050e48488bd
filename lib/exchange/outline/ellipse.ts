import { chordErrorMm, type Point } from '#lib/core/geometry/index'

/** An arc of an ellipse, mm. At an angle it lies at centre + cosine * first + sine * second. */
export interface Ellipse {
  readonly centre: Point
  /** Half axes, or any other two of its conjugate half diameters. */
  readonly first: Point
  readonly second: Point
  readonly startRad: number
  readonly sweepRad: number
}

/**
 * Points of the arc from its beginning, left out, to its end; chords stay within 0.005 mm: a step h leaves an ellipse
 * of half axis a by at most h^2 a / 8. Where the arc turns back along u or v there is a point, so bounds are true.
 */
export function flattenEllipse(ellipse: Ellipse): readonly Point[] {
  const { centre, first, second, startRad, sweepRad } = ellipse
  const largestStep = stepRad(ellipse)
  const angles = [startRad, ...turningAngles(ellipse), startRad + sweepRad]
  return angles.slice(1).flatMap((angle, index) => {
    const from = angles[index]!
    const count = Math.max(1, Math.ceil(Math.abs(angle - from) / largestStep))
    return Array.from({ length: count }, (_, step): Point => {
      const at = from + ((angle - from) * (step + 1)) / count
      const [cos, sin] = [Math.cos(at), Math.sin(at)]
      return [centre[0] + cos * first[0] + sin * second[0], centre[1] + cos * first[1] + sin * second[1]]
    })
  })
}

/** At most so many points come of flattening it. */
export function mostEllipsePoints(ellipse: Ellipse): number {
  return Math.abs(ellipse.sweepRad) / stepRad(ellipse) + 6
}

function stepRad(ellipse: Ellipse): number {
  return Math.min(Math.PI / 4, Math.sqrt((8 * chordErrorMm) / longestHalfAxis(ellipse)))
}

/** Larger singular value of the two half diameters. */
export function longestHalfAxis({
  first: [a, b],
  second: [c, d],
}: Pick<Ellipse, 'first' | 'second'>): number {
  const sum = a * a + b * b + c * c + d * d
  const area = a * d - b * c
  return Math.sqrt((sum + Math.sqrt(Math.max(0, sum * sum - 4 * area * area))) / 2)
}

/** Angles strictly between the ends at which the arc runs square to an axis, in the order of the arc. */
function turningAngles({ first, second, startRad, sweepRad }: Ellipse): readonly number[] {
  const [low, high] = sweepRad > 0 ? [startRad, startRad + sweepRad] : [startRad + sweepRad, startRad]
  const hair = 1e-9
  const angles = ([0, 1] as const).flatMap((axis) => {
    const angle = Math.atan2(second[axis], first[axis])
    const firstTurn = Math.ceil((low + hair - angle) / Math.PI)
    const lastTurn = Math.floor((high - hair - angle) / Math.PI)
    return Array.from({ length: Math.max(0, lastTurn - firstTurn + 1) }, (_, index) => {
      return angle + (firstTurn + index) * Math.PI
    })
  })
  const sorted = angles
    .sort((a, b) => a - b)
    .filter((angle, index) => index === 0 || angle - angles[index - 1]! > hair)
  return sweepRad > 0 ? sorted : [...sorted].reverse()
}
