import { describe, expect, test } from 'vitest'
import { codes, dxf, line, polyline, read, square } from './draw-dxf'

const plate = [
  [0, 0],
  [10, 0],
  [10, 4],
  [0, 4],
] as const

describe('unit of a drawing', () => {
  test.each([
    [1, 'in', 25.4],
    [2, 'ft', 304.8],
    [4, 'mm', 1],
    [5, 'cm', 10],
    [6, 'm', 1000],
    [14, 'dm', 100],
  ] as const)('$INSUNITS %s is %s', (code, unit, mm) => {
    const reading = read(dxf([polyline(plate)], code))
    expect(reading).toMatchObject({ verdict: 'accept', unit })
    expect(reading.loops[0]!.boundsMm[2]).toBeCloseTo(10 * mm, 9)
    expect(reading.loops[0]!.areaMm2).toBeCloseTo(40 * mm * mm, 6)
  })

  test('$INSUNITS 13 is micrometres', () => {
    const reading = read(dxf([polyline(square(50_000))], 13))
    expect(reading).toMatchObject({ verdict: 'accept', unit: 'um', loops: [{ perimeterMm: 200 }] })
  })

  test.each([null, 0])(
    '%s tells nothing: the size is shown for each unit, and the loop given as if in mm',
    (code) => {
      const reading = read(dxf([polyline(plate)], code))
      expect(reading).toMatchObject({ verdict: 'ask', unit: null, loops: [{ areaMm2: 40 }] })
      expect(reading.findings[0]).toMatchObject({
        code: 'unit-unknown',
        severity: 'look',
        figures: { sizeMmIfMm: [10, 4], sizeMmIfCm: [100, 40] },
      })
      expect(reading.findings[0]!.text).toContain('254 x 102 mm if inches')
      expect(reading.findings[0]!.text).toContain('10 x 4 mm if millimetres')
      expect(reading.findings[0]!.cure).toContain('Choose the unit')
    },
  )

  test('a choice settles it', () => {
    expect(read(dxf([polyline(plate)], null), 'in')).toMatchObject({
      verdict: 'accept',
      unit: 'in',
      findings: [],
    })
  })

  test('what the file says goes before a choice, and both are told', () => {
    const reading = read(dxf([polyline(plate)], 1), 'mm')
    expect(reading).toMatchObject({
      verdict: 'accept-with-notice',
      unit: 'in',
      loops: [{ areaMm2: 40 * 25.4 ** 2 }],
    })
    expect(reading.findings[0]!.text).toMatch(/inches.*millimetres/)
    expect(read(dxf([polyline(plate)], 1), 'in').verdict).toBe('accept')
  })

  test.each([
    [3, 'miles'],
    [7, 'kilometres'],
    [10, 'yards'],
    [99, 'no code of a unit'],
    ['mm', 'no code of a unit'],
  ])('$INSUNITS %s is refused by name until a unit is chosen', (code, name) => {
    const reading = read(dxf([polyline(plate)], code))
    expect(reading).toMatchObject({ verdict: 'refuse', unit: null, findings: [{ code: 'unit-not-read' }] })
    expect(reading.findings[0]!.text).toContain(name)
    expect(read(dxf([polyline(plate)], code), 'mm')).toMatchObject({
      verdict: 'accept-with-notice',
      unit: 'mm',
    })
  })

  test('without a unit nothing is joined that metres would keep apart', () => {
    const corners = [
      [0, 0],
      [0.25, 0],
      [0.25, 0.1],
      [0.004, 0.1],
      [0, 0.096],
    ] as const
    const lines = corners.map((corner, index) => line(corner, corners[(index + 1) % 5]!))
    expect(read(dxf(lines, null)).loops[0]!.points).toHaveLength(5)
    expect(read(dxf(lines, null), 'm').loops[0]!.boundsMm).toEqual([0, 0, 250, 100])
  })
})

describe('unlikely sizes', () => {
  test('very small: asked, with the size in other units', () => {
    const reading = read(dxf([polyline(square(0.25))]))
    expect(reading).toMatchObject({ verdict: 'ask', unit: 'mm', findings: [{ code: 'size-unlikely' }] })
    expect(reading.findings[0]!.text).toContain('very small')
    expect(reading.findings[0]!.text).toContain('250 x 250 mm if metres')
  })

  test('very large: asked, with the size in other units', () => {
    const reading = read(dxf([polyline(square(250))], 6), null)
    expect(codes(reading)).toEqual(['too-far'])
    const large = read(dxf([polyline(square(25))], 6))
    expect(large).toMatchObject({ verdict: 'ask', findings: [{ code: 'size-unlikely' }] })
    expect(large.findings[0]!.text).toContain('very large')
    expect(large.findings[0]!.text).toContain('25 x 25 mm if millimetres')
  })
})
