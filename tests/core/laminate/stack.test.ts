import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { isMirrored, type Ply, type PlyMaterial, stackUp } from '#lib/core/laminate/index'

function material(name: string, fibreArealWeightGsm: number, rc: number): PlyMaterial {
  return {
    name,
    role: fibreArealWeightGsm < 300 ? 'surface' : 'bulk',
    fibreArealWeightGsm,
    fibreDensityGcm3: 1.78,
    fibreContent: { kind: 'resin-mass', resinMassFraction: rc, resinDensityGcm3: 1.22 },
    rollWidthMm: 1250,
    thickestCureMm: null,
  }
}

const fine = material('200 twill', 200, 0.42)
const heavy = material('650 twill', 650, 0.38)
const ply = (of: PlyMaterial, directionDeg: number): Ply => ({ material: of, directionDeg })
const anyPly = fc.record({
  material: fc.constantFrom(fine, heavy),
  directionDeg: fc.constantFrom(0, 45, -45, 90),
})
const anyStack = fc.array(anyPly, { minLength: 1, maxLength: 14 })

describe('a stack', () => {
  test('runs from -h/2 at ply 1 to +h/2 without a gap', () => {
    fc.assert(
      fc.property(anyStack, (plies) => {
        const { plies: stacked, thicknessMm } = stackUp(plies)
        expect(stacked[0]!.fromZMm).toBeCloseTo(-thicknessMm / 2, 12)
        expect(stacked[stacked.length - 1]!.toZMm).toBeCloseTo(thicknessMm / 2, 12)
        for (const [index, each] of stacked.entries()) {
          expect(each.number).toBe(index + 1)
          expect(each.toZMm - each.fromZMm).toBeCloseTo(each.thicknessMm, 12)
          if (index > 0) expect(each.fromZMm).toBe(stacked[index - 1]!.toZMm)
        }
      }),
    )
  })

  test('tells the thickness of each material once and their sum', () => {
    const { working, thicknessMm } = stackUp([
      ply(fine, 0),
      ply(heavy, 45),
      ply({ ...heavy }, 45),
      ply(fine, 0),
    ])
    expect(working.filter((line) => line.label === 'cured thickness of 650 twill')).toHaveLength(1)
    const sum = working.find((line) => line.symbol === 't_nom')!
    expect(sum.value).toBe(thicknessMm)
    expect(sum.numbers).toBe('2 x 0.2311 + 2 x 0.6917')
  })

  test('without plies or with a direction that is no number is a RangeError', () => {
    expect(() => stackUp([])).toThrow(RangeError)
    expect(() => stackUp([ply(fine, Number.NaN)])).toThrow(/direction/)
  })
})

describe('mirrored about the mid-plane', () => {
  test('any half laid twice, the second time backwards, is mirrored', () => {
    fc.assert(
      fc.property(anyStack, fc.option(anyPly), (half, middle) => {
        const plies = [...half, ...(middle === null ? [] : [middle]), ...[...half].reverse()]
        expect(isMirrored(plies)).toMatchObject({ value: true, findings: [] })
      }),
    )
  })

  test('another direction or another material on one side is told with both plies', () => {
    const odd = isMirrored([ply(fine, 0), ply(heavy, 45), ply(heavy, -45), ply(fine, 0)])
    expect(odd.value).toBe(false)
    expect(odd.findings[0]).toMatchObject({
      code: 'stack-not-mirrored',
      severity: 'note',
      place: 'ply 2 and ply 3',
      figures: { notMirroredPlies: [2, 3] },
    })
    expect(isMirrored([ply(fine, 0), ply(heavy, 0)]).value).toBe(false)
  })

  test('directions half a turn apart are the same, and equal materials need not be one object', () => {
    expect(isMirrored([ply(fine, -90), ply(heavy, 0), ply({ ...fine }, 90)]).value).toBe(true)
    expect(isMirrored([ply(fine, 0)]).value).toBe(true)
  })
})
