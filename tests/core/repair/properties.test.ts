import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import type { Point } from '#lib/core/geometry/types'
import { type PatchInput, planPatch, sides } from '#lib/core/repair/index'
import {
  bareArea,
  boxLoop,
  bulkTwill,
  cycle,
  dowel,
  planned,
  plyOf,
  quietPatch,
  roundLoop,
  surfaceTwill,
} from './sample-patch'

vi.setConfig({ testTimeout: 60_000 })

const direction = fc.constantFrom(0, 45, -45, 90, 30)
const ply = fc.record({ material: fc.constantFrom(surfaceTwill, bulkTwill), directionDeg: direction })
const place = fc.tuple(fc.integer({ min: -300, max: 300 }), fc.integer({ min: -300, max: 300 }))
const maybeC = fc.option(fc.integer({ min: 60, max: 200 }))

/** Star-shaped outlines with any number of corners, so with inside corners too. */
const blob = fc.array(fc.integer({ min: 15, max: 90 }), { minLength: 3, maxLength: 14 }).map((radii) =>
  radii.map((radius, index): Point => {
    const turn = (2 * Math.PI * index) / radii.length
    return [radius * Math.cos(turn), radius * Math.sin(turn)]
  }),
)

const dowels = fc
  .array(
    fc.record({
      at: place,
      isDatum: fc.boolean(),
      through: fc.boolean(),
      bush: fc.option(fc.constantFrom(16, 30)),
    }),
    { maxLength: 6 },
  )
  .map((all) =>
    all.map((each, index) =>
      dowel(`D${index}`, each.at, {
        isDatum: each.isDatum,
        through: each.through,
        bushDiameterMm: each.bush,
      }),
    ),
  )

/** Any plan that a shop could ask for: sides, edges, stacks, blocks of plies, odd openings, crowded areas. */
const anyPatch: fc.Arbitrary<PatchInput> = fc
  .record({
    side: fc.constantFrom(...sides),
    edge: fc.constantFrom('scarf' as const, 'steps' as const),
    outer: blob,
    stack: fc.array(ply, { minLength: 1, maxLength: 8 }),
    block: fc.integer({ min: 1, max: 8 }),
    measured: fc.array(fc.integer({ min: 10, max: 90 }), { maxLength: 4 }),
    ratio: fc.integer({ min: 1, max: 60 }),
    mmPerPly: fc.integer({ min: 1, max: 25 }),
    use: fc.constantFrom('ratio' as const, 'mm-per-ply' as const, 'longer' as const),
    covers: fc.array(ply, { maxLength: 2 }),
    least: fc.constantFrom(0, 10),
    edgeAt: fc.integer({ min: 20, max: 400 }),
    dowels,
    old: fc.option(place),
    limits: fc.tuple(maybeC, maybeC, maybeC),
    next: maybeC,
    patternAvailable: fc.boolean(),
  })
  .map((any) => {
    const count = any.stack.length
    const out = Math.min(any.block, count)
    const first = any.side === 'place-face' ? 1 : count - out + 1
    return quietPatch({
      side: any.side,
      edge: any.edge,
      opening: { outer: any.outer, holes: [] },
      stack: any.stack,
      removedPlies: Array.from({ length: out }, (_, index) => first + index),
      measuredThicknessMm: any.measured.map((each) => each / 10),
      taper: { ratio: any.ratio, mmPerPly: any.mmPerPly, use: any.use },
      coverPlies: any.covers,
      area: {
        ...bareArea,
        boundary: boxLoop(-400, -400, any.edgeAt, 400),
        dowels: any.dowels,
        oldPatches:
          any.old === null
            ? []
            : [{ name: 'patch 1', face: roundLoop(any.old, 20, 24), footprint: roundLoop(any.old, 60, 24) }],
      },
      rules: { ...quietPatch().rules, leastSurfaceStepMm: any.least },
      heat: { inUseC: any.limits[0], freeStandingC: any.limits[1], bondedC: any.limits[2] },
      cure: any.limits[0] === null ? null : cycle('cure', any.limits[0], any.limits[1]),
      nextPartCureC: any.next,
      patternAvailable: any.patternAvailable,
    })
  })

