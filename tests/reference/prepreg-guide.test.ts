/**
 * A supplier's processing guide for epoxy prepregs (at least 95 % vacuum, 10 % loss in 5 min). Published rule,
 * arithmetic ours; the guide does not say whether 10 % is of the reading or of the atmosphere: both are here.
 */
import { expect, test } from 'vitest'
import { standardAtmosphereMbar, vacuumOfShareMbar } from '#lib/core/vacuum'

test('VM-04: 95 % of 1013.25 mbar is 962.6 mbar of vacuum, to 0.1', () => {
  expect(Math.abs(vacuumOfShareMbar(0.95) - 962.6)).toBeLessThanOrEqual(0.1)
})

test('VM-04: 10 % is 96.3 mbar of the reading and 101.3 mbar of the atmosphere, to 0.1', () => {
  expect(Math.abs(vacuumOfShareMbar(0.1, vacuumOfShareMbar(0.95)) - 96.3)).toBeLessThanOrEqual(0.1)
  expect(Math.abs(vacuumOfShareMbar(0.1, standardAtmosphereMbar) - 101.3)).toBeLessThanOrEqual(0.1)
})
