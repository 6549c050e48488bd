import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { area, difference, openInsideCorners, perimeter, roundedRectangle } from '#lib/core/geometry/index'
import { regionOf, starOutline } from './arbitrary-outlines'

/** What rounding one square corner to radius r takes off. */
const squareCornerMm2 = (r: number) => r * r * (1 - Math.PI / 4)

const angle = regionOf([
  [0, 0],
  [100, 0],
  [100, 40],
  [40, 40],
  [40, 100],
  [0, 100],
])

describe('corners that point inwards opened: grown and shrunk again', () => {
  test('the one inward corner of an angle gains r2 (1 - pi/4)', () => {
    const opened = openInsideCorners(angle, 12.7)
    expect(area([opened]) - area([angle])).toBeCloseTo(squareCornerMm2(12.7), 0)
  })

  test('outward corners stay where they are', () => {
    const opened = openInsideCorners(angle, 12.7)
    for (const corner of [
      [0, 0],
      [100, 0],
      [100, 40],
      [40, 100],
      [0, 100],
    ]) {
      expect(opened.outer).toContainEqual(corner)
    }
  })

  test('an outline without inward corners comes back as it is', () => {
    const plate = regionOf(roundedRectangle([0, 0, 90, 60], 10))
    expect(openInsideCorners(plate, 12.7)).toBe(plate)
  })

  test('nothing of the outline is lost', () => {
    fc.assert(
      fc.property(starOutline, fc.double({ min: 1, max: 15, noNaN: true }), (outline, radius) => {
        const own = regionOf(outline)
        expect(area(difference([own], [openInsideCorners(own, radius)]))).toBeLessThan(
          perimeter([own]) * 0.003,
        )
      }),
      { numRuns: 40 },
    )
  })
})

test('a radius below 0 is misuse, 0 changes nothing', () => {
  expect(() => openInsideCorners(angle, -1)).toThrow(/-1/)
  expect(() => openInsideCorners(angle, Number.NaN)).toThrow(RangeError)
  expect(openInsideCorners(angle, 0)).toBe(angle)
})
