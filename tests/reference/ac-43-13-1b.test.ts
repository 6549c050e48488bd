/** FAA AC 43.13-1B (8 September 1998), 3-3a(1): scarf back about 50 times the face ply. Published rule, arithmetic ours. */
import { expect, test } from 'vitest'
import { taperLengthMm } from '#lib/core/repair/index'
import { fromInside, toInside } from '#lib/core/units'

test('SG-04: a glass face ply of 0.010 in at 50:1 is scarfed over 0.50 in (12.7 mm)', () => {
  const length = taperLengthMm(50, toInside(0.01, 'length', 'in'))
  expect(length).toBeCloseTo(12.7, 12)
  expect(fromInside(length, 'length', 'in')).toBeCloseTo(0.5, 12)
})
