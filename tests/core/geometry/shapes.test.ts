import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  arcByAngles,
  arcByBulge,
  chordErrorMm,
  circle,
  distanceToLoop,
  flattenArc,
  flattenBulge,
  loopArea,
  loopBounds,
  loopPerimeter,
  type Point,
  roundedRectangle,
  signedArea,
} from '#lib/core/geometry/index'
import { somePoint } from './arbitrary-outlines'

const radius = fc.double({ min: 0.05, max: 2000, noNaN: true })

/** Farthest that the middle of a chord lies off the circle. */
function sagitta(points: readonly Point[], centre: Point, radiusMm: number): number {
  return Math.max(
    ...points.slice(1).map((to, index) => {
      const from = points[index]!
      return radiusMm - Math.hypot((from[0] + to[0]) / 2 - centre[0], (from[1] + to[1]) / 2 - centre[1])
    }),
  )
}

test('a circle: corners on it, chords within 0.005 mm, bounds true, counter-clockwise', () => {
  fc.assert(
    fc.property(somePoint, radius, (centre, r) => {
      const loop = circle(centre, r)
      for (const [u, v] of loop) expect(Math.hypot(u - centre[0], v - centre[1])).toBeCloseTo(r, 8)
      expect(sagitta([...loop, loop[0]!], centre, r)).toBeLessThanOrEqual(chordErrorMm + 1e-9)
      const box = loopBounds(loop)
      const [u, v] = centre
      for (const [index, mm] of [u - r, v - r, u + r, v + r].entries()) expect(box[index]).toBeCloseTo(mm, 8)
      expect(signedArea(loop)).toBeGreaterThan(0)
    }),
  )
})

describe('a rounded rectangle', () => {
  // W H - (4 - pi) R2 and 2 (W - 2R) + 2 (H - 2R) + 2 pi R, as in case T20.
  test('300 x 180 with corners of 25', () => {
    const loop = roundedRectangle([10, 20, 310, 200], 25)
    expect(loopArea(loop)).toBeCloseTo(53_463.495, -0.5)
    expect(loopPerimeter(loop)).toBeCloseTo(917.08, 1)
    expect(loopBounds(loop)).toEqual([10, 20, 310, 200])
  })

  test('radius 0 leaves four corners, the largest radius makes a slot without repeated points', () => {
    expect(roundedRectangle([0, 0, 90, 60], 0)).toEqual([
      [0, 0],
      [90, 0],
      [90, 60],
      [0, 60],
    ])
    const slot = roundedRectangle([0, 0, 120, 40], 20)
    expect(loopArea(slot)).toBeCloseTo(80 * 40 + Math.PI * 400, -0.5)
    for (const [index, [u, v]] of slot.entries()) {
      const [nextU, nextV] = slot[(index + 1) % slot.length]!
      expect(Math.hypot(nextU - u, nextV - v)).toBeGreaterThan(1e-3)
    }
  })

  test('radii and sizes that can not be are misuse, with the figure', () => {
    expect(() => roundedRectangle([0, 0, 90, 60], -1)).toThrow(/from 0 to 30 mm.*-1/)
    expect(() => roundedRectangle([0, 0, 90, 60], 30.1)).toThrow(/30\.1/)
    expect(() => roundedRectangle([0, 0, 0, 60], 0)).toThrow(RangeError)
    expect(() => circle([0, 0], 0)).toThrow(RangeError)
    expect(() => circle([0, 0], Number.NaN)).toThrow(RangeError)
  })
})

describe('arcs', () => {
  test('by bulge: a quarter of radius 25, as in case T20', () => {
    const arc = arcByBulge([285, 20], [310, 45], Math.tan(Math.PI / 8))!
    expect(arc.radiusMm).toBeCloseTo(25, 9)
    expect(arc.centre[0]).toBeCloseTo(285, 9)
    expect(arc.centre[1]).toBeCloseTo(45, 9)
    expect(arc.sweepRad).toBeCloseTo(Math.PI / 2, 12)
  })

  test('by bulge and by angles they are the same arc', () => {
    fc.assert(
      fc.property(
        somePoint,
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 5, max: 350, noNaN: true }),
        fc.boolean(),
        (centre, r, startDeg, sweepDeg, backwards) => {
          const forward = flattenArc(arcByAngles(centre, r, startDeg, startDeg + sweepDeg))
          const bulge = Math.tan((sweepDeg * Math.PI) / 720)
          const [from, to] = [forward[0]!, forward.at(-1)!]
          const points = backwards
            ? flattenBulge(to, from, -bulge).toReversed()
            : flattenBulge(from, to, bulge)
          expect(points[0]).toEqual(from)
          expect(points.at(-1)).toEqual(to)
          for (const point of points)
            expect(Math.hypot(point[0] - centre[0], point[1] - centre[1])).toBeCloseTo(r, 4)
          expect(sagitta(points, centre, r)).toBeLessThan(chordErrorMm + 1e-4)
          expect(loopPerimeter(points)).toBeCloseTo(loopPerimeter(forward), 1)
        },
      ),
    )
  })

  test('equal angles are the full circle; across 0 degrees the arc goes on', () => {
    expect(arcByAngles([0, 0], 10, 45, 45).sweepRad).toBeCloseTo(2 * Math.PI, 12)
    const right = flattenArc(arcByAngles([200, 50], 50, 270, 90))
    expect(right).toContainEqual([250, 50])
    expect(Math.max(...right.map((point) => point[0]))).toBe(250)
  })

  test('a bulge too flat to see is a straight edge', () => {
    expect(flattenBulge([0, 0], [100, 0], 1e-6)).toEqual([
      [0, 0],
      [100, 0],
    ])
    expect(arcByBulge([0, 0], [100, 0], 0)).toBeNull()
    expect(() => flattenArc(arcByAngles([0, 0], 0, 0, 90))).toThrow(RangeError)
  })

  test('flattened arcs stay within the chord error of a finer one', () => {
    const fine = flattenArc({ centre: [0, 0], radiusMm: 40, startRad: 0.3, sweepRad: 2 })
    const sector = [[0, 0] as const, ...fine]
    for (let step = 0; step <= 100; step++) {
      const angle = 0.3 + (2 * step) / 100
      const on: Point = [40 * Math.cos(angle), 40 * Math.sin(angle)]
      expect(distanceToLoop(on, sector)).toBeLessThanOrEqual(chordErrorMm)
    }
  })
})
