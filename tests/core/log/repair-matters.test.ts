import { describe, expect, test } from 'vitest'
import { beforeLayUp, defaultUpkeepRules, type RepairCount } from '#lib/core/log/index'
import { open, quietCounts, repair } from './sample-counts'

const told = (changes: Partial<RepairCount>, rules = defaultUpkeepRules, openUntil?: string) =>
  beforeLayUp(
    quietCounts({
      repairs: [repair(changes)],
      openMatters: openUntil ? [open({ entryId: 'r', kind: 'repair', untilOn: openUntil })] : [],
    }),
    rules,
    '2026-06-01',
    '2026-06-01T10:00:00Z',
  ).map((matter) => [matter.code, matter.severity, matter.word])

describe('repaired ground is bare like a fresh patch', () => {
  test('sealed, coated and tape tested since: nothing to settle', () => expect(told({})).toEqual([]))

  test('never touched since', () => {
    expect(told({ sealedSince: false, coatsSince: 0, tapeSlipsSince: false })).toEqual([
      ['repair-not-sealed', 'stop', 'bare'],
      ['repair-too-few-coats', 'stop', '4 more coats'],
    ])
  })

  test('coated and not tape tested', () => {
    expect(told({ tapeSlipsSince: false })).toEqual([['repair-no-tape-test', 'look', 'tape test']])
  })

  test('a shop that does not seal', () => {
    expect(told({ sealedSince: false }, { ...defaultUpkeepRules, sealNeeded: false })).toEqual([])
  })

  test('the first usual pulls show that it releases, also where nobody wrote its coats down', () => {
    const bare = { sealedSince: false, coatsSince: 0, tapeSlipsSince: false }
    expect(told({ ...bare, usualSince: defaultUpkeepRules.firstPulls - 1 })).toHaveLength(2)
    expect(told({ ...bare, usualSince: defaultUpkeepRules.firstPulls })).toEqual([])
  })
})

describe('a repair for the time being', () => {
  test.each([
    [3, []],
    [4, [['repair-limit-near', 'look', '1 pull left']]],
    [5, [['repair-limit-reached', 'stop', 'limit reached']]],
    [6, [['repair-limit-reached', 'stop', 'limit reached']]],
  ])('of 5 pulls, after %i', (pullsSince, found) => {
    expect(told({ interim: true, untilPulls: 5, pullsSince })).toEqual(found)
  })

  test.each([
    ['2026-06-09', []],
    ['2026-06-08', [['repair-limit-near', 'look', '7 days left']]],
    ['2026-06-02', [['repair-limit-near', 'look', '1 day left']]],
    ['2026-06-01', [['repair-limit-near', 'look', 'today']]],
    ['2026-05-31', [['repair-limit-reached', 'stop', 'limit passed']]],
  ])('until %s, on 1 June', (untilOn, found) => {
    expect(told({ interim: true, untilOn })).toEqual(found)
  })

  test('carried on: the new day counts', () => {
    expect(told({ interim: true, untilOn: '2026-05-20' }, defaultUpkeepRules, '2026-07-01')).toEqual([])
  })

  test('closed: its limits no longer hold', () => {
    expect(
      told({ interim: true, untilOn: '2026-05-20', untilPulls: 1, pullsSince: 4, closed: true }),
    ).toEqual([])
  })

  test('for good: no limits', () => expect(told({ untilPulls: 1, pullsSince: 4 })).toEqual([]))
})

test('the heat that a repair stands is told as a note', () => {
  expect(told({ maxC: 60 })).toEqual([['repair-heat-limit', 'note', '60 °C']])
})
