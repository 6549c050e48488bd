import { expect, test } from 'vitest'
import { seasonSeams } from '#lib/core/season/index'

const season = (name: string, startsOn: string, endsOn: string) => ({ name, startsOn, endsOn })
const first = season('A', '2025-09-01', '2026-08-31')

test('seasons that meet have no seam to tell', () => {
  expect(seasonSeams([season('B', '2026-09-01', '2027-08-31'), first])).toEqual([])
  expect(seasonSeams([])).toEqual([])
})

test('days in common are counted with both ends', () => {
  expect(seasonSeams([first, season('B', '2026-08-31', '2027-08-31')])).toEqual([
    { kind: 'overlap', earlier: 'A', later: 'B', days: 1 },
  ])
  expect(seasonSeams([first, season('B', '2025-12-01', '2025-12-10')])[0]).toMatchObject({ days: 10 })
})

test('days of no season are told, also after a season that holds a shorter one', () => {
  const inner = season('I', '2025-10-01', '2025-10-31')
  const later = season('B', '2026-09-03', '2027-08-31')
  expect(seasonSeams([first, inner, later])).toEqual([
    { kind: 'overlap', earlier: 'A', later: 'I', days: 31 },
    { kind: 'gap', earlier: 'A', later: 'B', days: 2 },
  ])
})
