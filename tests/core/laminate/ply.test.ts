import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  assumedResinDensityGcm3,
  curedPly,
  fibreSharesFromDensity,
  mixture,
  type PlyMaterial,
} from '#lib/core/laminate/index'

const twill: PlyMaterial = {
  name: '650 twill',
  role: 'bulk',
  fibreArealWeightGsm: 650,
  fibreDensityGcm3: 1.78,
  fibreContent: { kind: 'resin-mass', resinMassFraction: 0.38, resinDensityGcm3: 1.22 },
  rollWidthMm: 1250,
  thickestCureMm: 8,
}

function withContent(fibreContent: PlyMaterial['fibreContent']): PlyMaterial {
  return { ...twill, fibreContent }
}

const resinMass = fc.record({
  faw: fc.double({ min: 50, max: 1200, noNaN: true }),
  rc: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
  rhoF: fc.double({ min: 1.4, max: 2.6, noNaN: true }),
  rhoR: fc.double({ min: 1.1, max: 1.3, noNaN: true }),
})

describe('a cured ply', () => {
  test('weighs per area what its thickness and densities say', () => {
    fc.assert(
      fc.property(resinMass, ({ faw, rc, rhoF, rhoR }) => {
        const ply = curedPly({
          ...twill,
          fibreArealWeightGsm: faw,
          fibreDensityGcm3: rhoF,
          fibreContent: { kind: 'resin-mass', resinMassFraction: rc, resinDensityGcm3: rhoR },
        })
        const mass = 1000 * ply.thicknessMm * mixture(ply.fibreVolumeFraction, rhoF, rhoR)
        expect(mass).toBeCloseTo(ply.prepregGsm, 6)
      }),
    )
  })

  test('is the same whether resin is given by mass or fibre by volume', () => {
    const byMass = curedPly(
      withContent({ kind: 'resin-mass', resinMassFraction: 0.38, resinDensityGcm3: assumedResinDensityGcm3 }),
    )
    const byVolume = curedPly(
      withContent({ kind: 'fibre-volume', fibreVolumeFraction: byMass.fibreVolumeFraction }),
    )
    expect(byVolume.thicknessMm).toBeCloseTo(byMass.thicknessMm, 12)
    expect(byVolume.prepregGsm).toBeCloseTo(byMass.prepregGsm, 8)
  })

  test('carries a working line for each of its figures, the last line of a kind being the figure', () => {
    const ply = curedPly(twill)
    const value = (symbol: string) => ply.working.find((line) => line.symbol === symbol)?.value
    expect(value('t')).toBe(ply.thicknessMm)
    expect(value('Vf')).toBe(ply.fibreVolumeFraction)
    expect(value('m')).toBe(ply.prepregGsm)
    const assumed = curedPly(withContent({ kind: 'fibre-volume', fibreVolumeFraction: 0.55 })).working
    expect(assumed.find((line) => line.symbol === 'm')?.sourceId).toBe('memory')
  })

  test.each([
    [{ ...twill, fibreArealWeightGsm: 0 }, /fibre areal weight of 650 twill must be above 0 g\/m², got 0/],
    [{ ...twill, fibreArealWeightGsm: Number.NaN }, /got NaN/],
    [{ ...twill, fibreDensityGcm3: -1 }, /fibre density of 650 twill.*got -1/],
    [withContent({ kind: 'fibre-volume', fibreVolumeFraction: 55 }), /between 0 and 1, got 55/],
    [
      withContent({ kind: 'resin-mass', resinMassFraction: 1, resinDensityGcm3: 1.2 }),
      /between 0 and 1, got 1/,
    ],
    [withContent({ kind: 'resin-mass', resinMassFraction: 0.4, resinDensityGcm3: 0 }), /resin density/],
  ])('nonsense is a RangeError with the figure (%#)', (material, message) => {
    expect(() => curedPly(material)).toThrow(RangeError)
    expect(() => curedPly(material)).toThrow(message)
  })
})

describe('mixtures', () => {
  test('fibre shares found from a density give that density back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (vf) => {
        const density = mixture(vf, 2.54, 1.3)
        expect(fibreSharesFromDensity(density, 2.54, 1.3).byVolume).toBeCloseTo(vf, 10)
      }),
    )
  })

  test('a density that no mixture has is a RangeError', () => {
    expect(() => fibreSharesFromDensity(2.7, 2.54, 1.3)).toThrow(RangeError)
    expect(() => fibreSharesFromDensity(1.5, 1.3, 1.3)).toThrow(RangeError)
    expect(() => mixture(1.2, 1, 1)).toThrow(RangeError)
  })
})
