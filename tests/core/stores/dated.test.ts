import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inForceOn, isPutRight, sumByCurrency, usualOperations } from '#lib/core/stores/index'

const line = (id: string, fromOn: string, writtenAt: string) => ({ id, fromOn, writtenAt })
const lines = [
  line('a', '2025-01-01', '2025-01-01T08:00:00Z'),
  line('b', '2025-06-01', '2025-05-20T08:00:00Z'),
  line('wrong', '2026-01-01', '2026-01-01T08:00:00Z'),
  line('right', '2026-01-01', '2026-03-01T08:00:00Z'),
]

test.each([
  ['2024-12-31', undefined],
  ['2025-01-01', 'a'],
  ['2025-05-31', 'a'],
  ['2025-06-01', 'b'],
  ['2025-12-31', 'b'],
  ['2026-01-01', 'right'],
  ['2030-01-01', 'right'],
])('on %s %s is in force', (day, id) => {
  expect(inForceOn(lines, day)?.id).toBe(id)
})

test('of two lines from one day the earlier written is put right, no other', () => {
  expect(lines.filter((each) => isPutRight(each, lines)).map((each) => each.id)).toEqual(['wrong'])
})

test('a line written later for an earlier day does not overtake a later day', () => {
  const late = line('c', '2025-03-01', '2026-12-01T08:00:00Z')
  expect(inForceOn([...lines, late], '2025-03-02')?.id).toBe('c')
  expect(inForceOn([...lines, late], '2025-07-01')?.id).toBe('b')
})

test('the order in which lines are handed in does not matter', () => {
  fc.assert(
    fc.property(fc.shuffledSubarray(lines, { minLength: lines.length }), (shuffled) => {
      expect(inForceOn(shuffled, '2026-05-05')?.id).toBe('right')
    }),
  )
})

test('money is never added across currencies; halves go up, totals sum the rounded lines', () => {
  expect(
    sumByCurrency([
      { minor: 100.5, currency: 'EUR' },
      { minor: 0.5, currency: 'EUR' },
      { minor: 7, currency: 'JPY' },
    ]),
  ).toEqual([
    { currency: 'EUR', minor: 102 },
    { currency: 'JPY', minor: 7 },
  ])
})

test('the usual operations stand once each, and only hours of the clock have no hours', () => {
  const names = usualOperations.map(({ operation, basis }) => `${operation} ${basis}`)
  expect(new Set(names).size).toBe(names.length)
  for (const { basis, hours } of usualOperations) expect(hours === null).toBe(basis === 'hour')
})
