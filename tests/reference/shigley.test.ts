/**
 * J. E. Shigley, Mechanical Engineering Design, 9th edition, example 9-7: a double lap with a mismatch of expansion. Inputs
 * published (the 250 F of the cure is a distractor), outputs recomputed, the highest stress also from memory. Tolerance 0.5 %.
 * In inches, pounds and degrees Fahrenheit throughout: the formula holds in any one system.
 */
import { expect, test } from 'vitest'
import { doubleLap } from '#lib/core/joint/index'

const outer = { eMPa: 10e6, thicknessMm: 0.15, alphaPerK: 13.3e-6 }
const inner = { eMPa: 30e6, thicknessMm: 0.1, alphaPerK: 6e-6 }
const { all, byLoad, byHeat } = doubleLap(2000, 1, outer, inner, { gMPa: 0.2e6, thicknessMm: 0.02 }, 70 - 200)

function near(found: number, expected: number): void {
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(0.005)
}

test('LJ-01: shear lag 3.651 1/in; from the load 603.9 psi in the middle and 1923 at both ends', () => {
  near(all.wPerMm, 3.651)
  near(byLoad.atMPa(0), 603.9)
  near(byLoad.atMPa(0.5), 1923)
  near(byLoad.atMPa(-0.5), 1923)
})

test('LJ-01: from the mismatch ±2467 at the ends, in all 4390 where the inner sheet is pulled, -544 at the other end', () => {
  near(byHeat.atMPa(0.5), 2467)
  near(byHeat.atMPa(-0.5), -2467)
  near(all.atMPa(0.5), 4390)
  near(all.atMPa(-0.5), -544)
  near(all.highestMPa, 4390)
})

test('LJ-01: both bonds together carry the load of 2000 lbf; the mismatch carries none', () => {
  const integral = (at: (x: number) => number) => {
    const steps = 2000
    let sum = 0
    for (let step = 0; step < steps; step += 1) sum += at(-0.5 + (step + 0.5) / steps) / steps
    return sum
  }
  near(2 * integral(all.atMPa), 2000)
  expect(Math.abs(integral(byHeat.atMPa))).toBeLessThan(1e-6)
})
