import { describe, expect, test } from 'vitest'
import { curedPly } from '#lib/core/laminate/index'
import { boxLoop, bulkTwill, planned, plyOf, quietPatch } from './sample-patch'

/** An oblong opening, grown by 20 mm on each side: one ply of 140 by 80. */
function oblong(directionDeg: number, changes: Parameters<typeof quietPatch>[0] = {}) {
  return quietPatch({
    opening: { outer: boxLoop(-50, -20, 50, 20), holes: [] },
    stack: [{ ...plyOf(1, directionDeg) }],
    removedPlies: [1],
    measuredThicknessMm: [1],
    ...changes,
  })
}

describe('take-off', () => {
  test('the box of a ply lies along its own fibres, with the allowance all round', () => {
    const piece = (directionDeg: number) =>
      planned(oblong(directionDeg)).value.takeOff[0]!.strips[0]!.pieces[0]!
    expect(piece(0).alongMm).toBeCloseTo(160, 1)
    expect(piece(0).acrossMm).toBeCloseTo(100, 1)
    expect(piece(90).alongMm).toBeCloseTo(100, 1)
    expect(piece(90).acrossMm).toBeCloseTo(160, 1)
    expect(piece(45).alongMm).toBeCloseTo(140 / Math.SQRT2 + 40 + 20, 1)
    expect(piece(45).alongMm).toBeCloseTo(piece(-45).acrossMm, 1)
  })

  test('an opening that lies along the fibres is long along the roll, and not along fibres the other way', () => {
    const turn = Math.PI / 6
    const outer = boxLoop(-50, -20, 50, 20).map(
      ([u, v]) => [u * Math.cos(turn) - v * Math.sin(turn), u * Math.sin(turn) + v * Math.cos(turn)] as const,
    )
    const alongMm = (directionDeg: number) =>
      planned(oblong(directionDeg, { opening: { outer, holes: [] } })).value.takeOff[0]!.strips[0]!.lengthMm
    expect(alongMm(30)).toBeCloseTo(160, 1)
    expect(alongMm(-30)).toBeLessThan(155)
  })

  test('plies lie side by side while the roll is wide enough', () => {
    const material = { ...bulkTwill, rollWidthMm: 200 }
    const stack = Array.from({ length: 3 }, () => ({ material, directionDeg: 0 }))
    const { takeOff } = planned(
      oblong(0, {
        stack,
        removedPlies: [1, 2, 3],
        measuredThicknessMm: [],
        taper: { ratio: 1, mmPerPly: 5, use: 'mm-per-ply' },
      }),
    ).value
    const [one] = takeOff
    expect(takeOff).toHaveLength(1)
    expect(one!.strips.map((strip) => strip.pieces.map((piece) => piece.layingOrder))).toEqual([[3, 2], [1]])
    const [first] = one!.strips
    expect(first!.pieces[1]!.offsetAcrossMm).toBeCloseTo(first!.pieces[0]!.acrossMm, 9)
    expect(first!.lengthMm).toBe(Math.max(...first!.pieces.map((piece) => piece.alongMm)))
  })

  test('nothing sticks out of the roll or lies on another piece, and every ply is there', () => {
    const { value } = planned(quietPatch({ coverPlies: [plyOf(0.5, 30)] }))
    const laid = value.takeOff.flatMap((each) =>
      each.strips.flatMap((strip) => {
        let free = 0
        for (const piece of strip.pieces) {
          expect(piece.offsetAcrossMm).toBeGreaterThanOrEqual(free - 1e-9)
          free = piece.offsetAcrossMm + piece.acrossMm
        }
        expect(free).toBeLessThanOrEqual(each.material.rollWidthMm + 1e-9)
        expect(strip.usedWidthMm).toBeCloseTo(free, 9)
        return strip.pieces.map((piece) => piece.layingOrder)
      }),
    )
    expect(laid.sort((a, b) => a - b)).toEqual(value.plies.map((ply) => ply.layingOrder))
  })

  test('mass is that of the area off the roll with its resin; offcut is the rest', () => {
    for (const each of planned(quietPatch()).value.takeOff) {
      expect(each.massKg).toBeCloseTo((each.grossAreaM2 * curedPly(each.material).prepregGsm) / 1000, 12)
      expect(each.offcutShare).toBeCloseTo(1 - each.netAreaM2 / each.grossAreaM2, 12)
      expect(each.grossAreaM2).toBeCloseTo((each.rollLengthM * each.material.rollWidthMm) / 1000, 12)
      expect(each.offcutShare).toBeGreaterThan(0)
    }
  })

  test('a ply twice as wide as the roll is cut in three, since each piece has its allowance', () => {
    const material = { ...bulkTwill, rollWidthMm: 100 }
    const wide = oblong(90, {
      stack: [{ material, directionDeg: 90 }],
      measuredThicknessMm: [],
      taper: { ratio: 1, mmPerPly: 20, use: 'mm-per-ply' },
    })
    const { strips } = planned(wide).value.takeOff[0]!
    expect(strips).toHaveLength(2)
    expect(strips[0]!.pieces[0]!.acrossMm).toBeCloseTo(90, 1)
  })

  test('equal materials that came as separate objects are one take-off', () => {
    const stack = quietPatch().stack.map((ply) => ({ ...ply, material: { ...ply.material } }))
    expect(planned(quietPatch({ stack })).value.takeOff).toHaveLength(2)
  })
})
