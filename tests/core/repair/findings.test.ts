import { describe, expect, test } from 'vitest'
import type { KeepOut, PatchArea, PatchInput, Side } from '#lib/core/repair/index'
import {
  bareArea,
  boxLoop,
  bulkTwill,
  codes,
  cycle,
  dowel,
  found,
  planned,
  plyOf,
  quietPatch,
  roundLoop,
  surfaceTwill,
} from './sample-patch'

/** Six plies of 0.5 mm at 20:1 grow a round opening of 40 mm radius by 60 mm: the footprint has a radius of 100. */
const even = quietPatch({
  stack: Array.from({ length: 6 }, () => plyOf(0.5)),
  measuredThicknessMm: [3, 3, 3],
})
const footprintMm = 100

function on(area: Partial<PatchArea>, changes: Partial<PatchInput> = {}): PatchInput {
  return { ...even, ...changes, area: { ...bareArea, ...area } }
}

test('a plan far from everything has nothing to say but the two rules and an assumed density', () => {
  expect(codes(even)).toEqual(['resin-density-assumed', 'taper-rules-disagree'])
  expect(codes(quietPatch())).toEqual(['taper-rules-disagree'])
})

describe('the edge of the area', () => {
  const edgeAt = (u: number) => ({ boundary: boxLoop(-1000, -1000, u, 1000) })

  test('an opening that leaves it is a stop, with how far and how much', () => {
    const finding = found(on(edgeAt(30)), 'opening-leaves-area')!
    expect(finding.severity).toBe('stop')
    expect(finding.figures!.overrunMm).toBeCloseTo(10, 2)
    expect(finding.figures!.areaOutsideMm2).toBeCloseTo(1600 * Math.acos(0.75) - 30 * Math.sqrt(700), 0)
    expect(finding.place).toMatch(/^floor /)
    expect(codes(on(edgeAt(41)))).not.toContain('opening-leaves-area')
  })

  test('a footprint that leaves it is a look with a choice, from either back side', () => {
    for (const side of ['pattern-back', 'place-back'] as const) {
      const finding = found(on(edgeAt(85), { side }), 'footprint-leaves-area')!
      expect(finding.severity).toBe('look')
      expect(finding.cure).toMatch(/^Choose: /)
      expect(finding.figures).toMatchObject({ firstPlyOutside: 5 })
      expect(codes(on(edgeAt(footprintMm), { side }))).not.toContain('footprint-leaves-area')
    }
  })

  test('from the face it is the face plies that leave it', () => {
    const input = on(edgeAt(85), { side: 'place-face' })
    expect(codes(input)).toContain('face-plies-leave-area')
    expect(codes(input)).not.toContain('footprint-leaves-area')
  })

  test('a smaller step is a cure only when it keeps the ratio asked for', () => {
    const low = found(on(edgeAt(85)), 'footprint-leaves-area')!
    expect(low.cure).toMatch(
      /7\.5 mm a ply fits on that side; that is 15:1, below the 20:1 asked for, so it is no cure/,
    )
    const generous = { taper: { ratio: 10, mmPerPly: 12, use: 'mm-per-ply' as const } }
    const high = found(on(edgeAt(85), generous), 'footprint-leaves-area')!
    expect(high.cure).toMatch(/7\.5 mm a ply fits on that side; that is 15:1, not below the 10:1 asked for/)
    expect(high.cure).toMatch(/nothing that keeps 10:1 also keeps the margin of 25 mm/)
  })

  test('the offered step, planned again, stays inside', () => {
    const taper = { ratio: 10, mmPerPly: 12, use: 'mm-per-ply' as const }
    const step = found(on(edgeAt(85), { taper }), 'footprint-leaves-area')!.figures!
      .largestStepThatFitsMm as number
    const again = codes(on(edgeAt(85), { taper: { ...taper, mmPerPly: step } }))
    expect(again).not.toContain('footprint-leaves-area')
    expect(again).not.toContain('taper-below-ratio')
  })

  test('no room at all is said', () => {
    const finding = found(on(edgeAt(40)), 'footprint-leaves-area')!
    expect(finding.cure).toMatch(/No taper fits on that side/)
    expect(finding.figures).not.toHaveProperty('largestStepThatFitsMm')
  })

  test('where cover plies take the room that the taper needs, that is said', () => {
    const taper = { ratio: 20, mmPerPly: 12, use: 'mm-per-ply' as const }
    const finding = found(on(edgeAt(102), { taper, coverPlies: [plyOf(0.5)] }), 'footprint-leaves-area')!
    expect(finding.cure).toMatch(
      /^Choose: without cover plies on that side 10\.3 mm a ply fits: 20\.7:1\. Or .*6\.2 mm a ply fits.*12\.3:1, below the 20:1/,
    )
  })

  test('the words name the area and who runs off, and no choice that is none comes first', () => {
    const finding = found(on(edgeAt(85)), 'footprint-leaves-area')!
    expect(finding.text).toBe(
      'The footprint on the back leaves the area "floor": plies fit up to 40 mm beyond the opening; ' +
        'no. 5 runs off by 5 mm, no. 6 by 15 mm.',
    )
    expect(finding.cure).toMatch(/^Choose: only 4 of 6 plies on that side/)
  })

  test('only the cover ply runs off: it can be left out', () => {
    const input = on(edgeAt(110), { coverPlies: [plyOf(0.5)] })
    expect(found(input, 'footprint-leaves-area')).toMatchObject({
      cure: expect.stringContaining('leave out the cover ply'),
      figures: { firstPlyOutside: 7 },
    })
    expect(codes(on(edgeAt(126), { coverPlies: [plyOf(0.5)] }))).not.toContain('footprint-leaves-area')
  })

  test('nearer than the margin is a look, the face and the footprint apart', () => {
    expect(found(on(edgeAt(124)), 'footprint-near-edge')).toMatchObject({ severity: 'look' })
    expect(codes(on(edgeAt(125.1)))).not.toContain('footprint-near-edge')
    expect(codes(on(edgeAt(124)))).not.toContain('face-near-edge')
    expect(codes(on(edgeAt(64)))).toContain('face-near-edge')
    expect(codes(on(edgeAt(66)))).not.toContain('face-near-edge')
    expect(codes(on(edgeAt(124), { side: 'place-face' }))).toContain('face-near-edge')
  })
})

