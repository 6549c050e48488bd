/**
 * Laps by shear lag (O. Volkersen) and long double laps with a yielding adhesive (L. J. Hart-Smith, NASA CR-112235): formulas
 * from memory, the second derived anew from an energy integral and confirmed by a boundary-value solution; values computed
 * for these checks, not published. Tolerance 0.2 %.
 */
import { expect, test } from 'vitest'
import {
  longDoubleLap,
  neededRatio,
  scarfAngleDeg,
  scarfStress,
  singleLap,
  stepShearMPa,
} from '#lib/core/joint/index'

function near(found: number, expected: number, part = 0.002): void {
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(part)
}

const sheet = { eMPa: 70_000, thicknessMm: 1.6, alphaPerK: 0 }
const lap = (lengthMm: number) => singleLap(100, lengthMm, sheet, sheet, { gMPa: 1000, thicknessMm: 0.2 })

test('LJ-02: 12.5 mm: shear lag 0.29881 1/mm, mean 8.00, highest 15.67 MPa', () => {
  const { wPerMm, meanMPa, highestMPa } = lap(12.5)
  near(wPerMm, 0.29881)
  near(meanMPa, 8)
  near(highestMPa, 15.67)
  near(highestMPa / meanMPa, 1.959)
})

test('LJ-03: twice the length halves the mean and hardly lowers the highest: 14.96 MPa', () => {
  near(lap(25).meanMPa, 4)
  near(lap(25).highestMPa, 14.96)
})

test.each([
  [1, 1.0074],
  [5, 1.179],
  [50, 7.47],
])('LJ-05: %d mm long, highest over mean %f', (lengthMm, ratio) => {
  const { highestMPa, meanMPa } = lap(lengthMm)
  near(highestMPa / meanMPa, ratio)
})

const outer = { eMPa: 50_000, thicknessMm: 2, alphaPerK: 0 }
const inner = { eMPa: 50_000, thicknessMm: 4, alphaPerK: 0 }
const film = { yieldMPa: 40, elasticStrain: 0.05, plasticStrain: 0.5, thicknessMm: 0.125 }

test('LJ-06: energy 2.625 N/mm, load 2049.4 N/mm, 0.3578 1/mm, lengths 25.6, 31.2 and 42.4 mm', () => {
  const long = longDoubleLap(outer, inner, film)
  near(long.energyNPerMm, 2.625)
  near(long.loadNPerMm, 2049.4)
  near(long.lambdaPerMm, 0.3578)
  near(long.plasticMm, 25.6)
  near(long.reachingMm, 31.2)
  near(long.restingMm, 42.4)
})

test('LJ-08: the same without yielding carries 447.2 N/mm', () => {
  near(longDoubleLap(outer, inner, { ...film, plasticStrain: 0 }).loadNPerMm, 447.2)
})

test('SG-01: angles of 20 to 60 to 1; to 0.001 degrees', () => {
  const expected = [2.862, 1.909, 1.432, 1.146, 0.9548]
  for (const [index, ratio] of [20, 30, 40, 50, 60].entries())
    expect(Math.abs(scarfAngleDeg(ratio) - (expected[index] ?? 0))).toBeLessThanOrEqual(0.001)
})

test('SS-09: shear of 100 MPa through 20 to 60 to 1; to 0.001 MPa', () => {
  const expected = [4.988, 3.33, 2.498, 1.999, 1.666]
  for (const [index, ratio] of [20, 30, 40, 50, 60].entries()) {
    const { shearMPa } = scarfStress(100, scarfAngleDeg(ratio))
    expect(Math.abs(shearMPa - (expected[index] ?? 0))).toBeLessThanOrEqual(0.001)
  }
})

test.each([
  ['SS-10', 400, 20, 19.95],
  ['SS-11', 500, 30, 16.61],
  ['SS-11', 100, 10, 9.899],
])('%s: %d MPa with %d MPa allowed needs %f to 1; to 0.01', (_id, pull, allowed, ratio) => {
  expect(Math.abs((neededRatio(pull, allowed) ?? 0) - ratio)).toBeLessThanOrEqual(0.01)
})

test('SS-12: a ply of 0.25 mm at 500 MPa over a step of 12.7 mm: 9.843 MPa', () => {
  expect(Math.abs(stepShearMPa(500, 0.25, 12.7) - 9.843)).toBeLessThanOrEqual(0.01)
})
