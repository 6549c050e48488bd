import { turnedExpansion, turnedStiffness } from './lamina'
import { type Row3, times } from './matrix'
import { type PlateLayer, placedLayers, plateCompliance, plateStiffness } from './stiffness'

/** What a change of temperature does to a free plate. */
export interface ThermalAnswer {
  /** Forces and moments that the change would need to be held off: N/mm and N. */
  readonly forcesNPerMm: Row3
  readonly momentsN: Row3
  /** Strains of the middle plane along u, v and in shear, and curvatures, 1/mm. */
  readonly strains: Row3
  readonly curvaturesPerMm: Row3
}

/** Thermal forces and moments, and what a free plate does: it grows, and warps when it is not mirrored. Kaw, chapter 4. */
export function thermalAnswer(layers: readonly PlateLayer[], changeK: number): ThermalAnswer {
  if (!Number.isFinite(changeK))
    throw new RangeError(`the change of temperature must be a number of kelvin, got ${changeK}`)
  const force: [number, number, number] = [0, 0, 0]
  const moment: [number, number, number] = [0, 0, 0]
  for (const { lamina, directionDeg, fromMm, toMm } of placedLayers(layers)) {
    const { q11, q12, q16, q22, q26, q66 } = turnedStiffness(lamina, directionDeg)
    const stress = times(
      [
        [q11, q12, q16],
        [q12, q22, q26],
        [q16, q26, q66],
      ],
      turnedExpansion(lamina, directionDeg),
    )
    for (const axis of [0, 1, 2] as const) {
      force[axis] += changeK * stress[axis] * (toMm - fromMm)
      moment[axis] += (changeK * stress[axis] * (toMm ** 2 - fromMm ** 2)) / 2
    }
  }
  const { a, b, bTurned, d } = plateCompliance(plateStiffness(layers))
  return {
    forcesNPerMm: force,
    momentsN: moment,
    strains: sum(times(a, force), times(b, moment)),
    curvaturesPerMm: sum(times(bTurned, force), times(d, moment)),
  }
}

function sum(x: Row3, y: Row3): Row3 {
  return [x[0] + y[0], x[1] + y[1], x[2] + y[2]]
}