describe('keep-outs on the back', () => {
  const keepOut = (u: number, kind: KeepOut['kind'] = 'flange') => ({
    keepOuts: [{ name: 'aft', kind, outline: boxLoop(u, -50, u + 60, 50) }],
  })

  test.each([
    ['flange', 'footprint-on-flange'],
    ['seal-land', 'footprint-on-seal-land'],
    ['backing', 'footprint-on-backing'],
    ['other', 'footprint-on-keep-out'],
  ] as const)('a footprint on a %s is a look with a choice', (kind, code) => {
    const finding = found(on(keepOut(90, kind)), code)!
    expect(finding).toMatchObject({ severity: 'look', cure: expect.stringMatching(/^Choose: /) })
    expect(finding.figures!.overrunMm).toBeCloseTo(10, 2)
    expect(finding.place).toMatch(/, aft$/)
    expect(codes(on(keepOut(footprintMm + 0.1, kind)))).not.toContain(code)
  })

  test('count for what lies on the back, not for a patch from the face without cover plies', () => {
    const fromFace = { side: 'place-face' as const, removedPlies: [1, 2, 3] }
    expect(codes(on(keepOut(60), fromFace))).not.toContain('footprint-on-flange')
    expect(codes(on(keepOut(60), { ...fromFace, coverPlies: [plyOf(0.5)] }))).toContain('footprint-on-flange')
    expect(codes(on(keepOut(60), { side: 'place-face' }))).not.toContain('footprint-on-flange')
    expect(codes(on(keepOut(30), { side: 'place-face' }))).toContain('footprint-on-flange')
  })

  test('one that lies wholly in the footprint is seen too', () => {
    expect(
      codes(on({ keepOuts: [{ name: 'rib', kind: 'backing', outline: boxLoop(-5, -5, 5, 5) }] })),
    ).toContain('footprint-on-backing')
  })
})

