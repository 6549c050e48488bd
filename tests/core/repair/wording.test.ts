import { describe, expect, test } from 'vitest'
import { edges, type PatchInput, sides } from '#lib/core/repair/index'
import { bareArea, boxLoop, cycle, dowel, planned, plyOf, quietPatch, roundLoop } from './sample-patch'

/** A crowded area, so that nearly everything has something to say. */
const crowded: PatchInput['area'] = {
  ...bareArea,
  boundary: boxLoop(-300, -90, 300, 90),
  lines: [{ name: 'edge', kind: 'trim', points: boxLoop(-60, -60, 60, 60), closed: true }],
  keepOuts: [
    { name: 'aft', kind: 'flange', outline: boxLoop(-300, 70, 300, 90) },
    { name: 'rib 1', kind: 'backing', outline: boxLoop(-100, -90, -80, 90) },
  ],
  dowels: [dowel('D1', [0, 0]), dowel('D2', [70, 0], { isDatum: true }), dowel('D3', [45, 0])],
  oldPatches: [{ name: 'Patch 1', face: roundLoop([120, 0], 30), footprint: roundLoop([120, 0], 80) }],
}

const variants: Partial<PatchInput>[] = [
  {},
  { patternAvailable: false, measuredThicknessMm: [] },
  { coverPlies: [plyOf(0.5)], measuredThicknessMm: [3.9], taper: { ratio: 12, mmPerPly: 5, use: 'longer' } },
  { heat: { inUseC: 60, freeStandingC: null, bondedC: 80 }, cure: cycle('cure', 70, 60), nextPartCureC: 120 },
  { heat: { inUseC: 300, freeStandingC: 120, bondedC: null }, nextPartCureC: null, postCure: null },
]

function sentences(input: PatchInput): string[] {
  const { value, findings, method, working } = planned(input)
  return [
    method,
    ...findings.flatMap(({ text, cure }) => [text, ...(cure === null ? [] : [cure])]),
    ...value.jobLines.flatMap(({ title, detail, cautions }) => [title, detail, ...cautions]),
    ...working.flatMap(({ label, formula, numbers, unit }) => [label, formula, numbers, unit]),
  ]
}

describe.each(sides)('every sentence of a plan %s', (side) => {
  test.each(edges)('%s: no doubled words, no gaps, no signs of a typewriter', (edge) => {
    for (const changes of variants) {
      for (const part of [false, true]) {
        const removedPlies = part ? (side === 'place-face' ? [1, 2] : [4, 5, 6]) : [1, 2, 3, 4, 5, 6]
        for (const sentence of sentences(
          quietPatch({ area: crowded, ...changes, side, edge, removedPlies }),
        )) {
          expect(sentence).not.toMatch(/\bdeg\b|degC|\+\/-|mm2|g\/m2|cm3/)
          expect(sentence).not.toMatch(/undefined|NaN|Infinity|null|\[object/)
          expect(sentence).not.toMatch(/\b([a-z]+) \1\b/i)
          expect(sentence).not.toMatch(/ {2}|\.\.|[;,:]\.|^ | $/)
        }
      }
    }
  })

  test('a finding that asks for a because says what to do, in whole sentences', () => {
    for (const changes of variants) {
      for (const { severity, text, cure } of planned(quietPatch({ area: crowded, ...changes, side }))
        .findings) {
        expect(text).toMatch(/^[A-Z0-9].*\.$/s)
        if (severity !== 'note') expect(cure).toMatch(/^[A-Z0-9].*\.$/s)
      }
    }
  })
})
