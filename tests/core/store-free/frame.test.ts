import fc from 'fast-check'
import { expect, test } from 'vitest'
import { unitFrame } from '#lib/core/frame'

test('axes of any length become unit axes with n = u x v out of the face', () => {
  expect(unitFrame([2, 0, 0], [0, 0.5, 0])).toEqual({ ok: true, u: [1, 0, 0], v: [0, 1, 0], n: [0, 0, 1] })
  const back = unitFrame([0, 3, 0], [2, 0, 0])
  expect(back.ok && back.n).toEqual([0, 0, -1])
})

test('an axis without length, and one that is no number, is refused in words', () => {
  for (const wrong of [
    [0, 0, 0],
    [Number.NaN, 0, 1],
    [Number.POSITIVE_INFINITY, 0, 0],
  ] as const) {
    const frame = unitFrame(wrong, [0, 1, 0])
    expect(frame.ok).toBe(false)
  }
})

test('off the right angle by more than 0.1 degree: refused with the angle; within it: taken', () => {
  const leaning = (deg: number) =>
    [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180), 0] as const
  const frame = unitFrame([1, 0, 0], leaning(80))
  expect(frame).toEqual({
    ok: false,
    reason: 'u and v are at 80.0° to each other; they must be at right angles',
  })
  expect(unitFrame([1, 0, 0], leaning(90.09)).ok).toBe(true)
  expect(unitFrame([1, 0, 0], leaning(90.11)).ok).toBe(false)
})

test('very long and very short axes keep their direction', () => {
  const part = fc.double({ min: -1, max: 1, noNaN: true })
  fc.assert(
    fc.property(part, part, part, fc.integer({ min: -100, max: 100 }), (x, y, z, power) => {
      fc.pre(Math.hypot(x, y, z) > 0.1)
      const across = Math.abs(z) < 0.9 ? ([y, -x, 0] as const) : ([0, z, -y] as const)
      fc.pre(Math.hypot(...across) > 0.05)
      const scale = 10 ** power
      const frame = unitFrame([x * scale, y * scale, z * scale], across)
      if (!frame.ok) throw new Error(frame.reason)
      expect(Math.hypot(...frame.u)).toBeCloseTo(1, 9)
      expect(frame.u[0] * frame.v[0] + frame.u[1] * frame.v[1] + frame.u[2] * frame.v[2]).toBeCloseTo(0, 9)
      expect(Math.hypot(...frame.n)).toBeCloseTo(1, 9)
    }),
  )
})