describe('lines on the face', () => {
  const line = (u: number, kind: 'trim' | 'scribe' = 'trim', closed = false) => ({
    lines: [
      {
        name: 'aft',
        kind,
        closed,
        points: [
          [u, -300],
          [u, 300],
        ] as const,
      },
    ],
  })

  test.each(['trim', 'scribe'] as const)('a %s line through the opening or too near it is a look', (kind) => {
    expect(found(on(line(20, kind)), `${kind}-line-in-face`)).toMatchObject({ severity: 'look' })
    expect(codes(on(line(41, kind)))).toContain(`${kind}-line-near-face`)
    expect(codes(on(line(66, kind)))).not.toContain(`${kind}-line-near-face`)
  })

  test('a closed line inside the opening is in it, one round it is not', () => {
    const closed = (radius: number) => ({
      lines: [{ name: 'ring', kind: 'scribe' as const, closed: true, points: roundLoop([0, 0], radius) }],
    })
    expect(codes(on(closed(10)))).toContain('scribe-line-in-face')
    expect(codes(on(closed(66)))).toEqual(codes(even))
  })

  test('are for the face: the footprint may run behind them, and nothing counts when the face stays whole', () => {
    expect(codes(on(line(80)))).toEqual(codes(even))
    expect(codes(on(line(80), { side: 'place-face' }))).toContain('trim-line-in-face')
    const whole = on(line(20), { side: 'place-back', removedPlies: [2, 3, 4, 5, 6] })
    expect(codes(whole)).not.toContain('trim-line-in-face')
  })
})

describe('dowels and datums', () => {
  const at = (u: number, changes: Parameters<typeof dowel>[2] = {}) => ({
    dowels: [dowel('D3', [u, 0], changes)],
  })

  test('one in the opening is set anew; a datum there takes the frame with it', () => {
    expect(found(on(at(43)), 'dowel-in-opening')).toMatchObject({
      severity: 'look',
      place: expect.stringMatching(/, D3$/),
    })
    expect(found(on(at(10, { isDatum: true })), 'datum-in-opening')?.cure).toMatch(/Measure the frame/)
    expect(codes(on(at(45, { bushDiameterMm: null, through: false })))).not.toContain('dowel-in-opening')
  })

  test('one whose bush alone reaches into the opening goes too, and is told once', () => {
    const input = on(at(45))
    expect(found(input, 'dowel-in-opening')?.text).toBe(
      'The bush of dowel D3 reaches into the opening and goes with it.',
    )
    expect(codes(input)).not.toContain('dowel-near-face')
    expect(codes(on(at(51)))).not.toContain('dowel-in-opening')
  })

  test('a through-bush in a recess that leaves the face whole is told as well', () => {
    const back = { side: 'place-back' as const, removedPlies: [4, 5, 6] }
    expect(codes(on(at(0), back))).toContain('dowel-in-opening')
    expect(codes(on(at(0, { bushDiameterMm: null, through: false }), back))).not.toContain('dowel-in-opening')
  })

  test('near the opening counts from the rim', () => {
    const blind = { bushDiameterMm: null, through: false }
    expect(codes(on(at(68, blind)))).toContain('dowel-near-face')
    expect(codes(on(at(69.1, blind)))).not.toContain('dowel-near-face')
    expect(codes(on(at(68, { ...blind, isDatum: true })))).toContain('datum-near-face')
  })

  test('from the face the largest ply counts', () => {
    expect(codes(on(at(80), { side: 'place-face' }))).toContain('dowel-in-face-plies')
    expect(codes(on(at(80, { isDatum: true }), { side: 'place-face' }))).toContain('datum-in-face-plies')
    expect(codes(on(at(80)))).not.toContain('dowel-in-face-plies')
  })

  test('the bush on the back counts for the footprint, by its own rim', () => {
    expect(codes(on(at(105)))).toContain('footprint-on-bush')
    expect(codes(on(at(134)))).toContain('footprint-near-bush')
    expect(codes(on(at(135.1)))).not.toContain('footprint-near-bush')
    const bare = { bushDiameterMm: null, through: true }
    expect(codes(on(at(105, bare)))).toContain('footprint-near-bush')
    expect(codes(on(at(103, bare)))).toContain('footprint-on-bush')
    expect(codes(on(at(103, { bushDiameterMm: null, through: false })))).not.toContain('footprint-on-bush')
  })

  test('a through-bush counts on both faces', () => {
    const both = codes(on(at(60)))
    expect(both).toContain('dowel-near-face')
    expect(both).toContain('footprint-on-bush')
  })

  test('a bush in the opening is set anew and is no matter for the footprint', () => {
    expect(codes(on(at(0)))).not.toContain('footprint-on-bush')
  })

  test('from the face without cover plies nothing lies under a bush', () => {
    expect(codes(on(at(80), { side: 'place-face', removedPlies: [1, 2] }))).not.toContain('footprint-on-bush')
  })
})

