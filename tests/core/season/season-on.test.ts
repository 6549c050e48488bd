import { expect, test } from 'vitest'
import { seasonOn } from '#lib/core/season/index'

const first = { name: 'first', startsOn: '2024-10-01', endsOn: '2025-08-31' }
const second = { name: 'second', startsOn: '2025-10-01', endsOn: '2026-08-31' }

test('the season that counts on a day is the latest that has begun', () => {
  expect(seasonOn([second, first], '2025-01-05')).toBe(first)
  expect(seasonOn([first, second], '2025-10-01')).toBe(second)
  expect(seasonOn([first, second], '2025-09-15')).toBe(first)
  expect(seasonOn([first, second], '2024-09-30')).toBeNull()
  expect(seasonOn([], '2024-09-30')).toBeNull()
})

test('a day in two seasons counts for the later one', () => {
  const early = { ...second, startsOn: '2025-08-01' }
  expect(seasonOn([first, early], '2025-08-15')).toBe(early)
})
