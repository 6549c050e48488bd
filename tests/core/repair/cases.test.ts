import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { roundedRectangle } from '#lib/core/geometry/index'
import type { Loop } from '#lib/core/geometry/types'
import { bareArea, codes, found, planned, plyOf, quietPatch } from './sample-patch'

function read(name: string, file: string) {
  return JSON.parse(readFileSync(`tests/cases/${name}/${file}`, 'utf8'))
}

describe('T39: eight plies at half an inch each, 80 mm from the edge of the flange', () => {
  const { cutout, flange_outline, growth_of_ply_mm } = read('T39a-scarf-runs-off-the-flange', 'repair.json')
  const expected = read('T39a-scarf-runs-off-the-flange', 'expected.json')
  const { x0, y0, x1, y1, radius } = cutout.rounded_rectangle
  const stack = growth_of_ply_mm.map(() => plyOf(0.25))
  const input = quietPatch({
    opening: { outer: roundedRectangle([x0, y0, x1, y1], radius), holes: [] },
    stack,
    removedPlies: stack.map((_: unknown, index: number) => index + 1),
    measuredThicknessMm: [2, 2],
    taper: { ratio: 20, mmPerPly: 12.7, use: 'mm-per-ply' },
    area: { ...bareArea, boundary: flange_outline as Loop },
  })
  const { plies } = planned(input).value
  const finding = found(input, 'footprint-leaves-area')!

  test('growth, area and area outside of each ply', () => {
    const rows = expected['per_ply_[growth, area, area_outside]'] as [number, number, number][]
    expect(plies).toHaveLength(rows.length)
    for (const [index, [growth, area, outside]] of rows.entries()) {
      const ply = plies[index]!
      expect(ply.growthMm).toBeCloseTo(growth, 9)
      expect(growth_of_ply_mm[index]).toBe(growth)
      expect(Math.abs(ply.areaMm2 - area)).toBeLessThanOrEqual(expected.area_tolerance)
      expect(Math.abs(ply.areaOutsideMm2 - outside)).toBeLessThanOrEqual(expected.area_tolerance)
    }
  })

  test('the finding gives the first ply outside, how far each runs off, and what fits', () => {
    expect(finding).toMatchObject({
      severity: 'look',
      figures: { firstPlyOutside: expected.first_ply_outside },
    })
    const { fitsUpToMm, overrunMm, largestStepThatFitsMm } = finding.figures as Record<string, number> & {
      overrunMm: number[]
    }
    expect(fitsUpToMm).toBeCloseTo(expected.fits_up_to_mm, 9)
    expect(largestStepThatFitsMm).toBeCloseTo(expected.largest_step_that_fits_mm, 6)
    for (const [growth, overrun] of Object.entries(expected.overrun_mm)) {
      const index = growth_of_ply_mm.indexOf(Number(growth))
      expect(overrunMm[index]).toBeCloseTo(overrun as number, 6)
      expect(plies[index]!.distanceToEdgeMm).toBeCloseTo(-(overrun as number), 6)
    }
    expect(overrunMm.slice(0, 6)).toEqual([0, 0, 0, 0, 0, 0])
  })

  test('the smaller step is offered with its ratio, or fewer plies, as a choice', () => {
    expect(finding.cure).toMatch(/^Choose: 10 mm a ply fits on that side; that is 40:1, not below the 20:1/)
    expect(finding.cure).toMatch(/Or only 6 of 8 plies/)
  })

  test('by a steeper rule the same step breaks the ratio, and then it is no cure', () => {
    const steep = found({ ...input, taper: { ...input.taper, ratio: 50 } }, 'footprint-leaves-area')!
    expect(steep.cure).toMatch(
      /10 mm a ply fits on that side; that is 40:1, below the 50:1 asked for, so it is no cure/,
    )
  })
})

describe('T40: nominal 1.50 mm, measured 1.92 mm', () => {
  const laminate = read('T40a-ply-table-thickness-and-scarf-length', 'laminate.json')
  const expected = read('T40a-ply-table-thickness-and-scarf-length', 'expected.json') as Record<
    string,
    string
  >
  const table = laminate.plies as { no: number; angle_deg: number; nominal_mm: number }[]
  const input = quietPatch({
    stack: table.map((row) => plyOf(row.nominal_mm, row.angle_deg)),
    removedPlies: table.map((row) => row.no),
    measuredThicknessMm: [laminate.measured_total_mm],
    taper: {
      ratio: laminate.scarf_ratio,
      mmPerPly: laminate.planned_length_mm / table.length,
      use: 'mm-per-ply',
    },
  })
  const { lengths, plies } = planned(input).value
  const byRatio = planned({ ...input, taper: { ...input.taper, use: 'ratio' } }).value

  test.each([
    ['nominal_thickness_mm', lengths.nominalThicknessMm],
    ['measured_mm', lengths.measuredThicknessMm!],
    ['length_nominal_mm', lengths.byRatioNominalMm],
    ['length_nominal_mm', lengths.lengthMm],
    ['length_needed_mm', lengths.byRatioMm],
    ['short_by_mm', lengths.shortByMm],
    ['ratio_reached', lengths.ratioReached],
    ['step_per_ply_nominal_mm', plies[0]!.stepMm],
    ['step_per_ply_needed_mm', byRatio.plies[0]!.stepMm],
    ['difference_percent', lengths.differencePercent!],
  ])('%s', (name, value) => {
    const exact = expected[name]!
    expect(value).toBeCloseTo(Number(exact), 9)
    expect(value.toFixed(exact.split('.')[1]!.length)).toBe(exact)
  })

  test('is warned of: thickness off by more than 10 %, taper below the ratio', () => {
    expect(codes(input)).toEqual(expect.arrayContaining(['thickness-off', 'taper-below-ratio']))
    expect(found(input, 'thickness-off')!.text).toMatch(/Nominal 1\.5 mm, measured 1\.92 mm \(\+28 %\)/)
    expect(found(input, 'taper-below-ratio')!.text).toMatch(
      /30 mm, which is 15\.6:1; 20:1 needs 38\.4 mm, so it is short by 8\.4 mm/,
    )
  })

  test('by ratio it reaches 38.40 mm and is not below the ratio', () => {
    expect(byRatio.lengths.lengthMm).toBeCloseTo(38.4, 9)
    expect(codes({ ...input, taper: { ...input.taper, use: 'ratio' } })).not.toContain('taper-below-ratio')
  })
})