describe('old patches', () => {
  const old = (faceAt: number, footprintAt: number) => ({
    oldPatches: [
      { name: 'patch 2', face: roundLoop([faceAt, 0], 10), footprint: roundLoop([footprintAt, 0], 10) },
    ],
  })

  test('the face against its face, the footprint against its footprint, with the spacing', () => {
    expect(codes(on(old(45, 500)))).toContain('face-on-old-patch')
    expect(codes(on(old(99, 500)))).toContain('face-near-old-patch')
    expect(codes(on(old(101, 500)))).toEqual(codes(even))
    expect(codes(on(old(500, 105)))).toContain('footprint-on-old-patch')
    expect(codes(on(old(500, 159)))).toContain('footprint-near-old-patch')
    expect(codes(on(old(500, 161)))).toEqual(codes(even))
  })

  test('one that is larger than the opening and lies round it is seen', () => {
    const round = {
      oldPatches: [{ name: 'patch 1', face: roundLoop([0, 0], 200), footprint: roundLoop([0, 0], 300) }],
    }
    expect(codes(on(round))).toContain('face-on-old-patch')
    expect(codes(on(round))).toContain('footprint-on-old-patch')
  })
})

describe('thickness', () => {
  test('not measured is a look, measured once a note', () => {
    expect(found({ ...even, measuredThicknessMm: [] }, 'thickness-not-measured')?.severity).toBe('look')
    expect(found({ ...even, measuredThicknessMm: [3] }, 'thickness-measured-once')?.severity).toBe('note')
    expect(codes(even)).not.toContain('thickness-not-measured')
  })

  test('nominal against measured beyond the tolerance is a look', () => {
    expect(found({ ...even, measuredThicknessMm: [3.4, 3.4] }, 'thickness-off')?.figures).toMatchObject({
      nominalMm: 3,
    })
    expect(codes({ ...even, measuredThicknessMm: [3.3, 3.3] })).not.toContain('thickness-off')
    expect(codes({ ...even, measuredThicknessMm: [2.7, 2.7] })).toContain('thickness-off')
    expect(codes({ ...even, measuredThicknessMm: [2.75, 2.75] })).not.toContain('thickness-off')
  })

  test('uneven places are a look', () => {
    expect(codes({ ...even, measuredThicknessMm: [2.8, 3.2] })).toContain('thickness-uneven')
    expect(codes({ ...even, measuredThicknessMm: [2.86, 3.14] })).not.toContain('thickness-uneven')
  })

  test('a stack that is not mirrored is a note', () => {
    const stack = [0, 45, 0, 0, 0, 0].map((direction) => plyOf(0.5, direction))
    expect(found({ ...even, stack }, 'stack-not-mirrored')).toMatchObject({
      severity: 'note',
      place: expect.stringMatching(/^floor .*ply 2 and ply 5$/),
    })
  })
})

