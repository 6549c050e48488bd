import { expect, test } from 'vitest'
import { guessWords, pullsWords } from '#lib/core/log/index'

test('what was before the book is a range, never zero when nobody knows', () => {
  expect(pullsWords({ pulls: 61, beforeBook: { low: 30, best: 40, high: 50 } })).toBe(
    '61 in the book and about 40 before it (30-50)',
  )
  expect(pullsWords({ pulls: 61, beforeBook: null })).toBe('61 in the book')
  expect(pullsWords({ pulls: 0, beforeBook: { low: 12, best: 12, high: 12 } })).toBe(
    '0 in the book and 12 before it',
  )
  expect(guessWords({ low: 0, best: 0, high: 5 })).toBe('about 0 (0-5)')
})
