import { describe, expect, test } from 'vitest'
import { defaultRepairRules, planPatch } from '#lib/core/repair/index'
import { fieldErrors } from '#lib/schema/form'
import { PatchInputSchema } from '#lib/schema/patch'

const square = [
  [0, 0],
  [60, 0],
  [60, 40],
  [0, 40],
]

/** No more than what nobody may guess: side, edge, opening, stack, taper, boundary. */
const least = {
  side: 'place-back',
  edge: 'steps',
  opening: square,
  stack: [0, 45, 0].map((directionDeg) => ({
    material: {
      fibreArealWeightGsm: 650,
      fibreDensityGcm3: 1.78,
      fibreContent: { kind: 'resin-mass', resinMassFraction: 0.38, resinDensityGcm3: 1.22 },
    },
    directionDeg,
  })),
  taper: { ratio: 30 },
  area: {
    boundary: [
      [-230, -120],
      [300, -120],
      [300, 180],
      [-230, 180],
    ],
  },
}

const errors = (changes: object) => {
  const parsed = PatchInputSchema.safeParse({ ...least, ...changes })
  return parsed.success ? {} : fieldErrors(parsed.error)
}

describe('a request with no more than what nobody may guess', () => {
  const input = PatchInputSchema.parse(least)

  test('takes out all plies, by the rules of the design, on a grid from the top left of the boundary', () => {
    expect(input.removedPlies).toEqual([1, 2, 3])
    expect(input.rules).toEqual(defaultRepairRules)
    expect(input.area).toMatchObject({
      name: 'area',
      grid: { originMm: [-230, 180], cellMm: 50 },
      dowels: [],
      oldPatches: [],
    })
    expect(input.stack[0]?.material).toMatchObject({
      name: '650 g/m² ply',
      rollWidthMm: 1250,
      thickestCureMm: null,
    })
  })

  test('is planned, and tells that nothing was measured and no cure given', () => {
    const outcome = planPatch(input)
    const codes = outcome.ok ? outcome.result.findings.map((finding) => finding.code) : [outcome.reason]
    expect(codes).toEqual(expect.arrayContaining(['thickness-not-measured', 'cure-not-said']))
  })

  test.each(['side', 'edge', 'opening', 'stack', 'taper', 'area'])('%s is asked for', (field) => {
    expect(Object.keys(errors({ [field]: undefined }))).toEqual([field])
  })
})

describe('the opening', () => {
  const drawn = (opening: unknown) => PatchInputSchema.parse({ ...least, opening }).opening

  test('may be the points, a region, or a region of that kind: all the same', () => {
    expect(drawn(square)).toEqual({ outer: square, holes: [] })
    expect(drawn({ outer: square })).toEqual({ outer: square, holes: [] })
    expect(drawn({ kind: 'region', outer: square, holes: [] })).toEqual({ outer: square, holes: [] })
  })

  test('may be a circle or a rounded rectangle with where its middle lies', () => {
    const circle = drawn({ kind: 'circle', diameterMm: 50, placement: { shiftMm: [30, 20] } }).outer
    for (const [u, v] of circle) expect(Math.hypot(u - 30, v - 20)).toBeCloseTo(25, 2)
    const box = { kind: 'rounded-rectangle', lengthMm: 60, widthMm: 40, cornerRadiusMm: 15 }
    expect(Math.max(...drawn(box).outer.map(([u]) => u))).toBeCloseTo(30, 2)
    const turned = drawn({ ...box, placement: { turnDeg: 90 } }).outer
    expect(Math.max(...turned.map(([u]) => u))).toBeCloseTo(20, 2)
  })

  test.each([
    [
      'opening.outer.1.0',
      [
        [0, 0],
        ['1', 0],
        [1, 1],
      ],
    ],
    ['opening.outer', { outer: [[0, 0]] }],
    ['opening.diameterMm', { kind: 'circle' }],
    ['opening.cornerRadiusMm', { kind: 'rounded-rectangle', lengthMm: 60, widthMm: 40, cornerRadiusMm: 25 }],
    ['opening.kind', { kind: 'blob' }],
    ['opening', 'round'],
    ['opening', null],
  ])('a fault is told at %s', (field, opening) => {
    expect(Object.keys(errors({ opening }))).toEqual([field])
  })
})

describe('the taper', () => {
  const taken = (taper: object) => PatchInputSchema.parse({ ...least, taper }).taper

  test('the rule that is given governs, of two the longer, unless it is said', () => {
    expect(taken({ ratio: 30 })).toEqual({ ratio: 30, mmPerPly: 12.7, use: 'ratio' })
    expect(taken({ mmPerPly: 10 })).toEqual({ ratio: 20, mmPerPly: 10, use: 'mm-per-ply' })
    expect(taken({ ratio: 30, mmPerPly: 10 })).toEqual({ ratio: 30, mmPerPly: 10, use: 'longer' })
    expect(taken({ ratio: 30, mmPerPly: 10, use: 'ratio' }).use).toBe('ratio')
    expect(errors({ taper: {} })).toEqual({ taper: 'Give a ratio, millimetres a ply, or both' })
  })
})

test('single rules may be set, the others stay', () => {
  const { rules } = PatchInputSchema.parse({ ...least, rules: { leastSurfaceStepMm: 0 } })
  expect(rules).toEqual({ ...defaultRepairRules, leastSurfaceStepMm: 0 })
  expect(Object.keys(errors({ rules: { coverLapMm: -1 } }))).toEqual(['rules.coverLapMm'])
})
