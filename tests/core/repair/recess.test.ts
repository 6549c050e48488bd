import { describe, expect, test } from 'vitest'
import { type PatchInput, planPatch, type Side } from '#lib/core/repair/index'
import { cycle, planned, quietPatch } from './sample-patch'

function layingOrder(input: PatchInput): (number | null)[] {
  return planned(input).value.plies.map((ply) => ply.replaces)
}

const cover = { material: quietPatch().stack[1]!.material, directionDeg: 0 }

describe('which ply is laid first', () => {
  test('from the back the surface ply lies at the bottom of the recess and is laid first', () => {
    for (const side of ['pattern-back', 'place-back'] as const) {
      expect(layingOrder(quietPatch({ side, coverPlies: [cover, cover] }))).toEqual([
        1,
        2,
        3,
        4,
        5,
        6,
        null,
        null,
      ])
    }
  })

  test('from the face the deepest removed ply is laid first, the surface ply last and largest', () => {
    const input = quietPatch({ side: 'place-face', removedPlies: [1, 2, 3] })
    expect(layingOrder(input)).toEqual([3, 2, 1])
    const { plies } = planned(input).value
    expect(Math.max(...plies.map((ply) => ply.areaMm2))).toBe(plies[2]!.areaMm2)
  })

  test('each ply copies material and direction of the one it replaces', () => {
    const input = quietPatch({ side: 'place-face', removedPlies: [1, 2, 3, 4] })
    for (const ply of planned(input).value.plies) {
      const parent = input.stack[ply.replaces! - 1]!
      expect([ply.material, ply.directionDeg]).toEqual([parent.material, parent.directionDeg])
    }
  })

  test('a block from the back leaves the tool face whole, and that is said', () => {
    const { value, findings } = planned(quietPatch({ side: 'place-back', removedPlies: [3, 4, 5, 6] }))
    expect(value.plies.map((ply) => ply.replaces)).toEqual([3, 4, 5, 6])
    expect(value.face).toEqual([])
    expect(findings.find((finding) => finding.code === 'face-stays-whole')?.text).toMatch(/plies 3 to 6/)
  })
})

describe('no plan, with the reason in words', () => {
  test.each([
    ['pattern-back', [], /No ply is taken out/],
    ['pattern-back', [1, 2, 3], /begins with ply 6.*plies 1 to 6, or work in place from the face/],
    ['place-back', [1, 2, 4, 5, 6], /not one block.*every ply from 1 to 6/],
    ['place-face', [2, 3], /begins with ply 1.*plies 1 to 3, or work from the back/],
    ['place-face', [1, 7], /Ply 7 is not in the stack, which has plies 1 to 6/],
    ['place-face', [0, 1], /Ply 0 is not in the stack/],
    ['place-face', [1, 1.5], /Ply 1.5/],
    ['place-face', [1, 2, 2], /Ply 2 is named twice/],
  ] as [Side, number[], RegExp][])('%s with plies %j', (side, removedPlies, reason) => {
    const outcome = planPatch(quietPatch({ side, removedPlies }))
    expect(outcome.ok).toBe(false)
    expect(!outcome.ok && outcome.reason).toMatch(reason)
  })

  test('without a stack, an opening with an area, or a roll wider than the allowance', () => {
    const reason = (changes: Partial<PatchInput>) => {
      const outcome = planPatch(quietPatch(changes))
      return outcome.ok ? 'planned' : outcome.reason
    }
    expect(reason({ stack: [] })).toMatch(/no plies/)
    const flat = {
      outer: [
        [0, 0],
        [50, 0],
        [100, 0],
      ] as const,
      holes: [],
    }
    expect(reason({ opening: flat })).toMatch(/no area/)
    expect(reason({ opening: { outer: [], holes: [] } })).toMatch(/no area/)
    const bowTie = {
      outer: [
        [0, 0],
        [80, 80],
        [80, 0],
        [0, 80],
      ] as const,
      holes: [],
    }
    expect(reason({ opening: bowTie })).toMatch(/crosses itself/)
    expect(reason({ rules: { ...quietPatch().rules, cuttingAllowanceMm: 625 } })).toMatch(
      /nothing of the roll of 200 twill/,
    )
  })
})

describe('numbers that no shop means are RangeErrors with the figure', () => {
  test.each([
    [{ taper: { ratio: 0.5, mmPerPly: 12.7, use: 'ratio' } }, /taper ratio must be at least 1, got 0.5/],
    [{ taper: { ratio: Number.NaN, mmPerPly: 12.7, use: 'ratio' } }, /got NaN/],
    [{ taper: { ratio: 20, mmPerPly: 0, use: 'ratio' } }, /millimetres a ply/],
    [{ measuredThicknessMm: [3, 0] }, /measured thickness must be above 0, got 0/],
    [{ rules: { ...quietPatch().rules, coverLapMm: -1 } }, /coverLapMm must be at least 0, got -1/],
    [{ rules: { ...quietPatch().rules, pliesPerDebulk: 0 } }, /plies per debulk/],
    [
      {
        opening: {
          outer: [
            [0, 0],
            [Number.POSITIVE_INFINITY, 0],
            [0, 9],
          ],
          holes: [],
        },
      },
      /a point of the opening/,
    ],
    [{ cure: cycle('broken', Number.NaN, null) }, /a figure of broken/],
    [{ nextPartCureC: Number.NaN }, /temperature/],
  ] as [Partial<PatchInput>, RegExp][])('%#', (changes, message) => {
    expect(() => planPatch(quietPatch(changes))).toThrow(RangeError)
    expect(() => planPatch(quietPatch(changes))).toThrow(message)
  })
})
