import { readFileSync } from 'node:fs'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { circle, grow, meetingGrowthMm, regionsArea } from '#lib/core/geometry/index'
import type { Point, Region } from '#lib/core/geometry/types'

const folder = 'tests/cases/T37a-offset-merges'
const given = JSON.parse(readFileSync(`${folder}/outline.json`, 'utf8')) as {
  circles: { centre: Point; radius: number }[]
  grow_mm: number[]
}
const expected = JSON.parse(readFileSync(`${folder}/expected.json`, 'utf8')) as {
  grow_10: { pieces: number; area_mm2: number }
  grow_20: { pieces: number; area_mm2: number }
  meet_at_mm: number
  wrong_double_count_mm2: number
  area_tolerance: number
}

const disc = ({ centre, radius }: { centre: Point; radius: number }): Region => ({
  outer: circle(centre, radius),
  holes: [],
})

describe('T37a: two round openings grow into each other', () => {
  const openings = given.circles.map(disc)

  test.each([
    [10, expected.grow_10],
    [20, expected.grow_20],
  ])('grown by %i mm', (mm, right) => {
    expect(given.grow_mm).toContain(mm)
    const grown = grow(openings, mm)
    expect(grown).toHaveLength(right.pieces)
    expect(Math.abs(regionsArea(grown) - right.area_mm2)).toBeLessThan(expected.area_tolerance)
  })

  test('what both cover counts once', () => {
    const apart = openings.reduce((sum, opening) => sum + regionsArea(grow([opening], 20)), 0)
    expect(Math.abs(apart - expected.wrong_double_count_mm2)).toBeLessThan(expected.area_tolerance)
    expect(regionsArea(grow(openings, 20))).toBeLessThan(apart - 200)
  })

  test('the growth at which they meet', () => {
    const [a, b] = openings
    expect(meetingGrowthMm([a!], [b!])).toBeCloseTo(expected.meet_at_mm, 6)
  })
})

describe('laws', () => {
  test('just below it there are two pieces, just above it one', () => {
    const discs = fc.record({
      radius: fc.integer({ min: 5, max: 60 }),
      other: fc.integer({ min: 5, max: 60 }),
      gap: fc.integer({ min: 2, max: 80 }),
      turn: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
    })
    fc.assert(
      fc.property(discs, ({ radius, other, gap, turn }) => {
        const away = radius + other + gap
        const a = disc({ centre: [0, 0], radius })
        const b = disc({ centre: [away * Math.cos(turn), away * Math.sin(turn)], radius: other })
        const mm = meetingGrowthMm([a], [b])
        // Flattened circles lie up to 0.005 mm inside the true ones, on either side.
        expect(mm).toBeGreaterThanOrEqual(gap / 2 - 1e-6)
        expect(mm).toBeLessThanOrEqual(gap / 2 + 0.006)
        expect(grow([a, b], mm - 0.02)).toHaveLength(2)
        expect(grow([a, b], mm + 0.02)).toHaveLength(1)
        expect(meetingGrowthMm([b], [a])).toBeCloseTo(mm, 9)
      }),
      { numRuns: 60 },
    )
  })

  test('touching, crossing and lying in one another is meeting already; in the hole it is not', () => {
    const at = (u: number, radius: number) => disc({ centre: [u, 0], radius })
    expect(meetingGrowthMm([at(0, 10)], [at(15, 10)])).toBe(0)
    expect(meetingGrowthMm([at(0, 10)], [at(1, 3)])).toBe(0)
    expect(meetingGrowthMm([at(1, 3)], [at(0, 10)])).toBe(0)
    const ring: Region = { outer: circle([0, 0], 30), holes: [circle([0, 0], 20)] }
    expect(meetingGrowthMm([ring], [at(0, 10)])).toBeCloseTo(5, 2)
  })

  test('nothing has no growth', () => {
    expect(() => meetingGrowthMm([], [disc({ centre: [0, 0], radius: 1 })])).toThrow(RangeError)
  })
})
