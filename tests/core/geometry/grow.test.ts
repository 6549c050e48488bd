import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  area,
  bounds,
  chordErrorMm,
  circle,
  difference,
  distanceToLoop,
  gridMm,
  grow,
  growSteps,
  type Loop,
  loopArea,
  loopPerimeter,
  type Point,
  perimeter,
  type Region,
  steppedErrorMm,
  union,
} from '#lib/core/geometry/index'
import { raggedCorners } from '#lib/core/geometry/ragged'
import { box, convexOutline, noisyOutline, regionOf, starOutline } from './arbitrary-outlines'

const length = fc.double({ min: 0.5, max: 40, noNaN: true })

describe('case T36: a dumbbell that shrinks', () => {
  const folder = 'tests/cases/T36a-offset-splits'
  const expected = JSON.parse(readFileSync(`${folder}/expected.json`, 'utf8'))
  const { outer } = JSON.parse(readFileSync(`${folder}/outline.json`, 'utf8'))

  test.each([
    ['minus_8', -8],
    ['minus_5', -5],
  ])('%s', (name, mm) => {
    const pieces = grow([regionOf(outer)], mm)
    expect(pieces).toHaveLength(expected[name].pieces)
    expect(Math.abs(area(pieces) - expected[name].area_mm2)).toBeLessThan(expected.area_tolerance)
  })
})

describe('case T38: a wedge with a sharp tip', () => {
  const folder = 'tests/cases/T38a-offset-explodes-at-a-sharp-corner'
  const expected = JSON.parse(readFileSync(`${folder}/expected.json`, 'utf8'))
  const { outer } = JSON.parse(readFileSync(`${folder}/outline.json`, 'utf8'))
  const [grown] = grow([regionOf(outer)], 12)

  test('round joins: area, box, tip', () => {
    const { area_mm2, bbox_mm } = expected.grow_12
    expect(Math.abs(area([grown!]) - area_mm2)).toBeLessThan(expected.area_tolerance)
    for (const [index, mm] of bounds([grown!]).entries())
      expect(Math.abs(mm - bbox_mm[index])).toBeLessThan(0.01)
    const tipMm = bounds([grown!])[2]
    expect(Math.abs(tipMm - expected.tip_x_right)).toBeLessThan(0.01)
    // Pointed joins would carry the tip 12 mm over the sine of half its angle beyond 150 mm.
    const pointedMm = 150 + 12 / Math.sin(Math.atan(13.1233 / 150))
    expect(pointedMm).toBeCloseTo(expected.tip_x_wrong_if_pointed, 1)
    expect(tipMm).toBeLessThan(pointedMm - 100)
  })

  test('no point is farther than the growth from the wedge, none nearer by more than the chords', () => {
    const distances = grown!.outer.map((point) => distanceToLoop(point, outer))
    expect(Math.max(...distances)).toBeLessThan(expected.grow_12.max_distance_mm + gridMm)
    expect(Math.min(...distances)).toBeGreaterThan(12 - gridMm)
  })
})

// Case T37: two round holes, radius 20, 70 mm apart; pieces and areas from there (two circles less the lens).
test('case T37: two holes meet once each has grown by 15 mm', () => {
  const holes = [regionOf(circle([0, 0], 20)), regionOf(circle([70, 0], 20))]
  expect(grow(holes, 10)).toHaveLength(2)
  expect(Math.abs(area(grow(holes, 10)) - 5654.87)).toBeLessThan(5)
  expect(grow(holes, 14.9)).toHaveLength(2)
  expect(grow(holes, 15.1)).toHaveLength(1)
  expect(grow(holes, 20)).toHaveLength(1)
  expect(Math.abs(area(grow(holes, 20)) - 9791.49)).toBeLessThan(5)
})

describe('holes', () => {
  const ring = regionOf(box(0, 0, 100, 100), [box(30, 30, 70, 70)])

  test('shrink when the region grows, and are gone when they are full', () => {
    const [grown] = grow([ring], 5)
    expect(grown!.holes).toHaveLength(1)
    expect(loopArea(grown!.holes[0]!)).toBeCloseTo(900, 1)
    expect(grow([ring], 20.1)[0]!.holes).toHaveLength(0)
  })

  test('a square ring 30 mm wide falls into its four corners, and then nothing is left', () => {
    // In a corner the point as far from both sides as from the hole is 30 sqrt 2 / (1 + sqrt 2) = 17.57 mm off.
    expect(grow([ring], -14.9)).toHaveLength(1)
    expect(grow([ring], -15.1)).toHaveLength(4)
    expect(grow([ring], -17.5)).toHaveLength(4)
    expect(grow([ring], -17.7)).toEqual([])
  })

  test('an island in a hole is a region of its own', () => {
    const pieces = grow([ring, regionOf(box(45, 45, 55, 55))], 2)
    expect(pieces).toHaveLength(2)
    expect(pieces.flatMap((piece) => piece.holes)).toHaveLength(1)
  })
})

test('a convex outline grown by r has area A + P r + pi r2, less what chords cut off', () => {
  fc.assert(
    fc.property(convexOutline, length, (outline, r) => {
      const exact = loopArea(outline) + loopPerimeter(outline) * r + Math.PI * r * r
      const grown = grow([regionOf(outline)], r)
      const short = exact - area(grown)
      const chordsMm2 = 2 * Math.PI * r * chordErrorMm
      const roundingMm2 = perimeter(grown) * gridMm
      expect(grown).toHaveLength(1)
      expect(short).toBeGreaterThan(-roundingMm2)
      expect(short).toBeLessThan(chordsMm2 + roundingMm2)
    }),
    { numRuns: 80 },
  )
})

