/**
 * Values computed from a stated formula, not from a published example; recomputed outside this code. Sanded scarf,
 * no least step; SG-09 and SG-10 in place from the face: bulk plies first, surface ply last and largest.
 */
import { describe, expect, test } from 'vitest'
import { curedPly, type PlyMaterial, stackUp } from '#lib/core/laminate/index'
import { ratioOfStep, scarfAngleDeg } from '#lib/core/repair/index'
import { toInside } from '#lib/core/units'
import { planned, plyOf, quietPatch, roundLoop, surfaceTwill } from '#tests/core/repair/sample-patch'

function within(found: number, expected: number, tolerance: number): void {
  expect(Math.abs(found - expected), `${found} against ${expected}`).toBeLessThanOrEqual(tolerance)
}

describe('scarf geometry', () => {
  test('SG-01: angles of 20:1 to 60:1, to 0.001 deg', () => {
    const expected = { 20: 2.862, 30: 1.909, 40: 1.432, 50: 1.146, 60: 0.9548 }
    for (const [ratio, angle] of Object.entries(expected)) within(scarfAngleDeg(Number(ratio)), angle, 0.001)
  })

  test('SG-08: 12.7 mm a ply is 50.8:1 on 0.25 mm and 18.35:1 on 0.692 mm, to 0.05', () => {
    within(ratioOfStep(12.7, 0.25), 50.8, 0.05)
    within(ratioOfStep(12.7, 0.692), 18.35, 0.05)
    const { lengths } = planned(
      quietPatch({ stack: [plyOf(0.25), plyOf(0.692)], removedPlies: [1, 2], measuredThicknessMm: [] }),
    ).value
    within(lengths.ratioOfMmPerPly[0]!, 50.8, 0.05)
    within(lengths.ratioOfMmPerPly[1]!, 18.35, 0.05)
  })

  const face = (ratio: number) =>
    planned(
      quietPatch({
        side: 'place-face',
        edge: 'scarf',
        opening: { outer: roundLoop([0, 0], 20, 720), holes: [] },
        stack: [plyOf(0.237), plyOf(0.692), plyOf(0.692), plyOf(0.692), plyOf(0.692)],
        removedPlies: [1, 2, 3, 4, 5],
        measuredThicknessMm: [],
        taper: { ratio, mmPerPly: 12.7, use: 'ratio' },
        coverPlies: [plyOf(0.692)],
        rules: { ...quietPatch().rules, leastSurfaceStepMm: 0 },
      }),
    ).value

  test('SG-09: hole of 40 mm, four bulk plies and a surface ply at 30:1: steps, diameters, areas, to 0.2', () => {
    const { plies, lengths } = face(30)
    for (const [index, step] of [20.76, 20.76, 20.76, 20.76, 7.11].entries())
      within(plies[index]!.stepMm, step, 0.2)
    for (const [index, diameter] of [81.5, 123.0, 164.6, 206.1, 220.3, 270.3].entries()) {
      within(plies[index]!.acrossMm[0], diameter, 0.2)
    }
    within(lengths.lengthMm, 90.15, 0.2)
    expect(plies.map((ply) => ply.replaces)).toEqual([5, 4, 3, 2, 1, null])
    const m2 = plies.slice(0, 5).reduce((sum, ply) => sum + ply.areaMm2 / 1e6, 0)
    within(m2, 0.1099, 0.0002)
    within(plies[5]!.areaMm2 / 1e6, 0.0574, 0.0002)
  })

  test('SG-10: the same at 20:1, to 0.2', () => {
    const { plies, lengths } = face(20)
    for (const [index, diameter] of [67.7, 95.4, 123.0, 150.7, 160.2].entries()) {
      within(plies[index]!.acrossMm[0], diameter, 0.2)
    }
    within(lengths.lengthMm, 60.1, 0.2)
  })
})

describe('ply thickness', () => {
  const carbon = (faw: number, fibreContent: PlyMaterial['fibreContent']) =>
    curedPly({ ...surfaceTwill, fibreArealWeightGsm: faw, fibreContent })
  const byMass = (faw: number, rc: number) =>
    carbon(faw, { kind: 'resin-mass', resinMassFraction: rc, resinDensityGcm3: 1.22 })

  test('PT-05: 200 g/m2 at 42 % resin is 0.231 mm, to 0.001', () => {
    within(byMass(200, 0.42).thicknessMm, 0.231, 0.001)
  })

  test('PT-06: 650 g/m2 at 38 % resin is 0.692 mm with a fibre volume of 0.528, to 0.001', () => {
    within(byMass(650, 0.38).thicknessMm, 0.692, 0.001)
    within(byMass(650, 0.38).fibreVolumeFraction, 0.528, 0.001)
  })

  test('PT-07: 200 and 650 g/m2 at a fibre volume of 0.55 are 0.2043 and 0.6640 mm, to 0.0002', () => {
    const content = { kind: 'fibre-volume', fibreVolumeFraction: 0.55 } as const
    within(carbon(200, content).thicknessMm, 0.2043, 0.0002)
    within(carbon(650, content).thicknessMm, 0.664, 0.0002)
  })

  test('PT-09: prepreg of 344.8 and 1048.4 g/m2, to 0.1', () => {
    within(byMass(200, 0.42).prepregGsm, 344.8, 0.1)
    within(byMass(650, 0.38).prepregGsm, 1048.4, 0.1)
  })

  test('PT-10: 1-2-1, 1-4-1, 1-6-1 and 1-8-1 of 0.237 and 0.692 mm are 1.86, 3.24, 4.62 and 6.01 mm, to 0.01', () => {
    const expected = { 2: 1.86, 4: 3.24, 6: 4.62, 8: 6.01 }
    for (const [bulk, thickness] of Object.entries(expected)) {
      const plies = [plyOf(0.237), ...Array.from({ length: Number(bulk) }, () => plyOf(0.692)), plyOf(0.237)]
      within(stackUp(plies).thicknessMm, thickness, 0.01)
    }
  })
})

describe('vacuum', () => {
  test('VM-03: 1 and 5 inHg are 33.86 and 169.3 mbar, to 0.1', () => {
    within(toInside(1, 'pressure', 'inHg'), 33.86, 0.1)
    within(toInside(5, 'pressure', 'inHg'), 169.3, 0.1)
  })
})
