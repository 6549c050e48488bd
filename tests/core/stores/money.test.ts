import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseAmount } from '#lib/core/stores/index'
import { currencyDecimals, formatMoney, moneyText, parseMoney } from '#lib/core/units'
import { fieldErrors, formOf, textOf } from '#lib/schema/form'
import { NewPrice } from '#lib/schema/rates'

const minor = (text: string, currency = 'EUR') => {
  const parsed = parseMoney(text, currency)
  return parsed.ok ? parsed.minor : parsed.verdict
}

// ISO 4217, list one, minor units: from memory.
test.each([
  ['EUR', 2],
  ['USD', 2],
  ['JPY', 0],
  ['KWD', 3],
])('%s has %i decimals', (currency, decimals) => {
  expect(currencyDecimals(currency)).toBe(decimals)
})

test.each([
  ['12.50', 1250],
  ['12,5', 1250],
  ['12', 1200],
  ['€12.50', 1250],
  ['12,50 €', 1250],
  ['12.50 EUR', 1250],
  ['eur 12.50', 1250],
  ['1 234,50', 123450],
  ['1,234.50', 123450],
  ['1.234,50', 123450],
  ['0', 0],
  ['0.1', 10],
  ['1.005', 'ask'],
  ['1.250', 'ask'],
  ['1,250', 'ask'],
  ['12 USD', 'refuse'],
  ['$12', 'refuse'],
  ['12.50 each', 'refuse'],
  ['', 'blank'],
])('"%s" in EUR is %s', (text, expected) => {
  expect(minor(text)).toBe(expected)
})

test.each([
  ['1250', 'JPY', 1250],
  ['12.5', 'JPY', 'ask'],
  ['¥1250', 'JPY', 1250],
  ['12.345', 'KWD', 12345],
  ['12.3456', 'KWD', 'ask'],
])('"%s" in %s is %s', (text, currency, expected) => {
  expect(minor(text, currency)).toBe(expected)
})

test('what a form shows reads back to the same money, in any currency', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 2_000_000_000 }),
      fc.constantFrom('EUR', 'JPY', 'KWD'),
      (value, currency) => {
        expect(parseMoney(moneyText(value, currency), currency)).toEqual({ ok: true, minor: value })
      },
    ),
  )
})

test('money is shown with its own decimals', () => {
  expect(formatMoney(1250, 'EUR')).toBe('€12.50')
  expect(formatMoney(1250, 'JPY')).toContain('1,250')
  expect(formatMoney(12345, 'KWD')).toContain('12.345')
})

describe('in a form', () => {
  const raw = {
    id: '00000000-0000-4000-8000-000000000001',
    subjectKind: 'material',
    subjectId: '00000000-0000-4000-8000-000000000002',
    unit: 'm2',
    currency: 'EUR',
    minorPerUnit: '58,00',
    fromOn: '2026-09-21',
    sourceNote: '',
  }
  test('a price is read in the currency that stands beside it', () => {
    expect(formOf(NewPrice).parse(raw).minorPerUnit).toBe(5800)
    expect(formOf(NewPrice).parse({ ...raw, currency: 'JPY', minorPerUnit: '5800' }).minorPerUnit).toBe(5800)
  })
  test('a script sends whole minor units', () => {
    expect(NewPrice.parse({ ...raw, minorPerUnit: 5800 }).minorPerUnit).toBe(5800)
    expect(NewPrice.safeParse({ ...raw, minorPerUnit: 58.5 }).success).toBe(false)
  })
  test('faults are told at the field', () => {
    const wrong = formOf(NewPrice).safeParse({ ...raw, minorPerUnit: '58.005' })
    expect(wrong.success ? {} : fieldErrors(wrong.error)).toHaveProperty('minorPerUnit')
    const blank = formOf(NewPrice).safeParse({ ...raw, minorPerUnit: '' })
    expect(blank.success ? {} : fieldErrors(blank.error)).toEqual({
      minorPerUnit: 'Give a number; blank is not zero',
    })
  })
  test('an edit form starts with the money as it is typed', () => {
    expect(textOf(NewPrice, { ...raw, minorPerUnit: 5800 })).toMatchObject({ minorPerUnit: '58.00' })
  })
})

test.each([
  ['0.2', 'l', 0.2],
  ['200 ml', 'l', 0.2],
  ['250 g', 'kg', 0.25],
  ['1 lb', 'kg', 0.45359237],
  ['12,5 m²', 'm2', 12.5],
  ['2 ft', 'm', 0.6096],
  ['3 pieces', 'piece', 3],
  ['250 g', 'l', 'refuse'],
  ['3 m', 'm2', 'refuse'],
  ['1,234', 'l', 'ask'],
  ['', 'l', 'blank'],
] as const)('an amount "%s" of a lot in %s is %s', (text, unit, expected) => {
  const parsed = parseAmount(text, unit)
  expect(parsed.ok ? parsed.value : parsed.verdict).toBe(expected)
})
