/** compositesone.com, How to perform a resin infusion drop test. Published: example and limit both seen. */
import { expect, test } from 'vitest'
import { absoluteFromVacuumMbar, judgeLeak, leakLimits, lossOfVacuumMbar } from '#lib/core/vacuum'

test('VM-01: 29.20 to 29.11 inHg in 5 min is a drop of 3.05 mbar, to 0.01, and passes the limit of 1 inHg', () => {
  expect(Math.abs(lossOfVacuumMbar(29.2, 29.11) - 3.05)).toBeLessThanOrEqual(0.01)
  const { value } = judgeLeak(
    {
      bagging: 'infusion bag',
      volumeL: null,
      pins: null,
      temperatureC: null,
      startMbar: absoluteFromVacuumMbar(29.2),
      endMbar: absoluteFromVacuumMbar(29.11),
      minutes: 5,
    },
    leakLimits.bag,
  )
  expect(Math.abs(value.riseMbar - 3.05)).toBeLessThanOrEqual(0.01)
  expect(value.verdict).toBe('within')
})
