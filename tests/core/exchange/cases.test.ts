import { describe, expect, test } from 'vitest'
import { grow, regionsArea } from '#lib/core/geometry/index'
import { type ChosenUnit, type OutlineReading, readOutline } from '#lib/exchange/outline/index'
import { type Expected, readCase } from './read-case'

/** Lengths printed with three decimals; areas within the case's own tolerance, or three decimals. */
function expectMeasures({ loops }: OutlineReading, expected: Expected): void {
  const [loop] = loops
  if (expected.loops !== undefined) expect(loops).toHaveLength(expected.loops)
  expect(Math.abs(loop!.areaMm2 - expected.area_mm2!)).toBeLessThanOrEqual(expected.area_tolerance ?? 0.0005)
  if (expected.perimeter_mm !== undefined) {
    // Chords of a flattened arc are shorter than it by at most 8/3 of the chord error for each radian of sweep.
    expect(loop!.perimeterMm).toBeLessThanOrEqual(expected.perimeter_mm + 0.0006)
    expect(loop!.perimeterMm).toBeGreaterThanOrEqual(
      expected.perimeter_mm - 0.0006 - (8 / 3) * 0.005 * 2 * Math.PI,
    )
  }
  expected.bbox_mm?.forEach((mm, index) => {
    expect(loop!.boundsMm[index]).toBeCloseTo(mm, Number.isInteger(mm) ? 6 : 3)
  })
}

