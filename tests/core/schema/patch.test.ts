import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { edges, planPatch, sides } from '#lib/core/repair/index'
import { fieldErrors } from '#lib/schema/form'
import { OffsetRequest, OutlineRequest, PatchInputSchema } from '#lib/schema/patch'
import { quietPatch } from '../repair/sample-patch'

/** What a script must send at the least. */
const least = () => {
  const { side, edge, opening, stack, removedPlies, taper, area } = quietPatch()
  const { name, boundary, grid } = area
  return {
    side,
    edge,
    opening: { outer: opening.outer },
    stack,
    removedPlies,
    taper,
    area: { name, boundary, grid },
  }
}

describe('the input of compute/patch', () => {
  test("what is left out is not known, not there, or a shop's default", () => {
    const {
      rules,
      heat,
      measuredThicknessMm,
      coverPlies,
      cure,
      postCure,
      nextPartCureC,
      patternAvailable,
      area,
    } = PatchInputSchema.parse(least())
    expect({
      heat,
      measuredThicknessMm,
      coverPlies,
      cure,
      postCure,
      nextPartCureC,
      patternAvailable,
    }).toEqual({
      heat: { inUseC: null, freeStandingC: null, bondedC: null },
      measuredThicknessMm: [],
      coverPlies: [],
      cure: null,
      postCure: null,
      nextPartCureC: null,
      patternAvailable: true,
    })
    expect(rules.edgeMarginMm).toBe(25)
    expect(area).toMatchObject({ lines: [], keepOuts: [], dowels: [], oldPatches: [] })
  })

  test.each([
    ['side', { side: 'front' }],
    ['edge', { edge: undefined }],
    ['opening.outer', { opening: { outer: [[0, 0]] } }],
    [
      'opening.outer.1.0',
      {
        opening: {
          outer: [
            [0, 0],
            ['1', 0],
            [1, 1],
          ],
        },
      },
    ],
    ['removedPlies', { removedPlies: [] }],
    ['measuredThicknessMm.0', { measuredThicknessMm: [0] }],
    ['taper.ratio', { taper: { ratio: 0.5, mmPerPly: 12.7, use: 'ratio' } }],
    ['taper.mmPerPly', { taper: { ratio: 20, mmPerPly: 0, use: 'ratio' } }],
    ['stack', { stack: [] }],
    ['rules.pliesPerDebulk', { rules: { ...quietPatch().rules, pliesPerDebulk: 0 } }],
  ])('%s is told', (field, changes) => {
    const parsed = PatchInputSchema.safeParse({ ...least(), ...changes })
    expect(Object.keys(parsed.success ? {} : fieldErrors(parsed.error))).toEqual([field])
  })

  test('whatever passes the schema is planned, or answered with a reason: never an error', {
    timeout: 60_000,
  }, () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    const spot = fc.tuple(between(-2000, 2000), between(-2000, 2000))
    const loop = (most: number) => fc.array(spot, { minLength: 3, maxLength: most })
    const tame = fc
      .tuple(between(1, 300), between(1, 300), between(-300, 300), between(-300, 300))
      .map(([u, v, atU, atV]): [number, number][] => [
        [atU, atV],
        [atU + u, atV],
        [atU + u, atV + v],
        [atU, atV + v],
      ])
    const material = fc.record({
      name: fc.constantFrom('a', 'b', 'c'),
      role: fc.constantFrom('surface', 'bulk'),
      fibreArealWeightGsm: between(10, 3000),
      fibreDensityGcm3: between(0.5, 5),
      fibreContent: fc.oneof(
        fc.record({ kind: fc.constant('fibre-volume'), fibreVolumeFraction: between(0.05, 0.85) }),
        fc.record({
          kind: fc.constant('resin-mass'),
          resinMassFraction: between(0.05, 0.9),
          resinDensityGcm3: between(0.5, 3),
        }),
      ),
      rollWidthMm: between(50, 5000),
      thickestCureMm: fc.option(between(0.1, 200)),
    })
    const ply = fc.record({ material, directionDeg: between(-179.99, 180) })
    const cycle = fc.record({
      name: fc.constant('cycle'),
      segments: fc.array(
        fc.record({ rampCPerMin: between(0.01, 20), toC: between(10, 400), holdMin: between(0, 6000) }),
        {
          minLength: 1,
          maxLength: 4,
        },
      ),
      tgAfterC: fc.option(between(20, 400)),
    })
    const limit = fc.option(between(20, 400))
    const rules = fc.record({
      edgeMarginMm: between(0, 1000),
      patchSpacingMm: between(0, 1000),
      footprintToDowelRimMm: between(0, 1000),
      insideRadiusMm: fc.oneof(fc.constant(0), between(0, 50)),
      coverLapMm: between(0, 100),
      leastSurfaceStepMm: between(0, 50),
      thicknessTolerance: between(0, 1),
      plyAlignmentDeg: between(0, 45),
      pliesPerDebulk: fc.integer({ min: 1, max: 50 }),
      heatMarginC: between(0, 100),
      cuttingAllowanceMm: between(0, 200),
    })
    const input = fc.record({
      side: fc.constantFrom(...sides),
      edge: fc.constantFrom(...edges),
      opening: fc.record({ outer: fc.oneof(tame, loop(8)), holes: fc.array(loop(4), { maxLength: 1 }) }),
      stack: fc.array(ply, { minLength: 1, maxLength: 5 }),
      // Mostly all plies; null stands for them.
      removedPlies: fc.option(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 5 }), {
        freq: 1,
      }),
      measuredThicknessMm: fc.array(between(0.05, 20), { maxLength: 3 }),
      taper: fc.record({
        ratio: between(1, 60),
        mmPerPly: between(0.1, 40),
        use: fc.constantFrom('ratio', 'mm-per-ply', 'longer'),
      }),
      coverPlies: fc.array(ply, { maxLength: 2 }),
      area: fc.record({
        name: fc.constant('floor'),
        boundary: fc.oneof(tame, loop(6)),
        lines: fc.array(
          fc.record({
            name: fc.constant('line'),
            kind: fc.constantFrom('trim', 'scribe'),
            points: fc.array(spot, { minLength: 2, maxLength: 4 }),
            closed: fc.boolean(),
          }),
          { maxLength: 2 },
        ),
        keepOuts: fc.array(
          fc.record({
            name: fc.constant('flange'),
            kind: fc.constantFrom('flange', 'seal-land', 'backing', 'other'),
            outline: loop(5),
          }),
          { maxLength: 2 },
        ),
        dowels: fc.array(
          fc.record({
            tag: fc.constantFrom('D1', 'D2'),
            at: spot,
            diameterMm: between(0.1, 50),
            bushDiameterMm: fc.option(between(0.1, 500)),
            through: fc.boolean(),
            isDatum: fc.boolean(),
          }),
          { maxLength: 3 },
        ),
        oldPatches: fc.array(fc.record({ name: fc.constant('Patch 1'), face: loop(5), footprint: loop(5) }), {
          maxLength: 1,
        }),
        grid: fc.record({ originMm: spot, cellMm: between(5, 1000) }),
      }),
      rules,
      heat: fc.record({ inUseC: limit, freeStandingC: limit, bondedC: limit }),
      cure: fc.option(cycle),
      postCure: fc.option(cycle),
      nextPartCureC: fc.option(between(10, 400)),
      patternAvailable: fc.boolean(),
    })
    fc.assert(
      fc.property(input, (raw) => {
        const removedPlies = raw.removedPlies ?? raw.stack.map((_ply, index) => index + 1)
        const outcome = planPatch(PatchInputSchema.parse({ ...raw, removedPlies }))
        expect(outcome.ok || outcome.reason.length > 10).toBe(true)
      }),
      { numRuns: 150 },
    )
  })
})

test('what read/outline and compute/offset take', () => {
  expect(OutlineRequest.parse({ name: 'a.csv', text: '' })).toEqual({ name: 'a.csv', text: '', unit: null })
  expect(OutlineRequest.safeParse({ name: 'a.csv', text: '', unit: 'ft' }).success).toBe(false)
  const square = [
    [0, 0],
    [1, 0],
    [1, 1],
  ]
  expect(OffsetRequest.parse({ outer: square, growMm: [1] })).toMatchObject({ holes: [], unit: 'mm' })
  expect(OffsetRequest.safeParse({ outer: square, growMm: [] }).success).toBe(false)
})
