/**
 * netcomposites.com, repair guide, scarfing (2019): about half an inch of taper a ply. Published rule, arithmetic
 * ours. Sanded scarf, no least step.
 */
import { expect, test } from 'vitest'
import { planned, plyOf, quietPatch, roundLoop } from '#tests/core/repair/sample-patch'

const { value } = planned(
  quietPatch({
    edge: 'scarf',
    opening: { outer: roundLoop([0, 0], 25, 720), holes: [] },
    stack: Array.from({ length: 6 }, () => plyOf(0.5)),
    measuredThicknessMm: [3],
    taper: { ratio: 20, mmPerPly: 12.7, use: 'mm-per-ply' },
    coverPlies: [plyOf(0.5)],
    rules: { ...quietPatch().rules, leastSurfaceStepMm: 0, coverLapMm: 25.4 },
  }),
)

test('SG-07: a hole of 50 mm, six plies at 12.7 mm: outer diameters to 0.1 mm, cover with a lap of 25.4', () => {
  const expected = [75.4, 100.8, 126.2, 151.6, 177.0, 202.4, 253.2]
  expect(value.plies).toHaveLength(expected.length)
  for (const [index, diameter] of expected.entries()) {
    for (const across of value.plies[index]!.acrossMm)
      expect(Math.abs(across - diameter)).toBeLessThanOrEqual(0.1)
  }
})

test('SG-07: the six plies add up to 997.8 cm2, to 0.1', () => {
  const cm2 = value.plies.slice(0, 6).reduce((sum, ply) => sum + ply.areaMm2 / 100, 0)
  expect(Math.abs(cm2 - 997.8)).toBeLessThanOrEqual(0.1)
})
