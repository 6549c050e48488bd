import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  area,
  bounds,
  clockwise,
  counterClockwise,
  dropRepeatedPoints,
  loopArea,
  loopBounds,
  loopPerimeter,
  orientRegion,
  perimeter,
  pointInLoop,
  pointInRegion,
  signedArea,
  whereInLoop,
} from '#lib/core/geometry/index'
import { box, regionOf, starOutline } from './arbitrary-outlines'

const plate = box(0, 0, 140, 90)

describe('measures by hand', () => {
  test('a box of 140 x 90', () => {
    expect(signedArea(plate)).toBe(12_600)
    expect(signedArea([...plate].reverse())).toBe(-12_600)
    expect(loopPerimeter(plate)).toBe(460)
    expect(loopBounds(plate)).toEqual([0, 0, 140, 90])
  })

  test('a hole is taken off the area and added to the perimeter', () => {
    const plated = [regionOf(plate, [box(10, 10, 30, 20)])]
    expect(area(plated)).toBe(12_400)
    expect(perimeter(plated)).toBe(520)
    expect(bounds(plated)).toEqual([0, 0, 140, 90])
  })

  test('far from the origin no digits of the area are lost', () => {
    const far = plate.map(([u, v]) => [u + 90_000.125, v - 70_000.375] as const)
    expect(loopArea(far)).toBeCloseTo(12_600, 6)
  })

  test('nothing to measure is misuse', () => {
    expect(() => loopBounds([])).toThrow(RangeError)
    expect(() => bounds([])).toThrow(RangeError)
  })
})

test('orientation: outer loops counter-clockwise, holes clockwise, from the same first point', () => {
  fc.assert(
    fc.property(starOutline, (outline) => {
      for (const loop of [outline, outline.toReversed()]) {
        expect(signedArea(counterClockwise(loop))).toBeGreaterThan(0)
        expect(signedArea(clockwise(loop))).toBeLessThan(0)
        expect(counterClockwise(loop)[0]).toEqual(loop[0])
        const { outer, holes } = orientRegion(regionOf(loop, [loop]))
        expect(signedArea(outer)).toBeCloseTo(-signedArea(holes[0]!), 6)
      }
    }),
  )
})

test('repeated points go, the last one that repeats the first too', () => {
  const doubled = [...plate.flatMap((point) => [point, point]), plate[0]!]
  expect(dropRepeatedPoints(doubled)).toEqual(plate)
  expect(
    dropRepeatedPoints([
      [1, 1],
      [1, 1],
    ]),
  ).toEqual([[1, 1]])
})

describe('where a point lies', () => {
  test('inside, on and outside, corners and collinear sides included', () => {
    expect(whereInLoop([70, 45], plate)).toBe('inside')
    expect(whereInLoop([140, 45], plate)).toBe('on')
    expect(whereInLoop([0, 0], plate)).toBe('on')
    expect(whereInLoop([-1, 0], plate)).toBe('outside')
    expect(whereInLoop([150, 90], plate)).toBe('outside')
  })

  test('a hole is outside, its edge is not', () => {
    const region = regionOf(plate, [box(10, 10, 30, 20)])
    expect(pointInRegion([20, 15], region)).toBe(false)
    expect(pointInRegion([10, 15], region)).toBe(true)
    expect(pointInRegion([5, 15], region)).toBe(true)
  })

  test('the middle of a star-shaped outline is inside, a point beyond its box is not', () => {
    fc.assert(
      fc.property(starOutline, (outline) => {
        const [uMin, vMin, uMax, vMax] = loopBounds(outline)
        const middle = [0, 1].map(
          (axis) => outline.reduce((sum, point) => sum + point[axis]!, 0) / outline.length,
        )
        const inside = pointInLoop([middle[0]!, middle[1]!], outline)
        expect(pointInLoop([uMax + 1, (vMin + vMax) / 2], outline)).toBe(false)
        expect(pointInLoop([uMin - 1, (vMin + vMax) / 2], outline)).toBe(false)
        expect(inside).toBe(pointInLoop([middle[0]!, middle[1]!], outline.toReversed()))
      }),
    )
  })
})