describe('heat', () => {
  const heat = { inUseC: 135, freeStandingC: 190, bondedC: 120 }
  const at = (cureC: number, postCureC: number | null, limits: Partial<PatchInput['heat']> = {}) => ({
    ...even,
    heat: { inUseC: 300, freeStandingC: 300, bondedC: 300, ...limits },
    cure: cycle('cure', cureC, 100),
    postCure: postCureC === null ? null : cycle('post-cure', postCureC, 200),
    nextPartCureC: 120,
  })

  test.each([
    ['inUseC', 'cure-over-in-use-limit', 'cure-near-in-use-limit'],
    ['freeStandingC', 'cure-over-free-standing-limit', 'cure-near-free-standing-limit'],
    ['bondedC', 'cure-over-bonded-limit', 'cure-near-bonded-limit'],
  ] as const)('a cure over the limit %s is a stop, nearer than the margin a look', (key, over, near) => {
    expect(found(at(121, null, { [key]: 120 }), over)?.severity).toBe('stop')
    expect(found(at(101, null, { [key]: 120 }), near)?.severity).toBe('look')
    expect(codes(at(100, null, { [key]: 120 }))).not.toContain(near)
    expect(codes(at(120, null, { [key]: 120 }))).not.toContain(over)
  })

  test.each([
    ['freeStandingC', 'post-cure-over-free-standing-limit', 'post-cure-near-free-standing-limit'],
    ['bondedC', 'post-cure-over-bonded-limit', 'post-cure-near-bonded-limit'],
  ] as const)('a post-cure over the limit %s is a stop', (key, over, near) => {
    expect(found(at(60, 181, { [key]: 180 }), over)?.severity).toBe('stop')
    expect(found(at(60, 170, { [key]: 180 }), near)?.severity).toBe('look')
    expect(codes(at(60, 160, { [key]: 180 }))).not.toContain(near)
  })

  test('a free-standing post-cure over the limit in use under pressure is told, a look where no other limit judges it', () => {
    const over = (limits: Partial<PatchInput['heat']>) =>
      found(at(60, 140, { inUseC: 135, ...limits }), 'post-cure-over-in-use-limit')
    expect(over({})).toMatchObject({
      severity: 'note',
      cure: expect.stringContaining('without bag or pressure'),
    })
    expect(over({ freeStandingC: null })).toMatchObject({ severity: 'look' })
  })

  test('an unknown limit is told by name, a cure that is not given too', () => {
    expect(found({ ...at(60, 100), heat: { ...heat, bondedC: null } }, 'heat-limit-unknown')?.text).toMatch(
      /bonded bushes/,
    )
    expect(codes({ ...at(60, 100), heat })).not.toContain('heat-limit-unknown')
    expect(found({ ...even, cure: null }, 'cure-not-said')?.severity).toBe('look')
    expect(codes({ ...even, cure: { name: 'empty', segments: [], tgAfterC: 100 } })).toContain(
      'cure-not-said',
    )
  })

  test("the patch's Tg against the next part: too low drops the mould's limit", () => {
    const tg = (tgAfterC: number | null) => ({ ...even, postCure: cycle('post-cure', 130, tgAfterC) })
    expect(found(tg(139), 'patch-tg-low')).toMatchObject({
      severity: 'look',
      figures: { limitDropsToC: 119 },
    })
    expect(codes(tg(140))).not.toContain('patch-tg-low')
    expect(codes(tg(null))).toContain('patch-tg-unknown')
    expect(found({ ...even, nextPartCureC: null }, 'next-part-cure-not-said')?.severity).toBe('note')
  })

  test("a patch that stands less than the mould did drops the mould's limit, though the next part is well", () => {
    const tg = (tgAfterC: number) => ({ ...even, postCure: cycle('post-cure', 130, tgAfterC) })
    expect(found(tg(159), 'patch-tg-below-limit')).toMatchObject({
      severity: 'look',
      figures: { inUseC: 140, limitDropsToC: 139 },
    })
    expect(codes(tg(160))).not.toContain('patch-tg-below-limit')
    expect(codes(tg(139))).not.toContain('patch-tg-below-limit')
    expect(codes({ ...tg(159), nextPartCureC: null })).toContain('patch-tg-below-limit')
  })

  test('without a post-cure the Tg after the cure counts', () => {
    const input = { ...even, postCure: null, cure: cycle('cure', 65, 70) }
    expect(codes(input)).toContain('patch-tg-low')
  })
})

