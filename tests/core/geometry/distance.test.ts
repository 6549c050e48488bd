import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  circle,
  distanceBetweenLoops,
  distanceToLoop,
  grow,
  leastSignedDistance,
  nearestToPath,
  nearestToPoint,
  nearestToRegion,
  overrun,
  pointInLoop,
  roundedRectangle,
} from '#lib/core/geometry/index'
import { box, regionOf, somePoint, starOutline } from './arbitrary-outlines'

const plate = box(0, 0, 100, 60)

describe('distances by hand', () => {
  test('from a point to a loop, inside and outside', () => {
    expect(distanceToLoop([50, 20], plate)).toBe(20)
    expect(distanceToLoop([103, 64], plate)).toBe(5)
    expect(() => distanceToLoop([0, 0], [])).toThrow(RangeError)
  })

  test('between loops: side to side, corner to corner, one in the other, crossing', () => {
    expect(distanceBetweenLoops(plate, box(110, 0, 150, 60))).toBe(10)
    expect(distanceBetweenLoops(plate, box(103, 64, 150, 90))).toBe(5)
    expect(distanceBetweenLoops(plate, box(10, 20, 30, 40))).toBe(10)
    expect(distanceBetweenLoops(plate, box(90, 50, 150, 90))).toBe(0)
  })

  test('a path that reaches into a region is at 0 mm, a closed line round it is not', () => {
    const region = [regionOf(plate)]
    expect(
      nearestToPath(
        region,
        [
          [120, -10],
          [120, 90],
        ],
        false,
      ),
    ).toEqual({ mm: 20, at: [120, 0] })
    expect(
      nearestToPath(
        region,
        [
          [-10, 30],
          [110, 30],
        ],
        false,
      ).mm,
    ).toBe(0)
    expect(
      nearestToPath(
        region,
        [
          [10, 10],
          [20, 10],
        ],
        false,
      ).mm,
    ).toBe(0)
    expect(nearestToPath(region, box(-30, -30, 130, 90), true).mm).toBe(30)
  })

  test('an open path is not joined back to its start', () => {
    const hook: readonly (readonly [number, number])[] = [
      [-20, -20],
      [-20, 80],
      [120, 80],
    ]
    expect(nearestToPath([regionOf(plate)], hook, false).mm).toBe(20)
    expect(nearestToPath([regionOf(plate)], hook, true).mm).toBe(0)
  })

  test('an area that covers a region or lies in it is at 0 mm; one in its hole is not', () => {
    const ring = [regionOf(plate, [box(20, 10, 80, 50)])]
    expect(nearestToRegion([regionOf(plate)], box(-50, -50, 200, 200)).mm).toBe(0)
    expect(nearestToRegion([regionOf(plate)], box(10, 10, 20, 20)).mm).toBe(0)
    expect(nearestToRegion(ring, box(40, 25, 60, 35)).mm).toBe(15)
  })

  test('a dowel: its middle from the outline, 0 mm inside', () => {
    expect(nearestToPoint([regionOf(plate)], [50, 20])).toEqual({ mm: 0, at: [50, 20] })
    expect(nearestToPoint([regionOf(plate)], [130, 30])).toEqual({ mm: 30, at: [130, 30] })
  })
})

describe('running off a boundary', () => {
  // Case T39: flange edge 80 mm from the cut-out; 12.7 mm a ply. Distance right edge: 170 - 90 = 80 mm.
  const flange = box(-150, -140, 170, 200)
  const cutout = regionOf(roundedRectangle([0, 0, 90, 60], 10))

  test.each([
    [0, 80],
    [76.2, 3.8],
    [88.9, -8.9],
    [101.6, -21.6],
  ])('grown by %d mm it lies %d mm from the edge', (growthMm, distanceMm) => {
    const [grown] = grow([cutout], growthMm)
    expect(leastSignedDistance(grown!.outer, flange)).toBeCloseTo(distanceMm, 3)
  })

  test('a side that bridges a notch is off the area though its ends are not', () => {
    const notched = [
      [0, 0],
      [100, 0],
      [100, 100],
      [60, 100],
      [50, 20],
      [40, 100],
      [0, 100],
    ] as const
    // The bridge at v 70 is open for 12.5 mm; its middle is farthest from both flanks of the notch.
    const flankMm = (6.25 * 80) / Math.hypot(80, 10)
    const off = overrun([regionOf(box(10, 60, 90, 70))], notched)
    expect(off.mm).toBeCloseTo(flankMm, 3)
    expect(off.at[0]).toBeCloseTo(50, 2)
  })

  test('nothing runs off: 0 mm; all of it does: its farthest point', () => {
    expect(overrun([regionOf(box(10, 10, 20, 20))], plate).mm).toBe(0)
    expect(overrun([regionOf(box(200, 0, 210, 60))], plate).mm).toBe(110)
    expect(leastSignedDistance(plate, plate)).toBe(0)
  })

  test('no point of an outline lies farther out than the overrun, and some point does lie that far', () => {
    fc.assert(
      fc.property(starOutline, starOutline, (outline, boundary) => {
        const off = overrun([regionOf(outline)], boundary)
        for (const point of outline) {
          if (!pointInLoop(point, boundary))
            expect(distanceToLoop(point, boundary)).toBeLessThan(off.mm + 2e-4)
        }
        if (off.mm > 0) expect(distanceToLoop(off.at, boundary)).toBeCloseTo(off.mm, 6)
      }),
      { numRuns: 60 },
    )
  })
})

test('distances are the same both ways and never larger than between any two points', () => {
  fc.assert(
    fc.property(
      starOutline,
      somePoint,
      fc.double({ min: 5, max: 40, noNaN: true }),
      (outline, centre, radius) => {
        const round = circle(centre, radius)
        const mm = distanceBetweenLoops(outline, round)
        expect(distanceBetweenLoops(round, outline)).toBeCloseTo(mm, 9)
        for (const point of outline) expect(mm).toBeLessThanOrEqual(distanceToLoop(point, round) + 1e-9)
      },
    ),
    { numRuns: 50 },
  )
})
