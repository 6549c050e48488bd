/**
 * R. J. Crawford, Plastics Engineering, chapter 3. Example 3.1: density of the composite seen, densities of glass and epoxy
 * from memory. Example 3.13 (p. 215): inputs and outputs seen. Example 3.16 (p. 224): Q12 and Q22 seen, Q11 from the formula.
 * All confirmed by recomputation; tolerance 0.5 %.
 */
import { expect, test } from 'vitest'
import { fibreSharesFromDensity } from '#lib/core/laminate/index'
import { type Lamina, plateConstants, plateStiffness, reducedStiffness } from '#lib/core/laminate/plate/index'
import { toInside } from '#lib/core/units'

test('PT-02: 1950 kg/m3 of glass 2540 in epoxy 1300 is 0.524 by volume, 0.683 by mass, to 0.5 %', () => {
  const [composite, glass, epoxy] = [1950, 2540, 1300].map((each) => toInside(each, 'density', 'kg/m3'))
  const shares = fibreSharesFromDensity(composite!, glass!, epoxy!)
  expect(Math.abs(shares.byVolume / 0.524 - 1)).toBeLessThan(0.005)
  expect(Math.abs(shares.byMass / 0.683 - 1)).toBeLessThan(0.005)
})

const still = { alpha1PerK: 0, alpha2PerK: 0 }

function near(found: number, expected: number): void {
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(0.005)
}

test('CL-13 (example 3.13): one ply at 25 degrees: 28.3, 11.7 and 7.3 GPa, 0.495 and 0.205', () => {
  const lamina: Lamina = { e1MPa: 175_000, e2MPa: 12_000, g12MPa: 5000, nu12: 0.3, ...still }
  const constants = plateConstants(plateStiffness([{ lamina, directionDeg: 25, thicknessMm: 1 }]))
  near(constants.exMPa, 28_300)
  near(constants.eyMPa, 11_700)
  near(constants.gxyMPa, 7300)
  near(constants.nuXy, 0.495)
  near(constants.nuYx, 0.205)
})

test('CL-16 (example 3.16): reduced stiffness 1.46e5, 4.20e3 and 1.51e4 MPa', () => {
  const { q11, q12, q22 } = reducedStiffness({
    e1MPa: 145e3,
    e2MPa: 15e3,
    g12MPa: 4e3,
    nu12: 0.278,
    ...still,
  })
  near(q11, 1.46e5)
  near(q12, 4.2e3)
  near(q22, 1.51e4)
})
