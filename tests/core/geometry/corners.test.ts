import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  area,
  chordErrorMm,
  difference,
  openInsideCorners,
  perimeter,
  roundCorners,
  roundedRectangle,
} from '#lib/core/geometry/index'
import { box, regionOf, starOutline } from './arbitrary-outlines'

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

describe('corners of the cut-out rounded: shrunk and grown again', () => {
  test('each of the four corners of a box loses r2 (1 - pi/4)', () => {
    const { regions, areaChangeMm2, piecesChange } = roundCorners([regionOf(box(0, 0, 90, 60))], 12.7)
    expect(areaChangeMm2).toBeCloseTo(-4 * squareCornerMm2(12.7), 0)
    expect(area(regions) - 5400).toBeCloseTo(areaChangeMm2, 6)
    expect(piecesChange).toBe(0)
  })

  test('a corner that is round enough already stays', () => {
    const { areaChangeMm2 } = roundCorners([regionOf(roundedRectangle([0, 0, 90, 60], 15))], 12.7)
    expect(Math.abs(areaChangeMm2)).toBeLessThan(2 * Math.PI * 15 * chordErrorMm)
  })

  test('a neck narrower than twice the radius parts, a strip goes, and both are told', () => {
    const dumbbell = regionOf([
      [0, 0],
      [80, 0],
      [80, 35],
      [120, 35],
      [120, 0],
      [200, 0],
      [200, 80],
      [120, 80],
      [120, 45],
      [80, 45],
      [80, 80],
      [0, 80],
    ])
    expect(roundCorners([dumbbell], 12).piecesChange).toBe(1)
    expect(roundCorners([regionOf(box(0, 0, 90, 20))], 12).piecesChange).toBe(-1)
  })

  test('the result lies in the outline', () => {
    fc.assert(
      fc.property(starOutline, fc.double({ min: 1, max: 15, noNaN: true }), (outline, radius) => {
        const own = [regionOf(outline)]
        const { regions } = roundCorners(own, radius)
        expect(area(difference(regions, own))).toBeLessThan(perimeter(own) * 0.003)
      }),
      { numRuns: 40 },
    )
  })
})

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
  expect(() => roundCorners([angle], -1)).toThrow(/-1/)
  expect(() => openInsideCorners(angle, Number.NaN)).toThrow(RangeError)
  expect(openInsideCorners(angle, 0)).toBe(angle)
  expect(roundCorners([angle], 0).areaChangeMm2).toBe(0)
})
