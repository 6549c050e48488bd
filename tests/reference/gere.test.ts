/**
 * Stresses on an inclined glued plane. J. M. Gere and S. P. Timoshenko, Mechanics of Materials, 3rd SI edition: question
 * published, answers recomputed; a later edition's answers from memory; glued-splice exercises of the same kind, questions
 * published. Tolerance 0.5 %. The angle is that between plane and pull.
 */
import { expect, test } from 'vitest'
import { neededRatio, scarfAngleDeg, scarfStress } from '#lib/core/joint/index'

function near(found: number | undefined, expected: number, part = 0.005): void {
  expect(Math.abs((found ?? Number.NaN) / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(
    part,
  )
}

/** What a bar carries with allowable stresses on the plane. */
function carried(sectionMm2: number, angleDeg: number, allowedNormalMPa: number, allowedShearMPa: number) {
  const one = scarfStress(1, angleDeg)
  const byNormalN = (allowedNormalMPa / one.normalMPa) * sectionMm2
  return { forceN: Math.min(byNormalN, (allowedShearMPa / one.shearMPa) * sectionMm2), byNormalN }
}

/** The angle at which the shear is so many times the normal stress: their ratio falls steadily with the angle. */
function angleWhere(shearToNormal: number): number {
  let [low, high] = [0.01, 89.99]
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2
    const { normalMPa, shearMPa } = scarfStress(1, middle)
    if (shearMPa / normalMPa > shearToNormal) low = middle
    else high = middle
  }
  return low
}

test('SS-01: 18 MPa at 25 degrees: 3.215 and 6.894 MPa; 6 to 5 at 50.19 degrees', () => {
  const { normalMPa, shearMPa } = scarfStress(18, 25)
  near(normalMPa, 3.215)
  near(shearMPa, 6.894)
  near(angleWhere(5 / 6), 50.19)
})

test('SS-02: 4.9 MPa at 20 degrees: 0.573 and 1.575 MPa; 2.25 MPa of shear at 33.34; twice the normal stress at 26.57', () => {
  const { normalMPa, shearMPa } = scarfStress(4.9, 20)
  near(normalMPa, 0.573)
  near(shearMPa, 1.575)
  near(scarfAngleDeg(neededRatio(4.9, 2.25) ?? Number.NaN), 33.34)
  near(angleWhere(2), 26.57)
})

test('SS-03: 80 by 120 mm at 22 degrees, 400 and 600 kPa: 16.58 kN by shear, 27.36 by tension', () => {
  const { forceN, byNormalN } = carried(80 * 120, 22, 0.4, 0.6)
  near(forceN, 16_580)
  near(byNormalN, 27_360)
})

test('SS-04: 80 by 120 mm at 25 degrees, 10 kN: 399.0 kPa of shear, 186.0 normal', () => {
  const { normalMPa, shearMPa } = scarfStress(10_000 / (80 * 120), 25)
  near(shearMPa, 0.399)
  near(normalMPa, 0.186)
})

test('SS-07: a plastic bar, 7 and 4 MPa, 250 mm2: the best angle from the normal 29.74 degrees, 2.321 kN', () => {
  const fromNormal = 90 - angleWhere(4 / 7)
  near(fromNormal, 29.74)
  near(carried(250, 90 - fromNormal, 7, 4).forceN, 2321)
})
