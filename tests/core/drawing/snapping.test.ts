import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Point, type SnapFrom, snap, snapTargets } from '#lib/core/geometry/index'
import { rectangle, sampleFace } from './sample-face'

const alone: SnapFrom = { neighbours: [], own: [] }
const box = sampleFace({
  boundary: rectangle(0, 0, 1000, 600),
  grid: { originMm: [0, 600], cellMm: 100 },
  lines: [],
  keepOuts: [],
  openings: [],
  patches: [{ name: 'Patch 7', face: [rectangle(630, 210, 120, 80)], footprint: [] }],
  dowels: [{ tag: 'D03', at: [333, 222], diameterMm: 8, isDatum: false, oldPlace: null, setOn: null }],
})
const targets = snapTargets(box, 25)

describe('a drawn point is caught', () => {
  test.each<readonly [string, Point, Point, string]>([
    ['by a dowel, before the grid line beside it', [335, 224], [333, 222], 'dowel D03'],
    ['by a corner of the boundary', [3, 2], [0, 0], 'corner of the boundary'],
    ['by the boundary', [251, -4], [251, 0], 'the boundary'],
    ["by the shop's edge margin", [251, 27], [251, 25], '25 mm inside the boundary'],
    ['by the corner of a patch', [628, 212], [630, 210], 'corner of Patch 7'],
    ['by the outline of a patch', [652, 207], [652, 210], 'Patch 7'],
    ['by a grid line along v', [497, 141], [500, 141], 'grid line 5 | 6'],
    ['by a grid line along u', [451, 397], [451, 400], 'grid line B | C'],
    ['where two grid lines cross', [497, 397], [500, 400], 'grid line 5 | 6 and grid line B | C'],
    [
      'where a grid line meets the margin',
      [497, 22],
      [500, 25],
      'grid line 5 | 6 and 25 mm inside the boundary',
    ],
  ])('%s', (_what, drawn, at, words) => {
    const caught = snap(drawn, targets, alone, 8)
    expect(caught?.at[0]).toBeCloseTo(at[0], 6)
    expect(caught?.at[1]).toBeCloseTo(at[1], 6)
    expect(caught?.words.split(' and ').sort()).toEqual(words.split(' and ').sort())
  })

  test('by a step of 15 degrees from the corner before it', () => {
    const from: SnapFrom = { neighbours: [[430, 130]], own: [] }
    const caught = snap([430 + 40, 130 + 24], targets, from, 3)
    expect(caught?.words).toBe('edge at 30°')
    const [du, dv] = [caught!.at[0] - 430, caught!.at[1] - 130]
    expect((Math.atan2(dv, du) * 180) / Math.PI).toBeCloseTo(30, 9)
    expect(snap([430.4, 170], targets, from, 3)).toMatchObject({ at: [430, 170], words: 'edge at 90°' })
  })

  test('by the first point, which closes the outline', () => {
    const from: SnapFrom = {
      neighbours: [],
      own: [{ at: [441, 144], words: 'first point: closes the outline' }],
    }
    expect(snap([443, 146], targets, from, 8)?.words).toBe('first point: closes the outline')
  })

  test('by nothing where nothing is in reach', () => {
    expect(snap([451, 151], targets, alone, 8)).toBeNull()
  })
})

test('what was caught is caught where it lies: snapping again changes nothing', () => {
  const coordinate = fc.double({ min: -50, max: 1050, noNaN: true })
  fc.assert(
    fc.property(
      fc.tuple(coordinate, coordinate),
      fc.array(fc.tuple(coordinate, coordinate), { maxLength: 2 }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.constantFrom(box, sampleFace()),
      (point, neighbours, reachMm, face) => {
        const all = snapTargets(face, 25)
        const from: SnapFrom = { neighbours, own: [] }
        const once = snap(point, all, from, reachMm)
        if (once === null) return
        expect(snap(once.at, all, from, reachMm)?.at).toEqual(once.at)
      },
    ),
    { numRuns: 400 },
  )
})

test('the chords of a curve give no corners to be caught by', () => {
  const round = snapTargets(sampleFace(), 25)
  expect(round.points.filter(({ words }) => words === 'corner of the boundary')).toEqual([])
  expect(targets.points.filter(({ words }) => words === 'corner of the boundary')).toHaveLength(4)
})

test('says what it can not do', () => {
  expect(() => snap([0, 0], targets, alone, -1)).toThrow(/at least 0 mm, got -1/)
  expect(() => snap([Number.NaN, 0], targets, alone, 1)).toThrow(/no point to snap/)
})
