/**
 * MIL-HDBK-17-3F, chapter 12: rules D-13 (lap 30 t double, 80 t single, scarf 1 in 50) and D-11 (end of an overlap
 * tapered to 0.020 in at 1 in 10). MIL-HDBK-17-2F, 4.2.1 and 6.2.1: cured thickness of two tapes.
 */
import { describe, expect, test } from 'vitest'
import { curedPly, type PlyMaterial } from '#lib/core/laminate/index'
import { taperLengthMm } from '#lib/core/repair/index'
import { fromInside, toInside } from '#lib/core/units'

describe('lengths: published rules, arithmetic ours', () => {
  test('SG-02: on 2 mm, a double lap of 60 mm, a single lap of 160 mm, a scarf of 100 mm; exact', () => {
    expect([30, 80, 50].map((ratio) => taperLengthMm(ratio, 2))).toEqual([60, 160, 100])
  })

  test('SG-03: an end of 2.0 mm tapered to 0.020 in (0.51 mm) at 10:1 is 14.9 mm long, to 0.1', () => {
    const tipMm = toInside(0.02, 'length', 'in')
    expect(Math.abs(taperLengthMm(10, 2 - tipMm) - 14.9)).toBeLessThanOrEqual(0.1)
  })
})

describe('cured ply thickness: published range, densities from memory', () => {
  const inches = (faw: number, rc: number, fibre: number, resin: number) => {
    const tape: PlyMaterial = {
      name: 'tape',
      role: 'bulk',
      fibreArealWeightGsm: faw,
      fibreDensityGcm3: fibre,
      fibreContent: { kind: 'resin-mass', resinMassFraction: rc, resinDensityGcm3: resin },
      rollWidthMm: 300,
      thickestCureMm: null,
    }
    return fromInside(curedPly(tape).thicknessMm, 'length', 'in')
  }

  test('PT-03: carbon tape of 142 g/m2 at 34 % resin is 0.0053 in, to 3 %', () => {
    expect(Math.abs(inches(142, 0.34, 1.79, 1.28) / 0.0053 - 1)).toBeLessThan(0.03)
  })

  test('PT-03: the formula at 34, 28 and 31 % resin, as recomputed, to the last digit', () => {
    expect(inches(142, 0.34, 1.79, 1.28)).toBeCloseTo(0.00537, 5)
    expect(inches(142, 0.28, 1.79, 1.28)).toBeCloseTo(0.00482, 5)
    expect(inches(142, 0.31, 1.79, 1.28)).toBeCloseTo(0.00509, 5)
  })

  test.each([
    [0.28, 0.0033, 0.00315],
    [0.33, 0.0037, 0.00352],
  ])(
    'PT-04: S-glass tape of 111 g/m2 at resin %f is %f in, to 6 %% (recomputed %f)',
    (rc, published, recomputed) => {
      const found = inches(111, rc, 2.49, 1.22)
      expect(Math.abs(found / published - 1)).toBeLessThan(0.06)
      expect(found).toBeCloseTo(recomputed, 5)
    },
  )
})
