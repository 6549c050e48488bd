import { describe, expect, test } from 'vitest'
import { codes, dowel, found, planned, plyOf, quietPatch } from './sample-patch'

const rules = (leastSurfaceStepMm: number) => ({ ...quietPatch().rules, leastSurfaceStepMm })
const growths = (input: Parameters<typeof planned>[0]) =>
  planned(input).value.plies.map((ply) => ply.growthMm)
const sixEqual = Array.from({ length: 6 }, () => plyOf(0.5))

describe('sanded scarf and machined steps', () => {
  const input = quietPatch({ stack: sixEqual, measuredThicknessMm: [3] })

  test('a scarf grows each ply by its own step, steps by those before it', () => {
    const close = (values: number[], expected: number[]) => {
      for (const [i, each] of expected.entries()) expect(values[i]).toBeCloseTo(each, 9)
    }
    close(growths(input), [10, 20, 30, 40, 50, 60])
    close(growths({ ...input, edge: 'steps' }), [0, 10, 20, 30, 40, 50])
  })

  test('the length of steps is that of the lands, judged by the plies that they lie on', () => {
    const { lengths } = planned({ ...input, edge: 'steps' }).value
    expect(lengths.lengthMm).toBeCloseTo(50, 9)
    expect(lengths.ratioReached).toBeCloseTo(20, 9)
    expect(lengths.shortByMm).toBe(0)
  })

  test('one ply with machined steps is butted, which is told', () => {
    const single = quietPatch({ side: 'place-face', edge: 'steps', removedPlies: [1] })
    expect(planned(single).value.lengths).toMatchObject({ lengthMm: 0, ratioReached: 0, shortByMm: 0 })
    expect(found(single, 'ply-without-land')?.severity).toBe('look')
    expect(codes({ ...single, edge: 'scarf' })).not.toContain('ply-without-land')
  })

  test('the last ply of steps is butted unless a cover ply laps it', () => {
    const steps = { ...input, edge: 'steps' as const }
    expect(codes(steps)).toContain('last-ply-butted')
    expect(codes({ ...steps, coverPlies: [plyOf(0.5)] })).not.toContain('last-ply-butted')
    expect(codes(steps)).toContain('steps-land-off')
    expect(codes(input)).not.toContain('steps-land-off')
  })
})

describe('the least step of the surface ply', () => {
  test('lengthens that ply only, wherever it is laid', () => {
    const back = quietPatch({ rules: rules(10), measuredThicknessMm: [] })
    const free = quietPatch({ measuredThicknessMm: [] })
    const steps = (input: typeof back) => planned(input).value.plies.map((ply) => ply.stepMm)
    expect(steps(back)[0]).toBe(10)
    for (const [index, step] of steps(free).entries()) {
      if (index > 0) expect(steps(back)[index]).toBeCloseTo(step, 9)
    }
    expect(codes(back)).toContain('surface-step-lengthened')
    expect(codes(free)).not.toContain('surface-step-lengthened')
    const face = { ...back, side: 'place-face' as const, removedPlies: [1, 2, 3] }
    expect(steps(face)[2]).toBeCloseTo(10, 9)
  })

  test('does nothing to a ply that is stepped farther anyway, nor when the surface ply stays', () => {
    expect(
      codes(quietPatch({ rules: rules(10), taper: { ratio: 50, mmPerPly: 12.7, use: 'ratio' } })),
    ).not.toContain('surface-step-lengthened')
    expect(codes(quietPatch({ rules: rules(10), removedPlies: [2, 3, 4, 5, 6] }))).not.toContain(
      'surface-step-lengthened',
    )
  })
})

describe('which rule governs', () => {
  const at = (use: 'ratio' | 'mm-per-ply' | 'longer', mmPerPly: number) =>
    planned(quietPatch({ taper: { ratio: 20, mmPerPly, use } })).value.lengths

  test('the longer one when asked for that, and both lengths are told', () => {
    expect(at('longer', 5)).toMatchObject({ governs: 'ratio', byMmPerPlyMm: 30 })
    expect(at('longer', 20)).toMatchObject({ governs: 'mm-per-ply', lengthMm: 120 })
    expect(at('ratio', 20).governs).toBe('ratio')
    expect(at('mm-per-ply', 5).governs).toBe('mm-per-ply')
  })

  test('the note tells what millimetres a ply mean on fine and on heavy plies', () => {
    const note = found(quietPatch({ measuredThicknessMm: [] }), 'taper-rules-disagree')!
    expect(note.severity).toBe('note')
    expect(note.text).toMatch(/18\.4:1 on ply 2 \(0\.692 mm\) and 55:1 on ply 1 \(0\.231 mm\)/)
    const agree = quietPatch({
      stack: sixEqual,
      measuredThicknessMm: [3],
      taper: { ratio: 20, mmPerPly: 10, use: 'ratio' },
    })
    expect(codes(agree)).not.toContain('taper-rules-disagree')
  })
})

test('a ratio below what repair guides begin with is noted', () => {
  const at = (ratio: number) => codes(quietPatch({ taper: { ratio, mmPerPly: 12.7, use: 'ratio' } }))
  expect(at(19)).toContain('ratio-below-usual')
  expect(at(20)).not.toContain('ratio-below-usual')
})

describe('a taper below the ratio asked for', () => {
  const short = quietPatch({ taper: { ratio: 20, mmPerPly: 5, use: 'mm-per-ply' } })

  test('is told with what is missing, and by ratio it is not', () => {
    const finding = found(short, 'taper-below-ratio')!
    expect(finding.severity).toBe('look')
    const { lengths } = planned(short).value
    expect(finding.figures).toMatchObject({
      shortByMm: lengths.shortByMm,
      ratioReached: lengths.ratioReached,
    })
    expect(lengths.shortByMm).toBeCloseTo(lengths.byRatioMm - 30, 9)
    expect(codes({ ...short, taper: { ...short.taper, use: 'longer' } })).not.toContain('taper-below-ratio')
  })

  test('the longer taper is a cure only where it reaches nothing', () => {
    expect(found(short, 'taper-below-ratio')!.cure).toMatch(/fits here and is 20:1/)
    const crowded = { ...short, area: { ...short.area, dowels: [dowel('D1', [60, 0])] } }
    expect(found(crowded, 'taper-below-ratio')!.cure).toMatch(
      /reaches nothing that this one does not reach already and is 20:1/,
    )
    const keepOuts = [
      {
        name: 'flange aft',
        kind: 'flange' as const,
        outline: [
          [80, -50],
          [200, -50],
          [200, 50],
          [80, 50],
        ] as const,
      },
    ]
    const tight = { ...short, area: { ...short.area, keepOuts } }
    expect(codes(tight)).not.toContain('footprint-on-flange')
    expect(found(tight, 'taper-below-ratio')!.cure).toMatch(/nearer than the rules allow to flange aft/)
  })
})

describe('for plies that are taken out, only their share of the measured thickness counts', () => {
  test('twice as thick as the book says doubles the steps of the two plies cut', () => {
    const book = quietPatch({
      stack: sixEqual,
      side: 'place-face',
      removedPlies: [1, 2],
      measuredThicknessMm: [3],
    })
    const thick = { ...book, measuredThicknessMm: [6] }
    expect(planned(book).value.lengths.byRatioMm).toBeCloseTo(20, 9)
    expect(planned(thick).value.lengths.byRatioMm).toBeCloseTo(40, 9)
    expect(planned(thick).value.lengths.byRatioNominalMm).toBeCloseTo(20, 9)
  })
})
