/**
 * A. K. Kaw, Mechanics of Composite Materials, chapters 2 and 4: graphite/epoxy (table 2.1), the stacks of examples 4.2 and
 * after. Inputs of 4.2 and its Q seen in a published answer; most other outputs from memory, all confirmed by recomputation
 * with numpy. Tolerance 0.1 % unless said.
 */
import { describe, expect, test } from 'vitest'
import {
  type Lamina,
  type Matrix3,
  type PlaneStiffness,
  type PlateLayer,
  plateCompliance,
  plateConstants,
  plateStiffness,
  reducedStiffness,
  thermalAnswer,
  turnedStiffness,
} from '#lib/core/laminate/plate/index'

const graphite: Lamina = {
  e1MPa: 181_000,
  e2MPa: 10_300,
  g12MPa: 7170,
  nu12: 0.28,
  alpha1PerK: 0.02e-6,
  alpha2PerK: 22.5e-6,
}

const stack = (...directions: number[]) =>
  directions.map((directionDeg) => ({ lamina: graphite, directionDeg, thicknessMm: 5 }))

/** Of a free plate, along u, along v and in shear, 1/K. */
const expansionOf = (layers: readonly PlateLayer[]) => thermalAnswer(layers, 1).strains

function near(found: number, expected: number, part = 0.001): void {
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(part)
}

const six = (q: PlaneStiffness) => [q.q11, q.q12, q.q16, q.q22, q.q26, q.q66]
const sixOf = (m: Matrix3) => [m[0][0], m[0][1], m[0][2], m[1][1], m[1][2], m[2][2]]

function allNear(found: readonly number[], expected: readonly number[], unit: number): void {
  expect(found).toHaveLength(expected.length)
  for (const [index, each] of expected.entries()) near(found[index] ?? Number.NaN, each * unit)
}

describe('one layer', () => {
  test('CL-01: reduced stiffness 181.8, 2.897, 10.35 and 7.17 GPa', () => {
    const { q11, q12, q22, q66 } = reducedStiffness(graphite)
    allNear([q11, q12, q22, q66], [181.8, 2.897, 10.35, 7.17], 1000)
  })

  test('CL-02 and CL-04: turned by 60, 30 and -45 degrees, GPa', () => {
    allNear(six(turnedStiffness(graphite, 60)), [23.65, 32.46, 20.05, 109.4, 54.19, 36.74], 1000)
    allNear(six(turnedStiffness(graphite, 30)), [109.4, 32.46, 54.19, 23.65, 20.05, 36.74], 1000)
    allNear(six(turnedStiffness(graphite, -45)), [56.66, 42.32, -42.87, 56.66, -42.87, 46.59], 1000)
  })

  test('CL-03: constants at 60 degrees: 12.42, 28.78 and 8.761 GPa, 0.0978', () => {
    const { exMPa, eyMPa, gxyMPa, nuXy } = plateConstants(plateStiffness(stack(60)))
    allNear([exMPa, eyMPa, gxyMPa], [12.42, 28.78, 8.761], 1000)
    near(nuXy, 0.0978)
  })
})

describe('CL-05 to CL-07: [0/30/-45], 5 mm each', () => {
  const plate = plateStiffness(stack(0, 30, -45))

  test('A in 1e9 N/m', () => {
    allNear(sixOf(plate.a), [1.739, 0.3884, 0.05663, 0.4533, -0.1141, 0.4525], 1e6)
  })

  test('B in 1e6 N', () => {
    allNear(sixOf(plate.b), [-3.129, 0.9855, -1.072, 1.158, -1.072, 0.9855], 1e6)
  })

  test('D in 1e3 N m', () => {
    allNear(sixOf(plate.d), [33.43, 6.461, -5.24, 9.32, -5.596, 7.663], 1e6)
  })
})

describe('CL-09 to CL-11: [0/90/0], 5 mm each', () => {
  const layers = stack(0, 90, 0)
  const plate = plateStiffness(layers)
  const constants = plateConstants(plate)

  test('in the plane: 124.5, 67.43 and 7.17 GPa, 0.04292, 0.02323', () => {
    allNear([constants.exMPa, constants.eyMPa, constants.gxyMPa], [124.5, 67.43, 7.17], 1000)
    near(constants.nuXy, 0.04292)
    near(constants.nuYx, 0.02323)
  })

  test('inverse of A in m/N', () => {
    const { a } = plateCompliance(plate)
    allNear([a[0][0], a[0][1], a[1][1], a[2][2]], [5.353e-10, -2.297e-11, 9.886e-10, 9.298e-9], 1000)
  })

  test('expansion 9.303e-7 along u (from memory) and 2.600e-6 along v (recomputed only)', () => {
    const [along, across] = expansionOf(layers)
    near(along, 9.303e-7)
    near(across, 2.6e-6)
  })

  test('in bending: 175.0, 16.65 and 7.17 GPa (computed for the check, not published)', () => {
    const { exBendingMPa, eyBendingMPa, gxyBendingMPa } = constants
    allNear([exBendingMPa, eyBendingMPa, gxyBendingMPa], [175, 16.65, 7.17], 1000)
  })
})

test('CL-12: [0/90], 5 mm each, cooled by 75 K: forces, moments, strain and warp', () => {
  const { forcesNPerMm, momentsN, strains, curvaturesPerMm } = thermalAnswer(stack(0, 90), -75)
  for (const axis of [0, 1] as const) near(forcesNPerMm[axis], -113.1)
  near(momentsN[0], -153.8)
  near(momentsN[1], 153.8)
  for (const axis of [0, 1] as const) near(strains[axis], -3.907e-4)
  near(curvaturesPerMm[0], -0.1276e-3)
  near(curvaturesPerMm[1], 0.1276e-3)
  expect(Math.abs(forcesNPerMm[2])).toBeLessThan(1e-9)
})

test('CL-15: [0/45/-45/90]s of 0.125 mm is alike in all directions: 69.68 and 26.88 GPa, 0.2960, 1.524e-6', () => {
  const layers = [0, 45, -45, 90, 90, -45, 45, 0].map((directionDeg) => ({
    lamina: graphite,
    directionDeg,
    thicknessMm: 0.125,
  }))
  const { exMPa, eyMPa, gxyMPa, nuXy } = plateConstants(plateStiffness(layers))
  allNear([exMPa, eyMPa, gxyMPa], [69.68, 69.68, 26.88], 1000)
  near(nuXy, 0.296)
  for (const axis of [0, 1] as const) near(expansionOf(layers)[axis], 1.524e-6)
})

test('CL-22: 18.4, 1.6 and 0.95 Msi, 0.28: Q 18.53, 0.4511, 1.611 and 0.95 Msi', () => {
  const { q11, q12, q22, q66 } = reducedStiffness({
    ...graphite,
    e1MPa: 18.4,
    e2MPa: 1.6,
    g12MPa: 0.95,
    nu12: 0.28,
  })
  allNear([q11, q12, q22, q66], [18.53, 0.4511, 1.611, 0.95], 1)
})
