import { unitVector } from './direction'
import { distanceBetweenPoints } from './loop'
import { chordErrorMm } from './tolerance'
import type { Point } from './types'

/** Angles in radians; the sweep is positive counter-clockwise and at most a full turn. */
export interface Arc {
  readonly centre: Point
  readonly radiusMm: number
  readonly startRad: number
  readonly sweepRad: number
}

/**
 * Points of an arc from its start to its end, both included. All lie on the arc; chords stay within 0.005 mm of it.
 * Where the arc passes straight right of, above, left of or below its centre there is a point, so bounds are true.
 * RangeError unless the radius is above 0.
 */
export function flattenArc({ centre, radiusMm, startRad, sweepRad }: Arc): readonly Point[] {
  assertRadius(radiusMm)
  const at = (angle: number): Point => {
    const [cos, sin] = unitVector(angle)
    return [centre[0] + radiusMm * cos, centre[1] + radiusMm * sin]
  }
  const stops = [startRad, ...quartersBetween(startRad, sweepRad), startRad + sweepRad]
  const largestStep = 2 * Math.acos(1 - Math.min(chordErrorMm / radiusMm, 0.5))
  return stops.flatMap((stop, index) => {
    if (index === 0) return [at(stop)]
    const from = stops[index - 1]!
    const count = Math.max(1, Math.ceil(Math.abs(stop - from) / largestStep))
    return Array.from({ length: count }, (_, step) => at(from + ((stop - from) * (step + 1)) / count))
  })
}

/** An arc as drawings give it: counter-clockwise from one angle to another. Equal angles are the full circle. */
export function arcByAngles(centre: Point, radiusMm: number, startDeg: number, endDeg: number): Arc {
  const turn = (((endDeg - startDeg) % 360) + 360) % 360
  return {
    centre,
    radiusMm,
    startRad: (startDeg * Math.PI) / 180,
    sweepRad: ((turn === 0 ? 360 : turn) * Math.PI) / 180,
  }
}

/**
 * The arc from one point to another by its bulge, the tangent of a quarter of its sweep: positive counter-clockwise,
 * 1 is a half circle. Null for a straight edge: bulge 0, or so flat that the chord lies within 0.005 mm.
 */
export function arcByBulge(from: Point, to: Point, bulge: number): Arc | null {
  const chordMm = distanceBetweenPoints(from, to)
  if ((Math.abs(bulge) * chordMm) / 2 <= chordErrorMm) return null
  const radiusMm = (chordMm * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
  const offAxis = (1 - bulge * bulge) / (4 * bulge)
  const centre: Point = [
    (from[0] + to[0]) / 2 - offAxis * (to[1] - from[1]),
    (from[1] + to[1]) / 2 + offAxis * (to[0] - from[0]),
  ]
  const startRad = Math.atan2(from[1] - centre[1], from[0] - centre[0])
  return { centre, radiusMm, startRad, sweepRad: 4 * Math.atan(bulge) }
}

/** Points from `from` to `to`, both included and exact, along the arc of that bulge. */
export function flattenBulge(from: Point, to: Point, bulge: number): readonly Point[] {
  const arc = arcByBulge(from, to, bulge)
  return arc === null ? [from, to] : [from, ...flattenArc(arc).slice(1, -1), to]
}

/** Quarter turns strictly between the ends of a sweep; a hair from an end there is no second point. */
function quartersBetween(startRad: number, sweepRad: number): readonly number[] {
  const quarter = Math.PI / 2
  const hair = 1e-9
  const [low, high] = sweepRad > 0 ? [startRad, startRad + sweepRad] : [startRad + sweepRad, startRad]
  const angles: number[] = []
  for (let count = Math.ceil((low + hair) / quarter); count * quarter < high - hair; count++) {
    angles.push(count * quarter)
  }
  return sweepRad > 0 ? angles : angles.reverse()
}

function assertRadius(radiusMm: number): void {
  if (!(radiusMm > 0 && Number.isFinite(radiusMm))) {
    throw new RangeError(`radius of an arc must be above 0 mm, got ${radiusMm}`)
  }
}
