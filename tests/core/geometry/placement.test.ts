import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  asDrawn,
  inversePlacement,
  loopArea,
  type Placement,
  placeLoop,
  placePoint,
  placeRegion,
  signedArea,
} from '#lib/core/geometry/index'
import { box, regionOf, somePoint, starOutline } from './arbitrary-outlines'

const somePlacement: fc.Arbitrary<Placement> = fc.record({
  shiftMm: somePoint,
  turnDeg: fc.double({ min: -360, max: 360, noNaN: true }),
  mirrored: fc.boolean(),
})

test('mirror comes first, then the turn, then the shift', () => {
  expect(placePoint([10, 0], { shiftMm: [0, 0], turnDeg: 90, mirrored: false })).toEqual([0, 10])
  expect(placePoint([10, 0], { shiftMm: [0, 0], turnDeg: 90, mirrored: true })).toEqual([0, -10])
  expect(placePoint([10, 5], { shiftMm: [100, 200], turnDeg: 180, mirrored: true })).toEqual([110, 195])
})

test('about a reference of the outline: the reference itself only shifts', () => {
  fc.assert(
    fc.property(somePoint, somePlacement, (reference, placement) => {
      const [u, v] = placePoint(reference, placement, reference)
      expect(u).toBeCloseTo(reference[0] + placement.shiftMm[0], 9)
      expect(v).toBeCloseTo(reference[1] + placement.shiftMm[1], 9)
    }),
  )
})

test('the inverse brings every point back', () => {
  fc.assert(
    fc.property(
      somePoint,
      somePlacement,
      fc.option(somePoint, { nil: undefined }),
      (point, placement, reference) => {
        const there = placePoint(point, placement, reference)
        const back = placePoint(there, inversePlacement(placement), reference)
        expect(back[0]).toBeCloseTo(point[0], 8)
        expect(back[1]).toBeCloseTo(point[1], 8)
      },
    ),
  )
})

test('sizes stay, and outlines run counter-clockwise, mirrored or not', () => {
  fc.assert(
    fc.property(starOutline, somePlacement, (outline, placement) => {
      const placed = placeLoop(outline, placement)
      expect(loopArea(placed)).toBeCloseTo(loopArea(outline), 5)
      expect(signedArea(placed)).toBeGreaterThan(0)
    }),
  )
  const { outer, holes } = placeRegion(regionOf(box(0, 0, 9, 9), [box(3, 3, 6, 6)]), {
    ...asDrawn,
    mirrored: true,
  })
  expect(signedArea(outer)).toBe(81)
  expect(signedArea(holes[0]!)).toBe(-9)
})

test('as drawn changes nothing; a turn that is no number is misuse', () => {
  expect(placePoint([3, 4], asDrawn)).toEqual([3, 4])
  expect(() => placePoint([3, 4], { ...asDrawn, turnDeg: Number.NaN })).toThrow(RangeError)
})
