import fc from 'fast-check'
import { expect, test } from 'vitest'
import { circle, distanceToLoop, loopArea, loopPerimeter, simplify } from '#lib/core/geometry/index'
import { noisyOutline, starOutline } from './arbitrary-outlines'

const tolerance = fc.double({ min: 0, max: 8, noNaN: true })

test('what is left out lies within the tolerance of what is kept, and what is kept was there before', () => {
  fc.assert(
    fc.property(starOutline, tolerance, (outline, mm) => {
      const plain = simplify(outline, mm)
      for (const point of outline) expect(distanceToLoop(point, plain)).toBeLessThanOrEqual(mm + 1e-9)
      for (const point of plain) expect(outline).toContainEqual(point)
      expect(plain.length).toBeGreaterThanOrEqual(3)
      expect(Math.abs(loopArea(plain) - loopArea(outline))).toBeLessThanOrEqual(
        loopPerimeter(outline) * mm + 1e-6,
      )
    }),
  )
})

test('points along a straight side go, corners stay', () => {
  const sides = [
    [0, 0],
    [20, 0],
    [50, 0],
    [100, 0],
    [100, 30],
    [100, 60],
    [0, 60],
    [0, 10],
  ] as const
  expect(simplify(sides, 0.001)).toEqual([
    [0, 0],
    [100, 0],
    [100, 60],
    [0, 60],
  ])
})

test('a fine circle needs few points at a coarse tolerance', () => {
  const fine = circle([0, 0], 100)
  expect(simplify(fine, 0.1).length).toBeLessThan(fine.length / 2)
  expect(simplify(noisyOutline(2000, 0.001), 0.01).length).toBeLessThan(700)
})

test('three points stay, a negative tolerance is misuse', () => {
  const triangle = [
    [0, 0],
    [10, 0],
    [0, 10],
  ] as const
  expect(simplify(triangle, 100)).toBe(triangle)
  expect(() => simplify(triangle, -1)).toThrow(/-1/)
})