describe('example drawings with the right answers beside them', () => {
  const plain: readonly (readonly [string, ChosenUnit | null])[] = [
    ['T20', null],
    ['T21', 'mm'],
    ['T22', null],
    ['T23', null],
    ['T24', null],
    ['T26', null],
    ['T28', null],
    ['T29', null],
    ['T31', null],
  ]
  test.each(plain)('%s is read with the right verdict and measures', (id, unit) => {
    const { reading, expected } = readCase(id, unit)
    expect(reading.verdict).toBe(expected.action)
    expectMeasures(reading, expected)
    expect(reading.loops[0]!.role).toBe('outer')
  })

  test('T20: arcs of the stated radius, not chamfers', () => {
    const { reading, expected } = readCase('T20')
    const radiusMm = expected.arc_radius_mm as number
    const corner = reading.loops[0]!.points.filter(([u, v]) => u > 285 && v < 45)
    expect(corner.length).toBeGreaterThan(5)
    for (const [u, v] of corner) expect(Math.hypot(u - 285, v - 45)).toBeCloseTo(radiusMm, 6)
    expect(
      Math.abs(reading.loops[0]!.areaMm2 - (expected.wrong_area_if_bulges_ignored as number)),
    ).toBeGreaterThan(700)
  })

  test('T21: an R12 file without a unit is asked about, its loop given as if in mm', () => {
    const { reading, expected } = readCase('T21')
    expect(reading.verdict).toBe('ask')
    expect(reading.unit).toBeNull()
    expectMeasures(reading, expected)
    const [finding] = reading.findings
    expect(finding!.code).toBe('unit-unknown')
    expect(finding!.text).toContain('120 x 40 mm if millimetres')
    expect(finding!.text).toContain('3048 x 1016 mm if inches')
    expect(finding!.figures).toMatchObject({ sizeMmIfMm: [120, 40], sizeMmIfIn: [3048, 1016] })
    expect(readCase('T21', 'mm').reading.unit).toBe('mm')
  })

  test('T22: four loose pieces make one loop without a notice', () => {
    const { reading, bytes, expected } = readCase('T22')
    const entities = new TextDecoder().decode(bytes).match(/^(LINE|ARC)\r?$/gm)
    expect(entities).toHaveLength(expected.pieces as number)
    expect(reading.findings).toEqual([])
  })

  test('T23: five corners, no edge without length', () => {
    const { reading, expected } = readCase('T23')
    expect(reading.loops[0]!.points).toHaveLength(expected.vertices as number)
    expect(reading.findings.map(({ code }) => code)).toEqual(['closed-by-point'])
  })

  test('T24: the unit of the file is found and applied once', () => {
    expect(readCase('T24').reading.unit).toBe('in')
  })

  test('T25: a spline that is not clamped runs over its middle spans only', () => {
    const { reading, expected } = readCase('T25')
    expect(reading).toMatchObject({ verdict: expected.action, findings: [] })
    expect(reading.loops).toHaveLength(expected.loops!)
    const [loop] = reading.loops
    // Chords within 0.005 mm lose at most two thirds of that along the curve; the value is given to 0.01 mm2.
    expect(Math.abs(loop!.areaMm2 - expected.area_mm2!)).toBeLessThan((2 / 3) * 0.005 * 691 + 0.01)
    expect(loop!.areaMm2).toBeLessThan((expected.wrong_area_control_polygon as number) - 5000)
    expect(Math.abs(loop!.perimeterMm - expected.perimeter_mm!)).toBeLessThan(0.02)
    expected.bbox_mm!.forEach((mm, index) => {
      expect(Math.abs(loop!.boundsMm[index]! - mm)).toBeLessThan(0.0052)
    })
  })

  test('T27: the slot lies scaled and turned at its place', () => {
    const { reading, expected } = readCase('T27')
    expect(reading).toMatchObject({ verdict: expected.action, findings: [] })
    expect(reading.loops).toHaveLength(expected.loops!)
    const [loop] = reading.loops
    expect(Math.abs(loop!.areaMm2 - expected.area_mm2!)).toBeLessThan(expected.area_tolerance!)
    expect(Math.abs(loop!.perimeterMm - expected.perimeter_mm!)).toBeLessThan(0.02)
    expected.bbox_mm!.forEach((mm, index) => {
      expect(Math.abs(loop!.boundsMm[index]! - mm)).toBeLessThan(0.0101)
    })
    const middle = [0, 1].map((axis) => {
      const values = loop!.points.map((point) => point[axis]!)
      return (Math.min(...values) + Math.max(...values)) / 2
    })
    // A slot lies alike to both sides of its middle.
    middle.forEach((mm, axis) => {
      expect(Math.abs(mm - (expected.centroid_mm as number[])[axis]!)).toBeLessThan(0.0101)
    })
  })

  test('T28: seen from behind, the rounded corner lies on the other side', () => {
    const { reading, expected } = readCase('T28')
    const [u, v] = expected.rounded_corner_near as [number, number]
    const near = reading.loops[0]!.points.filter((point) => Math.hypot(point[0] - u, point[1] - v) < 21)
    expect(near.length).toBeGreaterThan(5)
    for (const point of near) expect(Math.hypot(point[0] - (u + 20), point[1] - (v + 20))).toBeCloseTo(20, 6)
    expect(reading.loops[0]!.boundsMm).not.toEqual(expected.wrong_bbox_mm)
  })

  test('T29: the doubles are dropped and counted', () => {
    const { reading, expected } = readCase('T29')
    expect(reading.dropped).toBe(expected.dropped)
    expect(reading.findings[0]).toMatchObject({ code: 'doubled-dropped', figures: { count: 4 } })
  })

  test('T30: the crossing, both lobes and another order are named', () => {
    const { reading, expected } = readCase('T30')
    expect(reading.verdict).toBe(expected.action)
    const [finding] = reading.findings
    expect(finding!.code).toBe('self-crossing')
    expect(finding!.place).toBe('u 50, v 40 mm')
    expect(finding!.figures).toEqual({
      crossingsMm: expected.crossing,
      lobesMm2: expected.lobes_mm2,
      signedAreaMm2: expected.signed_area_mm2,
      orderOffered: [1, 3, 2, 4],
      areaOfferedMm2: 8000,
    })
    expect(reading.loops[0]!.points).toHaveLength(4)
  })

  test('T31: drawn clockwise it comes counter-clockwise and grows outwards', () => {
    const { reading, expected } = readCase('T31')
    const [{ points: outer } = { points: [] }] = reading.loops
    const grown = regionsArea(grow([{ outer, holes: [] }], 15))
    expect(Math.abs(grown - (expected.grown_15_area_mm2 as number))).toBeLessThan(expected.area_tolerance!)
    expect(grown).not.toBeCloseTo(expected.wrong_if_shrunk_mm2 as number, -3)
  })

  test('T32: holes are told from the outline by containment, and accepted', () => {
    const { reading, bytes, expected } = readCase('T32')
    expect(reading.verdict).toBe(expected.action)
    const [outer] = reading.loops
    const holes = reading.loops.filter(({ role }) => role === 'hole')
    expect(outer!.role).toBe('outer')
    expect(reading.loops.length - holes.length).toBe(expected.outer)
    expect(holes).toHaveLength(expected.holes as number)
    const net = outer!.areaMm2 - holes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)
    const sum = reading.loops.reduce((all, { areaMm2 }) => all + areaMm2, 0)
    expect(Math.abs(net - (expected.net_area_mm2 as number))).toBeLessThan(expected.area_tolerance!)
    expect(Math.abs(sum - (expected.wrong_sum_mm2 as number))).toBeLessThan(expected.area_tolerance!)
    expect(outer!.boundsMm).toEqual(expected.bbox_mm)
    expect(reading.findings).toEqual([])
    const kept = readOutline({ name: 'holes.dxf', bytes, unit: null })
    expect(kept).toMatchObject({ verdict: 'refuse', findings: [{ code: 'holes', severity: 'stop' }] })
    expect(kept.findings[0]!.text).toContain('2 holes')
    expect(kept.findings[0]!.text).toContain('30 x 30 mm at u 55 to 85, v 35 to 65 mm')
    expect(kept.findings[0]!.cure).not.toBeNull()
  })

  test.each(['T20', 'T22', 'T23', 'T25', 'T26', 'T27', 'T28', 'T29', 'T31'])(
    '%s with CRLF, blanks and a Ctrl-Z reads the same',
    (id) => {
      const { reading, bytes } = readCase(id)
      const text = new TextDecoder().decode(bytes).replace(/\r?\n/g, '  \r\n   ')
      expect(readOutline({ name: 'a.dxf', text: `\n${text}\x1a`, unit: null }).loops).toEqual(reading.loops)
    },
  )
})