describe('material', () => {
  test('a ply wider than the roll is cut in equal pieces, and told', () => {
    const narrow = { ...bulkTwill, rollWidthMm: 150 }
    const stack = quietPatch().stack.map((ply) =>
      ply.material === bulkTwill ? { ...ply, material: narrow } : ply,
    )
    const input = quietPatch({ stack })
    const finding = found(input, 'ply-wider-than-roll')!
    expect(finding).toMatchObject({ severity: 'look', figures: { pieces: [2, 2, 2] } })
    expect(codes(input).filter((code) => code === 'ply-wider-than-roll')).toHaveLength(1)
    const [first] = finding.figures!.layingOrders as number[]
    const strips = planned(input).value.takeOff.find((each) => each.material.rollWidthMm === 150)!.strips
    const pieces = strips.flatMap((strip) => strip.pieces).filter((piece) => piece.layingOrder === first)
    expect(pieces).toHaveLength(2)
    expect(pieces[0]!.acrossMm).toBe(pieces[1]!.acrossMm)
    expect(codes(quietPatch())).not.toContain('ply-wider-than-roll')
  })

  test('a stack thicker than what cures safely in one go', () => {
    const limited = (thickestCureMm: number | null) =>
      quietPatch({
        stack: quietPatch().stack.map((ply) => ({ ...ply, material: { ...ply.material, thickestCureMm } })),
      })
    expect(found(limited(3), 'stack-may-overheat')).toMatchObject({
      severity: 'look',
      cure: expect.stringContaining('in 2 goes'),
    })
    expect(codes(limited(3.3))).not.toContain('stack-may-overheat')
    expect(found(limited(null), 'thickest-cure-not-said')?.severity).toBe('note')
    expect(
      codes({
        ...limited(3.3),
        coverPlies: [{ material: { ...surfaceTwill, thickestCureMm: null }, directionDeg: 0 }],
      }),
    ).toContain('stack-may-overheat')
  })
})

describe('side and pattern', () => {
  const missing = (side: Side) => codes({ ...even, side, patternAvailable: false })

  test('no pattern: a splash first', () => {
    expect(missing('pattern-back')).toContain('pattern-missing')
    expect(missing('place-back')).toContain('caul-needs-splash')
    expect(missing('place-face')).not.toContain('pattern-missing')
    expect(codes(even)).not.toContain('pattern-missing')
  })

  test('from the face the join shows, and with all plies out the recess has no bottom', () => {
    expect(codes({ ...even, side: 'place-face' })).toEqual(
      expect.arrayContaining(['join-on-face', 'recess-without-bottom']),
    )
    expect(codes({ ...even, side: 'place-face', removedPlies: [1, 2] })).not.toContain(
      'recess-without-bottom',
    )
    expect(codes(even)).not.toContain('join-on-face')
  })
})

describe('corners of the opening', () => {
  const lShape = [
    [0, 0],
    [100, 0],
    [100, 40],
    [40, 40],
    [40, 100],
    [0, 100],
  ] as const

  test('an inside corner is opened to the least radius, and told with what it adds', () => {
    const input = { ...even, opening: { outer: lShape, holes: [] } }
    const finding = found(input, 'inside-corners-opened')!
    expect(finding.severity).toBe('note')
    expect(finding.figures!.addedMm2).toBeCloseTo((1 - Math.PI / 4) * 12.7 ** 2, 0)
    expect(planned(input).value.openingAreaMm2).toBeCloseTo(6400 + (1 - Math.PI / 4) * 12.7 ** 2, 0)
    expect(codes({ ...input, rules: { ...even.rules, insideRadiusMm: 0 } })).not.toContain(
      'inside-corners-opened',
    )
    expect(codes(even)).not.toContain('inside-corners-opened')
  })

  test('sharp corners that point outwards are left and told', () => {
    expect(
      found({ ...even, opening: { outer: boxLoop(-40, -30, 40, 30), holes: [] } }, 'opening-corner-sharp'),
    ).toMatchObject({
      severity: 'look',
      figures: { sharpCorners: 4 },
    })
    expect(codes(even)).not.toContain('opening-corner-sharp')
  })
})
