import fc from 'fast-check'
import {
  difference as otherDifference,
  intersection as otherIntersection,
  union as otherUnion,
} from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import {
  area,
  areaOutside,
  difference,
  gridMm,
  intersection,
  type Loop,
  perimeter,
  pointInLoop,
  signedArea,
  union,
} from '#lib/core/geometry/index'
import { box, regionOf, starOutline } from './arbitrary-outlines'

describe('by hand', () => {
  const left = [regionOf(box(0, 0, 60, 40))]
  const right = [regionOf(box(40, 10, 100, 30))]

  test('two boxes that overlap by 20 x 20', () => {
    expect(area(union([...left, ...right]))).toBe(2400 + 1200 - 400)
    expect(area(intersection(left, right))).toBe(400)
    expect(area(difference(left, right))).toBe(2000)
    expect(union([...left, ...right])).toHaveLength(1)
  })

  test('what is cut out of the middle is a hole; an island in it is a region', () => {
    const [ring, none] = difference([regionOf(box(0, 0, 90, 90))], [regionOf(box(20, 20, 70, 70))])
    expect(none).toBeUndefined()
    expect(ring!.holes).toHaveLength(1)
    const pieces = union([ring!, regionOf(box(40, 40, 50, 50))])
    expect(pieces).toHaveLength(2)
    expect(area(pieces)).toBe(8100 - 2500 + 100)
  })

  test('area beyond a boundary', () => {
    expect(areaOutside(left, box(-10, -10, 50, 50))).toBe(400)
    expect(areaOutside(left, box(-10, -10, 70, 50))).toBe(0)
  })

  test('nothing is a set too', () => {
    expect(union([])).toEqual([])
    expect(intersection(left, [])).toEqual([])
    expect(area(difference(left, []))).toBe(2400)
  })
})

/** Area of the polygons of the second library: each a ring with its holes. */
function otherArea(polygons: readonly (readonly (readonly (readonly number[])[])[])[]): number {
  const ring = (points: readonly (readonly number[])[]) =>
    Math.abs(signedArea(points.map(([u, v]) => [u!, v!] as const)))
  return polygons.reduce(
    (sum, [outer, ...holes]) => sum + ring(outer!) - holes.reduce((each, hole) => each + ring(hole), 0),
    0,
  )
}

test('a second library (polyclip-ts) comes to the same areas', () => {
  const plain = (loop: Loop) => [loop.map(([u, v]): [number, number] => [u, v])]
  fc.assert(
    fc.property(starOutline, starOutline, (a, b) => {
      const [p, q] = [[regionOf(a)], [regionOf(b)]]
      expect(Math.abs(area(union([...p, ...q])) - otherArea(otherUnion(plain(a), plain(b))))).toBeLessThan(
        0.2,
      )
      expect(
        Math.abs(area(intersection(p, q)) - otherArea(otherIntersection(plain(a), plain(b)))),
      ).toBeLessThan(0.2)
      expect(Math.abs(area(difference(p, q)) - otherArea(otherDifference(plain(a), plain(b))))).toBeLessThan(
        0.2,
      )
    }),
    { numRuns: 80 },
  )
})

test('what is taken and what is left make up the whole', () => {
  fc.assert(
    fc.property(starOutline, starOutline, (a, b) => {
      const [p, q] = [[regionOf(a)], [regionOf(b)]]
      expect(area(intersection(p, q)) + area(difference(p, q))).toBeCloseTo(area(p), 0)
      for (const { outer, holes } of union([...p, ...q])) {
        expect(signedArea(outer)).toBeGreaterThan(0)
        for (const hole of holes) {
          expect(signedArea(hole)).toBeLessThan(0)
          expect(pointInLoop(hole[0]!, outer)).toBe(true)
        }
      }
    }),
    { numRuns: 80 },
  )
})

test('a union is no larger than its parts together and no smaller than the largest; parts stay untouched', () => {
  fc.assert(
    fc.property(fc.array(starOutline, { minLength: 1, maxLength: 4 }), (outlines) => {
      const parts = outlines.map((outline) => regionOf(outline))
      const before = structuredClone(parts)
      const together = union(parts)
      const roundingMm2 = perimeter(parts) * gridMm
      expect(area(together)).toBeLessThan(area(parts) + roundingMm2)
      for (const part of parts) expect(area(together)).toBeGreaterThan(area([part]) - roundingMm2)
      difference(parts, together)
      intersection(parts, together)
      areaOutside(parts, outlines[0]!)
      expect(parts).toEqual(before)
    }),
    { numRuns: 60 },
  )
})
