import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  formatQuantity,
  fromInside,
  insideUnit,
  parseQuantity,
  type Quantity,
  quantities,
  toInside,
  unitSymbols,
} from '#lib/core/units'

const kinds = Object.keys(quantities) as Quantity[]

function read(text: string, kind: Quantity, assumed?: string): number {
  const parsed = parseQuantity(text, kind, assumed)
  if (!parsed.ok) throw new Error(`${text}: ${parsed.reason}`)
  return parsed.value
}

describe('reading a quantity', () => {
  test.each([
    ['12.7', 'length', 12.7],
    ['12,5 mm', 'length', 12.5],
    ['1/2 in', 'length', 12.7],
    ['1 3/8 in', 'length', 34.925],
    ['1-3/8"', 'length', 34.925],
    ['1 3/8″', 'length', 34.925],
    [`5' 3"`, 'length', 1600.2],
    ['5 ft 3 1/2 in', 'length', 1612.9],
    ["2'", 'length', 609.6],
    ['250 um', 'length', 0.25],
    ['250µm', 'length', 0.25],
    ['10 mil', 'length', 0.254],
    ['10 thou', 'length', 0.254],
    ['3 M', 'length', 3000],
    ['-0.000', 'length', 0],
    ['\u22122,5', 'length', -2.5],
    ['1.2E-03 m', 'length', 1.2],
    ['1 234,5', 'length', 1234.5],
    ['1\u00a0234.5 mm', 'length', 1234.5],
    ['1.234,5', 'length', 1234.5],
    ['1,234.5', 'length', 1234.5],
    ['1,234,567', 'length', 1234567],
    ['1234,567', 'length', 1234.567],
    ['0,234', 'length', 0.234],
    ['1.234', 'length', 1.234],
    ["1'234.5 min", 'duration', 1234.5],
    ['-40 F', 'temperature', -40],
    ['250 °F', 'temperature', 121.1111],
    ['453.15 K', 'temperature', 180],
    ['29.20 inHg', 'pressure', 988.8256],
    ['1 psi', 'pressure', 68.94757],
    ['760 Torr', 'pressure', 1013.25],
    ['101.325 kPa', 'pressure', 1013.25],
    ['1,01325 bar', 'pressure', 1013.25],
    ['101325 Pa', 'pressure', 1013.25],
    ['6 oz/yd2', 'areal-weight', 203.4345],
    ['650 gsm', 'areal-weight', 650],
    ['1780 kg/m3', 'density', 1.78],
    ['90', 'duration', 90],
    ['1 h 30 min', 'duration', 90],
    ['1h30min', 'duration', 90],
    ['2 d 6 h', 'duration', 3240],
    ['8,5 h', 'duration', 510],
    ['500 g', 'mass', 0.5],
    ['1 lb', 'mass', 0.45359237],
    ['-45°', 'angle', -45],
    ['20:1', 'ratio', 20],
    ['20 : 1', 'ratio', 20],
    ['20 to 1', 'ratio', 20],
    ['20', 'ratio', 20],
    ['42 %', 'fraction', 0.42],
    ['0.42', 'fraction', 0.42],
    ['181 GPa', 'modulus', 181000],
    ['10 ksi', 'modulus', 68.94757],
    ['2.5 kN', 'force', 2500],
  ] as const)('%s as %s', (text, kind, expected) => {
    expect(read(text, kind)).toBeCloseTo(expected, 3)
  })

  test('a number without a unit is in the unit that the caller says', () => {
    expect(read('1', 'length', 'in')).toBe(25.4)
    expect(read('1 mm', 'length', 'in')).toBe(1)
    expect(() => parseQuantity('1', 'length', 'furlong')).toThrow(RangeError)
  })

  test('a blank is not zero', () => {
    for (const text of ['', '   ', '\u00a0']) {
      expect(parseQuantity(text, 'length')).toEqual({ ok: false, verdict: 'blank', reason: 'blank' })
    }
    expect(read('0', 'length')).toBe(0)
  })

  test('a comma that may part thousands is asked about', () => {
    const parsed = parseQuantity('1,234 mm', 'length')
    expect(parsed).toMatchObject({ ok: false, verdict: 'ask' })
    expect(!parsed.ok && parsed.reason).toMatch(/1234.*1\.234/)
  })

  test('a whole number as a fraction is asked about', () => {
    expect(parseQuantity('42', 'fraction')).toMatchObject({ ok: false, verdict: 'ask' })
    expect(parseQuantity('1:20', 'ratio')).toMatchObject({ ok: false, verdict: 'ask' })
  })

  test.each([
    ['10 furlong', 'length', /"furlong" is not a known unit.*mm, cm, m, um, in, ft, mil, thou/],
    ['10 kg', 'length', /"kg" is a mass.*mm/],
    ['abc', 'length', /does not begin with a number.*12\.7 mm/],
    ['1.2.3', 'length', /not a number/],
    ['12,34,5', 'length', /not a number/],
    ['1/0 in', 'length', /divides by zero/],
    ['1e999', 'length', /too large/],
    ['NaN', 'length', /does not begin/],
    ['Infinity', 'length', /does not begin/],
    ['-300 C', 'temperature', /below -273.15/],
    ['-1 mbar', 'pressure', /below 0/],
    ['5 psig', 'pressure', /gauge reading.*barometer/],
    ['20 inHg vac', 'pressure', /gauge reading/],
    ['30 min 1 h', 'duration', /larger units first/],
    ['20:0', 'ratio', /divides by zero/],
    ['1:2:3', 'ratio', /not a ratio/],
  ] as const)('%s is refused with the cure', (text, kind, reason) => {
    const parsed = parseQuantity(text, kind)
    expect(parsed.ok).toBe(false)
    expect(!parsed.ok && parsed.reason).toMatch(reason)
  })

  test('no text makes it throw or answer with something not finite', () => {
    const texts = fc.oneof(
      fc.string(),
      fc.stringMatching(/^[-+0-9.,/ '"eE:%a-zA-Z]{0,14}$/),
      fc.double().map(String),
    )
    fc.assert(
      fc.property(texts, fc.constantFrom(...kinds), (text, kind) => {
        const parsed = parseQuantity(text, kind)
        return parsed.ok ? Number.isFinite(parsed.value) : parsed.reason.length > 0
      }),
      { numRuns: 2000 },
    )
  })
})

describe('showing a quantity', () => {
  test('what is shown reads back as the same number, in every unit', () => {
    const cases = kinds.flatMap((kind) => unitSymbols(kind).map((unit) => [kind, unit] as const))
    const numbers = fc.oneof(
      fc.double({ min: 1e-9, max: 1, noNaN: true }),
      fc.integer({ min: -260, max: 10_000_000 }),
      fc.double({ min: 1, max: 1e7, noNaN: true }),
    )
    for (const [kind, unit] of cases) {
      const { least = Number.NEGATIVE_INFINITY } = quantities[kind]
      fc.assert(
        fc.property(numbers, (raw) => {
          const value = kind === 'fraction' ? raw % 1 : Math.max(raw, least)
          const back = read(formatQuantity(value, kind, unit), kind)
          const scale = Math.max(Math.abs(value), kind === 'temperature' ? 300 : 0)
          expect(Math.abs(back - value)).toBeLessThanOrEqual(4e-15 * scale)
        }),
        { numRuns: 200 },
      )
    }
  })

  test('decimals round for display only', () => {
    expect(formatQuantity(12.7, 'length')).toBe('12.7 mm')
    expect(formatQuantity(12.7, 'length', 'in', 3)).toBe('0.500 in')
    expect(formatQuantity(-0.0004, 'length', 'mm', 2)).toBe('0.00 mm')
    expect(formatQuantity(0.528, 'fraction', '%', 1)).toBe('52.8 %')
    expect(formatQuantity(20, 'ratio')).toBe('20:1')
    expect(() => formatQuantity(Number.NaN, 'length')).toThrow(RangeError)
  })

  test('there and back', () => {
    for (const kind of kinds) {
      for (const unit of unitSymbols(kind)) {
        expect(fromInside(toInside(3.25, kind, unit), kind, unit)).toBeCloseTo(3.25, 10)
      }
      expect(toInside(5, kind, insideUnit(kind))).toBe(5)
    }
    expect(() => toInside(1, 'length', 'parsec')).toThrow(/not a known unit/)
  })
})
