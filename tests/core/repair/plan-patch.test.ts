import { describe, expect, test } from 'vitest'
import { circle, roundedRectangle } from '#lib/core/geometry/index'
import { sources } from '#lib/core/sources'
import { bareArea, boxLoop, dowel, planned, plyOf, quietPatch, roundLoop } from './sample-patch'

const even = quietPatch({
  stack: Array.from({ length: 6 }, () => plyOf(0.5)),
  measuredThicknessMm: [3, 3, 3],
})
const cover = plyOf(0.5)

describe('what breaks the face, what must fit the back', () => {
  const areaOf = (regions: readonly { outer: readonly (readonly [number, number])[] }[]) =>
    regions.length === 0
      ? 0
      : planned({ ...even, opening: { outer: regions[0]!.outer, holes: [] } }).value.openingAreaMm2

  test('from the back: the opening, and the last ply with its covers', () => {
    const { value } = planned({ ...even, coverPlies: [cover, cover] })
    expect(areaOf(value.face)).toBeCloseTo(value.openingAreaMm2, 3)
    expect(value.footprint).toEqual(value.plies[7]!.outline)
    expect(value.plies[7]!.growthMm).toBeCloseTo(60 + 50, 9)
    expect(value.footprintAreaMm2).toBe(value.plies[7]!.areaMm2)
  })

  test('from the face: the largest ply, and on the back only covers or the through cut', () => {
    const partial = { ...even, side: 'place-face' as const, removedPlies: [1, 2, 3] }
    const { value } = planned(partial)
    expect(value.face).toEqual(value.plies[2]!.outline)
    expect(value.footprint).toEqual([])
    expect(value.footprintAreaMm2).toBe(0)
    expect(planned({ ...partial, coverPlies: [cover] }).value.footprint).not.toEqual([])
    const through = planned({ ...even, side: 'place-face' }).value
    expect(areaOf(through.footprint)).toBeCloseTo(through.openingAreaMm2, 3)
  })
})

describe('the section through the join', () => {
  test('from the back it is laid up from the tool face and shows what is built too thin', () => {
    const { value } = planned({ ...even, measuredThicknessMm: [3.6, 3.6], coverPlies: [cover] })
    expect(value.section[0]).toMatchObject({ layingOrder: 1, bottomMm: 0, kind: 'ply' })
    expect(value.section[5]!.topMm).toBeCloseTo(3, 9)
    expect(value.section[6]).toMatchObject({ layingOrder: 7, kind: 'cover' })
    expect(value.section[6]!.bottomMm).toBeCloseTo(3, 9)
    for (const [index, band] of value.section.entries()) {
      expect(band.toMm).toBe(value.plies[index]!.growthMm)
      expect(band.fromMm).toBeLessThan(0)
      expect(band.topMm - band.bottomMm).toBeCloseTo(value.plies[index]!.thicknessMm, 9)
    }
  })

  test('a block from the back begins on what is left of the parent', () => {
    const { value } = planned({ ...even, side: 'place-back', removedPlies: [4, 5, 6] })
    expect(value.section[0]!.bottomMm).toBeCloseTo(1.5, 9)
  })

  test('from the face it is laid up towards the tool face; cover plies lie on the back', () => {
    const input = { ...even, side: 'place-face' as const, removedPlies: [1, 2], coverPlies: [cover] }
    const { section } = planned(input).value
    expect(section[0]).toMatchObject({ bottomMm: 0.5, topMm: 1 })
    expect(section[1]!.bottomMm).toBeCloseTo(0, 9)
    expect(section[2]!.bottomMm).toBeCloseTo(3, 9)
  })
})

