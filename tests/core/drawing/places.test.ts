import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { crossings, outlineMeasures, type Point, placeWords } from '#lib/core/geometry/index'
import { starOutline } from '../geometry/arbitrary-outlines'
import { rectangle } from './sample-face'

const area = { name: 'floor', grid: { originMm: [0, 600] as const, cellMm: 50 } }
const dowels = [
  { tag: 'D01', at: [40, 40] as const, diameterMm: 8 },
  { tag: 'D03', at: [180, 540] as const, diameterMm: 8 },
]

describe('a place in words', () => {
  test.each<readonly [Point, string, string]>([
    [[220, 510], 'floor B5, 50 mm from D03', 'floor B5, 50 mm from D03 (40 mm towards +u, 30 mm towards −v)'],
    [[180, 540], 'floor B4, at D03', 'floor B4, at D03'],
    [[180, 543.25], 'floor B4, 3.3 mm from D03', 'floor B4, 3.3 mm from D03 (3.3 mm towards +v)'],
  ])('%j', (point, short, print) => {
    expect(placeWords(point, area, dowels)).toBe(short)
    expect(placeWords(point, area, dowels, 'print')).toBe(print)
  })

  test('without a dowel it is the cell', () => {
    expect(placeWords([220, 510], area, [])).toBe('floor B5')
  })
})

describe('an outline while it is drawn', () => {
  const boundary = rectangle(0, 0, 600, 600)
  const face = { boundary, dowels }

  test('its length, area and clearances', () => {
    const measures = outlineMeasures(rectangle(100, 100, 200, 100), true, face)
    expect(measures.lengthMm).toBeCloseTo(600, 9)
    expect(measures.areaMm2).toBeCloseTo(20_000, 9)
    expect(measures.boundaryMm).toBeCloseTo(100, 9)
    // From the corner (100, 100) to (40, 40), less the radius.
    expect(measures.dowel).toMatchObject({ tag: 'D01', inside: false })
    expect(measures.dowel!.rimMm).toBeCloseTo(Math.hypot(60, 60) - 4, 9)
    expect(measures.leavesArea).toBe(false)
    expect(measures.crossings).toEqual([])
  })

  test('open, it has a length and no area', () => {
    const measures = outlineMeasures(
      [
        [100, 100],
        [300, 100],
        [300, 250],
      ],
      false,
      face,
    )
    expect(measures.lengthMm).toBeCloseTo(350, 9)
    expect(measures.areaMm2).toBeNull()
    expect(measures.boundaryMm).toBeCloseTo(100, 9)
  })

  test('nothing and one point are no faults', () => {
    expect(outlineMeasures([], false, face)).toMatchObject({
      lengthMm: 0,
      areaMm2: null,
      dowel: null,
      boundaryMm: null,
    })
    expect(outlineMeasures([[300, 300]], false, face)).toMatchObject({ lengthMm: 0, boundaryMm: 300 })
  })

  test('a dowel that it holds is held, with the distance from its rim', () => {
    expect(outlineMeasures(rectangle(100, 480, 160, 100), true, face).dowel).toMatchObject({
      tag: 'D03',
      inside: true,
      rimMm: 36,
    })
  })

  test('it leaves its area by a corner, and by an edge over a bay of the boundary', () => {
    expect(outlineMeasures(rectangle(500, 100, 200, 100), true, face).leavesArea).toBe(true)
    const bay: readonly Point[] = [
      [0, 0],
      [600, 0],
      [600, 600],
      [310, 600],
      [300, 200],
      [290, 600],
      [0, 600],
    ]
    expect(outlineMeasures(rectangle(100, 300, 400, 100), true, { boundary: bay, dowels }).leavesArea).toBe(
      true,
    )
    expect(outlineMeasures(rectangle(100, 50, 400, 100), true, { boundary: bay, dowels }).leavesArea).toBe(
      false,
    )
  })

  test('a crossing is told while it is still open', () => {
    const hourglass: readonly Point[] = [
      [100, 100],
      [200, 200],
      [200, 100],
      [100, 200],
    ]
    expect(outlineMeasures(hourglass, false, face).crossings).toEqual([[150, 150]])
    expect(outlineMeasures(hourglass.slice(0, 3), false, face).crossings).toEqual([])
  })

  test('a star never crosses itself, drawn open or closed', () => {
    fc.assert(
      fc.property(starOutline, (outline) => {
        expect(outlineMeasures(outline, true, face).crossings).toEqual(crossings(outline))
        expect(outlineMeasures(outline, false, face).crossings).toEqual([])
      }),
      { numRuns: 50 },
    )
  })
})
