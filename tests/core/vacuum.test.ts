import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  absoluteFromVacuumMbar,
  comparable,
  judgeLeak,
  type LeakCheck,
  leakLimits,
  vacuumOfShareMbar,
} from '#lib/core/vacuum'

const check: LeakCheck = {
  bagging: 'envelope',
  volumeL: 40,
  pins: 'in',
  temperatureC: 20,
  startMbar: 30,
  endMbar: 45,
  minutes: 10,
}

describe('a leak check against its limit', () => {
  test('is within, over or unclear by the limit scaled to its minutes', () => {
    expect(judgeLeak(check, leakLimits.mould).value).toEqual({
      riseMbar: 15,
      rateMbarPerMin: 1.5,
      allowedMbar: 20,
      verdict: 'within',
    })
    const over = judgeLeak({ ...check, minutes: 5 }, leakLimits.mould)
    expect(over.value).toMatchObject({ allowedMbar: 10, verdict: 'over' })
    expect(over.findings.map((each) => each.code)).toEqual(['leak-over-limit', 'leak-check-short'])
    const fell = judgeLeak({ ...check, endMbar: 25 }, leakLimits.mould)
    expect(fell.value.verdict).toBe('unclear')
    expect(fell.findings.map((each) => each.code)).toEqual(['leak-pressure-fell'])
  })

  test('its working gives the figures of the verdict', () => {
    const { value, working } = judgeLeak(check, leakLimits.mould)
    expect(working.map((line) => line.value)).toEqual([
      value.riseMbar,
      value.rateMbarPerMin,
      value.allowedMbar,
    ])
  })

  test('the same leak over a longer time is judged the same', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.integer({ min: 10, max: 60 }),
        (rate, minutes) => {
          const at = (time: number) =>
            judgeLeak({ ...check, endMbar: check.startMbar + rate * time, minutes: time }, leakLimits.mould)
              .value.verdict
          if (Math.abs(rate - 2) > 1e-6) expect(at(minutes)).toBe(at(10))
        },
      ),
    )
  })

  test('no time and pressures below zero are RangeErrors', () => {
    expect(() => judgeLeak({ ...check, minutes: 0 }, leakLimits.mould)).toThrow(/more than 0 minutes/)
    expect(() => judgeLeak({ ...check, startMbar: -3 }, leakLimits.mould)).toThrow(RangeError)
    expect(() => judgeLeak({ ...check, endMbar: Number.NaN }, leakLimits.mould)).toThrow(RangeError)
  })
})

describe('two leak checks compare', () => {
  test('with the same bagging, volume, pins, start and temperature', () => {
    expect(
      comparable(check, { ...check, bagging: ' Envelope ', volumeL: 42, temperatureC: 23, startMbar: 45 }),
    ).toEqual({ ok: true })
  })

  test.each([
    [{ bagging: 'face' }, /other bagging: "envelope" and "face"/],
    [{ volumeL: 80 }, /other volume: 40 and 80 l/],
    [{ volumeL: null }, /volume was not noted/],
    [{ pins: 'out' as const }, /pins in and pins out/],
    [{ pins: null }, /pins in or out was not noted/],
    [{ temperatureC: 120 }, /other temperature: 20 and 120 °C/],
    [{ temperatureC: null }, /temperature was not noted/],
    [{ startMbar: 120 }, /other start pressure: 30 and 120 mbar/],
  ])('and not otherwise: %j', (change, reason) => {
    const other = { ...check, ...change }
    for (const answer of [comparable(check, other), comparable(other, check)]) {
      expect(answer.ok).toBe(false)
      expect(!answer.ok && answer.reasons).toHaveLength(1)
    }
    const answer = comparable(check, other)
    expect(!answer.ok && answer.reasons[0]).toMatch(reason)
  })

  test('every reason is told, not only the first', () => {
    const answer = comparable(check, { ...check, bagging: 'face', temperatureC: 120, startMbar: 200 })
    expect(!answer.ok && answer.reasons).toHaveLength(3)
  })
})

describe('gauge readings', () => {
  test('become absolute by the barometer', () => {
    expect(absoluteFromVacuumMbar(29.2)).toBeCloseTo(1013.25 - 988.826, 2)
    expect(absoluteFromVacuumMbar(28, 960)).toBeCloseTo(960 - 948.189, 2)
    expect(() => absoluteFromVacuumMbar(29.2, 950)).toThrow(/more vacuum than the barometer/)
    expect(() => vacuumOfShareMbar(95)).toThrow(RangeError)
  })
})