describe('figures and their working', () => {
  test('every figure that is shown stands at the end of a line of working', () => {
    const area = { ...bareArea, boundary: boxLoop(-1000, -1000, 90, 1000) }
    const coverPlies = [{ ...cover, material: { ...cover.material, name: 'other' } }]
    const { value, working } = planned({ ...even, area, measuredThicknessMm: [3.1, 3.3], coverPlies })
    const values = working.map((line) => line.value)
    const { lengths } = value
    const shown = [
      lengths.nominalThicknessMm,
      lengths.measuredThicknessMm,
      lengths.measuredSpreadMm,
      lengths.differencePercent,
      lengths.byRatioNominalMm,
      lengths.byRatioMm,
      lengths.byMmPerPlyMm,
      lengths.lengthMm,
      lengths.ratioReached,
      lengths.shortByMm,
      ...lengths.ratioOfMmPerPly,
      value.openingAreaMm2,
      value.footprintAreaMm2,
      value.builtThicknessMm,
      ...value.plies.flatMap((ply) => [
        ply.thicknessMm,
        ply.stepMm,
        ply.growthMm,
        ply.areaMm2,
        ply.perimeterMm,
        ...ply.acrossMm,
        ply.areaOutsideMm2,
        ply.distanceToEdgeMm,
      ]),
      ...value.takeOff.flatMap((each) => [
        each.rollLengthM,
        each.netAreaM2,
        each.grossAreaM2,
        each.massKg,
        each.offcutShare,
      ]),
    ]
    for (const figure of shown) {
      expect(values.some((each) => Math.abs(each - figure!) <= 1e-9 * Math.max(1, Math.abs(figure!)))).toBe(
        true,
      )
    }
  })

  test('every line names a source of the list, a formula and numbers', () => {
    for (const edge of ['scarf', 'steps'] as const) {
      for (const line of planned(
        quietPatch({ edge, coverPlies: [cover], rules: { ...even.rules, leastSurfaceStepMm: 10 } }),
      ).working) {
        expect(Object.keys(sources)).toContain(line.sourceId)
        expect(line.formula).not.toBe('')
        expect(line.numbers).not.toBe('')
        expect(Number.isFinite(line.value)).toBe(true)
      }
    }
  })

  test('built thickness is what is kept of the measured one and the new plies at their own', () => {
    const input = { ...even, side: 'place-face' as const, removedPlies: [1, 2], measuredThicknessMm: [3.6] }
    expect(planned(input).value.builtThicknessMm).toBeCloseTo(4 * 0.6 + 2 * 0.5, 9)
  })

  test('areas outside and distances to the edge are given for each ply', () => {
    const { plies } = planned({
      ...even,
      area: { ...bareArea, boundary: boxLoop(-1000, -1000, 75, 1000) },
    }).value
    expect(plies.map((ply) => Math.round(ply.distanceToEdgeMm))).toEqual([25, 15, 5, -5, -15, -25])
    expect(plies.slice(0, 3).map((ply) => ply.areaOutsideMm2)).toEqual([0, 0, 0])
    const segment = (radius: number) =>
      radius ** 2 * Math.acos(75 / radius) - 75 * Math.sqrt(radius ** 2 - 75 ** 2)
    for (const ply of plies.slice(3)) {
      expect(Math.abs(ply.areaOutsideMm2 - segment(40 + ply.growthMm))).toBeLessThan(3)
    }
  })

  test('places are named by area and grid cell', () => {
    const moved = { ...even, opening: { outer: roundLoop([50, -50], 40), holes: [] } }
    expect(planned(moved).value.place).toBe('floor L11')
  })
})

test('a plan of ten plies with a full area takes well under 300 ms', () => {
  const input = quietPatch({
    stack: Array.from({ length: 10 }, () => plyOf(0.55)),
    removedPlies: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
    opening: { outer: circle([0, 0], 60), holes: [] },
    coverPlies: [cover],
    area: {
      ...bareArea,
      boundary: roundedRectangle([-600, -400, 600, 400], 80),
      dowels: Array.from({ length: 40 }, (_, index) => dowel(`D${index}`, [index * 28 - 560, 210])),
      oldPatches: [-350, 300, 450].map((u) => ({
        name: `patch at ${u}`,
        face: circle([u, 0], 25),
        footprint: circle([u, 0], 80),
      })),
      keepOuts: [{ name: 'flange', kind: 'flange', outline: boxLoop(-600, 250, 600, 400) }],
      lines: [
        { name: 'edge', kind: 'trim', points: roundedRectangle([-580, -380, 580, 380], 60), closed: true },
      ],
    },
  })
  const times = [1, 2, 3].map(() => {
    const started = performance.now()
    planned(input)
    return performance.now() - started
  })
  expect(Math.min(...times)).toBeLessThan(300)
})
