import { describe, expect, test } from 'vitest'
import { beforeLayUp, defaultUpkeepRules, type Matter, type MouldCounts } from '#lib/core/log/index'
import { quietCounts, release } from './sample-counts'

const now = '2026-06-01T10:00:00Z'

function matters(counts: Partial<MouldCounts>, rules = defaultUpkeepRules): readonly Matter[] {
  return beforeLayUp(quietCounts(counts), rules, '2026-06-01', now)
}

const of = (found: readonly Matter[], code: string) => found.find((matter) => matter.code === code)
const codes = (found: readonly Matter[]) => found.map((matter) => matter.code)

test('a mould in good order has nothing to settle', () => {
  expect(matters({})).toEqual([])
})

test('stops come first, then looks, then notes', () => {
  const found = matters({
    lastLeak: null,
    flags: [{ state: 'held', reason: 'a crack', doneOn: '2026-05-01', untilOn: null }],
    release: [release({ pullsSinceStrip: 60, pullsSinceCoat: 1 })],
  })
  expect(found.map((matter) => matter.severity)).toEqual(['stop', 'look', 'note'])
})

describe('state', () => {
  test.each(['retired', 'away', 'being built', 'held', 'under repair'] as const)(
    '%s stops, with its reason',
    (state) => {
      const found = matters({ flags: [{ state, reason: 'lent out', doneOn: '2026-05-01', untilOn: null }] })
      expect(found).toHaveLength(1)
      expect(found[0]).toMatchObject({ severity: 'stop', text: `The mould is ${state}: lent out` })
    },
  )

  test('a part in it stops, and the pull settles it', () => {
    expect(matters({ clearedOn: '2026-05-30' })[0]).toMatchObject({
      code: 'part-in-it',
      severity: 'stop',
      settledBy: 'pull',
      text: 'Cleared on 30 May and no pull since',
    })
  })

  test('racked is no matter: clearing takes it off the rack', () => {
    expect(
      matters({ flags: [{ state: 'racked', reason: 'summer', doneOn: '2026-05-01', untilOn: null }] }),
    ).toEqual([])
  })

  test('every stop that holds is told, so that an override has seen them all', () => {
    const found = matters({
      clearedOn: '2026-05-30',
      flags: [{ state: 'away', reason: 'at the shop', doneOn: '2026-05-01', untilOn: null }],
      openDamage: [
        { what: 'a crack', areaName: 'floor', doneOn: '2026-05-20' },
        { what: 'a chip', areaName: null, doneOn: '2026-05-21' },
      ],
      unprovedPatches: [{ patchId: 'p', number: 7, place: 'floor B5', laidOn: '2026-05-01' }],
    })
    expect(found.map((matter) => matter.text)).toEqual([
      'The mould is away: at the shop',
      'Cleared on 30 May and no pull since',
      'The mould is held: a crack (floor)',
      'The mould is held: a chip',
      'Patch 7, floor B5: not yet proved',
    ])
  })
})

describe('release', () => {
  test('sealing can be switched off by the shop', () => {
    const bare = [release({ sealOn: null, sealedSinceStrip: false })]
    expect(codes(matters({ release: bare }))).toEqual(['not-sealed'])
    expect(matters({ release: bare }, { ...defaultUpkeepRules, sealNeeded: false })).toEqual([])
  })

  test('coats lacking after a strip are counted', () => {
    expect(of(matters({ release: [release({ coatsSinceStrip: 1 })] }), 'too-few-coats')?.word).toBe(
      '3 more coats',
    )
    expect(of(matters({ release: [release({ coatsSinceStrip: 3 })] }), 'too-few-coats')?.word).toBe(
      '1 more coat',
    )
  })

  test('never stripped: an old release is not judged by coats after a strip', () => {
    const old = release({
      stripOn: null,
      sealOn: null,
      sealedSinceStrip: false,
      coatsSinceStrip: 1,
      pullsSinceStrip: 0,
    })
    expect(matters({ release: [old] })).toEqual([])
  })

  test.each([
    ['2026-06-01T09:59:00Z', '29 min'],
    ['2026-06-01T09:30:30Z', '1 min'],
    ['2026-06-01T09:30:00Z', null],
    // The clock of a phone runs five minutes ahead.
    ['2026-06-01T10:05:00Z', '30 min'],
  ])('a coat of %s is dry in %s', (coatAt, word) => {
    expect(of(matters({ release: [release({ coatAt })] }), 'coat-drying')?.word ?? null).toBe(word)
  })

  test('an area that was treated like the face has nothing of its own to say', () => {
    const face = release({ pullsSinceCoat: 7 })
    const area = release({ target: 'area', areaId: 'a', name: 'floor', pullsSinceCoat: 7 })
    expect(matters({ release: [face, area] }).map((matter) => matter.place)).toEqual(['whole face'])
    const apart = release({
      target: 'area',
      areaId: 'a',
      name: 'floor',
      coatOn: '2026-05-09',
      pullsSinceCoat: 6,
    })
    expect(matters({ release: [face, apart] }).map((matter) => [matter.place, matter.areaId])).toEqual([
      ['whole face', null],
      ['floor', 'a'],
    ])
  })
})

describe('leak checks', () => {
  const leak = (startMbar: number, endMbar: number, minutes: number, doneOn = '2026-05-01') => ({
    lastLeak: {
      doneOn,
      bagging: 'mould alone',
      heat: 'cold' as const,
      temperatureC: null,
      pins: 'out' as const,
      startMbar,
      endMbar,
      minutes,
    },
  })

  test.each([
    // The default rule: 10 mbar in 10 min; another time is judged in proportion.
    [20, 30, 10, []],
    [20, 30.1, 10, ['leak-over-limit']],
    [20, 25, 5, []],
    [20, 26, 5, ['leak-over-limit']],
    [20, 40, 20, []],
    [6.1, 16.1, 10, []],
  ])('from %d to %d mbar in %d min', (start, end, minutes, expected) => {
    expect(codes(matters(leak(start, end, minutes)))).toEqual(expected)
  })

  test('older than the last repair: a look', () => {
    expect(matters({ ...leak(20, 22, 10), leakSinceRepair: false })[0]).toMatchObject({
      code: 'leak-before-repair',
      severity: 'look',
    })
  })

  test('due again after the days of the rule, not before', () => {
    expect(codes(matters(leak(20, 22, 10, '2025-12-03')))).toEqual([])
    expect(codes(matters(leak(20, 22, 10, '2025-12-02')))).toEqual(['leak-old'])
  })

  test('none written down: missing, never taken as tight', () => {
    expect(matters({ lastLeak: null })[0]).toMatchObject({
      code: 'leak-unknown',
      word: 'missing',
      severity: 'look',
    })
  })
})