describe('for any patch that a shop could ask for', () => {
  test('the planner answers without throwing and leaves its input untouched', () => {
    fc.assert(
      fc.property(anyPatch, (input) => {
        const before = structuredClone(input)
        expect(planPatch(input).ok).toBe(true)
        expect(input).toEqual(before)
      }),
      { numRuns: 80 },
    )
  })

  test('laying order counts from 1, replaces each removed ply once, cover plies last', () => {
    fc.assert(
      fc.property(anyPatch, (input) => {
        const { plies } = planned(input).value
        expect(plies.map((each) => each.layingOrder)).toEqual(plies.map((_, index) => index + 1))
        const replaced = plies.slice(0, input.removedPlies.length).map((each) => each.replaces!)
        expect([...replaced].sort((a, b) => a - b)).toEqual([...input.removedPlies])
        expect(plies.slice(input.removedPlies.length).every((each) => each.replaces === null)).toBe(true)
      }),
      { numRuns: 40 },
    )
  })

  test('each outline holds the one before it, so areas and boxes grow', () => {
    fc.assert(
      fc.property(anyPatch, (input) => {
        const { plies, openingAreaMm2 } = planned(input).value
        let areaMm2 = openingAreaMm2
        let box = [
          Number.POSITIVE_INFINITY,
          Number.POSITIVE_INFINITY,
          Number.NEGATIVE_INFINITY,
          Number.NEGATIVE_INFINITY,
        ]
        for (const each of plies) {
          expect(each.areaMm2).toBeGreaterThanOrEqual(areaMm2 * (1 - 1e-4))
          expect(each.stepMm).toBeGreaterThanOrEqual(0)
          for (const [index, side] of each.boundsMm.entries()) {
            expect(index < 2 ? box[index]! - side : side - box[index]!).toBeGreaterThanOrEqual(-0.02)
          }
          areaMm2 = each.areaMm2
          box = [...each.boundsMm]
        }
      }),
      { numRuns: 40 },
    )
  })

  test('findings say the same whatever the order of the dowels, and stand worst first', () => {
    fc.assert(
      fc.property(anyPatch, (input) => {
        const back = { ...input, area: { ...input.area, dowels: [...input.area.dowels].reverse() } }
        const { findings } = planned(input)
        expect(planned(back).findings).toEqual(findings)
        const rank = { stop: 0, look: 1, note: 2 }
        const ranks = findings.map((finding) => rank[finding.severity])
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
      }),
      { numRuns: 40 },
    )
  })
})

describe('the length of a scarf', () => {
  const stack = fc.array(fc.double({ min: 0.1, max: 0.9, noNaN: true }), { minLength: 1, maxLength: 8 })
  const byRatio = (thicknesses: readonly number[], measuredMm: readonly number[]) =>
    quietPatch({
      stack: thicknesses.map((each) => plyOf(each)),
      removedPlies: thicknesses.map((_, index) => index + 1),
      measuredThicknessMm: measuredMm,
    })

  test('scales with the measured thickness', () => {
    fc.assert(
      fc.property(stack, fc.double({ min: 0.5, max: 2, noNaN: true }), (thicknesses, scale) => {
        const one = planned(byRatio(thicknesses, [3])).value.lengths.lengthMm
        const other = planned(byRatio(thicknesses, [3 * scale])).value.lengths.lengthMm
        expect(other).toBeCloseTo(one * scale, 8)
      }),
      { numRuns: 40 },
    )
  })

  test('is the sum of the steps, and the ratio times the thickness, when no least step bites', () => {
    fc.assert(
      fc.property(stack, fc.double({ min: 1, max: 8, noNaN: true }), (thicknesses, measuredMm) => {
        const { plies, lengths } = planned(byRatio(thicknesses, [measuredMm])).value
        expect(plies.reduce((sum, each) => sum + each.stepMm, 0)).toBeCloseTo(lengths.lengthMm, 9)
        expect(lengths.lengthMm).toBeCloseTo(20 * measuredMm, 9)
        expect(plies.at(-1)!.growthMm).toBeCloseTo(lengths.lengthMm, 9)
      }),
      { numRuns: 40 },
    )
  })
})