test('growing by a and then by b is growing by a + b, within what both chords cut off', () => {
  fc.assert(
    fc.property(starOutline, length, length, (outline, a, b) => {
      const once = grow([regionOf(outline)], a + b)
      const twice = grow(grow([regionOf(outline)], a), b)
      const stripMm2 = perimeter(once) * 2 * (chordErrorMm + gridMm)
      expect(area(difference(once, twice))).toBeLessThan(stripMm2)
      expect(area(difference(twice, once))).toBeLessThan(stripMm2)
    }),
    { numRuns: 60 },
  )
})

test('the grown outline holds the old one, and the shrunk one lies in it', () => {
  fc.assert(
    fc.property(starOutline, length, (outline, mm) => {
      const own = [regionOf(outline)]
      expect(area(difference(own, grow(own, mm)))).toBe(0)
      expect(area(difference(grow(own, -mm), own))).toBeLessThan(perimeter(own) * gridMm)
    }),
    { numRuns: 60 },
  )
})

test('which way a loop runs, and where it begins, makes no difference', () => {
  fc.assert(
    fc.property(starOutline, fc.double({ min: -10, max: 30, noNaN: true }), (outline, mm) => {
      const plain = area(grow([regionOf(outline)], mm))
      const turned = [...outline.slice(2), ...outline.slice(0, 2)]
      expect(area(grow([regionOf(outline.toReversed())], mm))).toBeCloseTo(plain, 2)
      expect(area(grow([regionOf(turned)], mm))).toBeCloseTo(plain, 2)
    }),
    { numRuns: 60 },
  )
})

test('inputs stay untouched', () => {
  const region: Region = regionOf(box(0, 0, 50, 50), [box(10, 10, 20, 20)])
  const before = structuredClone(region)
  grow([region], 3)
  growSteps([region], [1, 2])
  expect(region).toEqual(before)
})

test('lengths that are no numbers and points that are none are misuse', () => {
  expect(() => grow([regionOf(box(0, 0, 9, 9))], Number.NaN)).toThrow(RangeError)
  expect(() =>
    grow(
      [
        regionOf([
          [0, 0],
          [9, Number.NaN],
          [9, 9],
        ]),
      ],
      1,
    ),
  ).toThrow(/point 2/)
  expect(() => grow([regionOf(box(0, 0, 2e5, 9))], 1)).toThrow(RangeError)
  expect(() => growSteps([regionOf(box(0, 0, 9, 9))], [1, -1])).toThrow(/-1/)
})

/** What a disc covers that runs from one point to another: two discs and the strip between them. */
function swept(from: Point, to: Point, radiusMm: number): Region[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [u, v] = [((to[1] - from[1]) / length) * radiusMm, ((from[0] - to[0]) / length) * radiusMm]
  const strip: Loop = [
    [from[0] + u, from[1] + v],
    [to[0] + u, to[1] + v],
    [to[0] - u, to[1] - v],
    [from[0] - u, from[1] - v],
  ]
  return [regionOf(circle(from, radiusMm)), regionOf(strip)]
}

describe('a series of steps', () => {
  test('a step of 0 repeats the outline before it', () => {
    const [first, second] = growSteps([regionOf(box(0, 0, 90, 60))], [0, 12.7])
    expect(area(first!)).toBe(5400)
    expect(area(second!)).toBeGreaterThan(5400)
  })

  test('each stays within its stated error of the growth in one go', () => {
    fc.assert(
      fc.property(starOutline, fc.array(length, { minLength: 1, maxLength: 6 }), (outline, stepsMm) => {
        const own = [regionOf(outline)]
        const last = growSteps(own, stepsMm).at(-1)!
        const wholeMm = stepsMm.reduce((sum, step) => sum + step, 0)
        const errorMm = steppedErrorMm(stepsMm.length) + chordErrorMm + gridMm
        expect(area(difference(last, grow(own, wholeMm + errorMm)))).toBe(0)
        expect(area(difference(grow(own, wholeMm - errorMm), last))).toBe(0)
      }),
      { numRuns: 30 },
    )
  })

  test('a traced outline of 2000 points grows by 16 steps and keeps its area', () => {
    const traced = [regionOf(noisyOutline(2000, 0.5))]
    const steps = growSteps(
      traced,
      Array.from({ length: 16 }, () => 12.7),
    )
    expect(steps).toHaveLength(16)
    const once = grow(traced, 16 * 12.7)
    expect(Math.abs(area(steps[15]!) / area(once) - 1)).toBeLessThan(1e-4)
    const errorMm = steppedErrorMm(16) + steppedErrorMm(1)
    expect(area(difference(steps[15]!, grow(once, errorMm)))).toBe(0)
    expect(area(difference(once, grow(steps[15]!, errorMm)))).toBe(0)
  }, 30_000)

  test('a ragged outline in one go keeps its stated error', () => {
    const traced = noisyOutline(500, 2)
    expect(raggedCorners([regionOf(traced)])).toBeGreaterThan(200)
    // Grown without an offset: discs on all points and strips along all sides, united.
    const slow = union([
      regionOf(traced),
      ...traced.flatMap((from, index) => swept(from, traced[(index + 1) % traced.length]!, 30)),
    ])
    const quick = grow([regionOf(traced)], 30)
    const errorMm = steppedErrorMm(1) + chordErrorMm + gridMm
    expect(area(difference(quick, grow(slow, errorMm)))).toBe(0)
    expect(area(difference(slow, grow(quick, errorMm)))).toBe(0)
  }, 30_000)
})
