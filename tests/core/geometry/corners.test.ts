import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  area,
  bounds,
  circle,
  difference,
  distanceToLoop,
  type Loop,
  openInsideCorners,
  perimeter,
  pointInRegion,
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
  test('each of the four corners of a box loses r2 (1 - pi/4), and the figure says so', () => {
    const { region, changedAreaMm2, possible, reason } = roundCorners(regionOf(box(0, 0, 90, 60)), 12.7)
    expect(changedAreaMm2).toBeCloseTo(-4 * squareCornerMm2(12.7), 0)
    expect(Math.abs(area([region]) - 5400 - changedAreaMm2)).toBeLessThan(perimeter([region]) * 0.002)
    expect([possible, reason]).toEqual([true, null])
    expect(bounds([region])).toEqual([0, 0, 90, 60])
  })

  test('corners that are round enough stay, and so does an inward corner', () => {
    const plate = regionOf(roundedRectangle([0, 0, 90, 60], 15))
    expect(roundCorners(plate, 12.7)).toEqual({
      region: plate,
      changedAreaMm2: 0,
      possible: true,
      reason: null,
    })
    const { region, changedAreaMm2 } = roundCorners(angle, 12.7)
    expect(changedAreaMm2).toBeCloseTo(-5 * squareCornerMm2(12.7), 0)
    expect(distanceToLoop([40, 40], region.outer)).toBeLessThan(0.01)
  })

  const dumbbell: Loop = [
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
  ]
  const finger: Loop = [
    [0, 0],
    [100, 0],
    [100, 35],
    [160, 35],
    [160, 45],
    [100, 45],
    [100, 80],
    [0, 80],
  ]
  const wedge: Loop = [
    [0, -13.1233],
    [150, 0],
    [0, 13.1233],
  ]
  test.each([
    ['a circle below the radius', regionOf(circle([0, 0], 8))],
    ['a slot narrower than twice the radius', regionOf(box(0, 0, 90, 20))],
    ['a neck that would part', regionOf(dumbbell)],
    ['a finger that would go', regionOf(finger)],
    ['a tip of 10 degrees', regionOf(wedge)],
    ['a wall to a hole that would open', regionOf(box(0, 0, 100, 100), [box(10, 40, 50, 60)])],
  ])('%s: unchanged, with the reason', (_name, region) => {
    const rounded = roundCorners(region, 12.7)
    expect(rounded.region).toBe(region)
    expect(rounded).toMatchObject({ changedAreaMm2: 0, possible: false })
    expect(rounded.reason).toContain('25.4 mm')
  })

  test('the result lies in the outline, no point asked for is farther off than the radius, and it stays so', () => {
    fc.assert(
      fc.property(starOutline, fc.double({ min: 1, max: 15, noNaN: true }), (outline, radius) => {
        const own = [regionOf(outline)]
        const { region, changedAreaMm2, possible } = roundCorners(own[0]!, radius)
        expect(changedAreaMm2).toBeLessThanOrEqual(0)
        expect(area(difference([region], own))).toBeLessThan(perimeter(own) * 0.003)
        if (!possible) return
        for (const point of outline) {
          const offMm = pointInRegion(point, region) ? 0 : distanceToLoop(point, region.outer)
          expect(offMm).toBeLessThan(radius + 0.05)
        }
        const again = roundCorners(region, radius * 0.999)
        expect(again.possible).toBe(true)
        expect(Math.abs(again.changedAreaMm2)).toBeLessThan(perimeter(own) * 0.006)
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
  expect(() => roundCorners(angle, -1)).toThrow(/-1/)
  expect(() => openInsideCorners(angle, Number.NaN)).toThrow(RangeError)
  expect(openInsideCorners(angle, 0)).toBe(angle)
  expect(roundCorners(angle, 0).region).toBe(angle)
})
