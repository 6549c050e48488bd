import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type handStates,
  holdingStates,
  type MouldCounts,
  mouldStanding,
  mouldStates,
} from '#lib/core/log/index'
import { quietCounts } from './sample-counts'

const flag = (state: (typeof handStates)[number]) => ({
  state,
  reason: `because ${state}`,
  doneOn: '2026-05-01',
  untilOn: null,
})

/** Counts that make each state hold by itself. */
const causes: readonly (readonly [string, Partial<MouldCounts>])[] = [
  ['retired', { flags: [flag('retired')] }],
  ['away', { flags: [flag('away')] }],
  ['being built', { flags: [flag('being built')] }],
  ['part in it', { clearedOn: '2026-05-21' }],
  ['under repair', { planOnBench: { number: 7, place: 'floor B5' } }],
  ['under repair', { flags: [flag('under repair')] }],
  ['held', { openDamage: [{ what: 'a crack', areaName: 'floor', doneOn: '2026-05-20' }] }],
  ['held', { flags: [flag('held')] }],
  [
    'held',
    {
      heat: {
        cycles: [{ toC: 150, count: 1 }],
        hottestC: 150,
        hottestWithPart: { toC: 150, doneOn: '2026-05-20' },
        hottestFree: null,
      },
      heatLimits: { inUseC: 140, freeC: null, bondedC: null },
    },
  ],
  [
    'proof pull only',
    { unprovedPatches: [{ patchId: 'p', number: 7, place: 'floor B5', laidOn: '2026-05-01' }] },
  ],
  ['racked', { flags: [flag('racked')] }],
]

/** All of these at once. */
function together(some: readonly Partial<MouldCounts>[]): MouldCounts {
  return quietCounts({ ...Object.assign({}, ...some), flags: some.flatMap((each) => each.flags ?? []) })
}

describe('state of a mould', () => {
  test('nothing holds: fit for use', () => {
    expect(mouldStanding(quietCounts())).toEqual({ state: 'fit for use', reason: '', also: [] })
  })

  test.each(causes)('%s', (state, counts) => {
    expect(mouldStanding(quietCounts(counts))).toMatchObject({ state, also: [] })
  })

  test('the order is the one of the words of the trade', () => {
    expect(mouldStates).toEqual([
      'retired',
      'away',
      'being built',
      'part in it',
      'under repair',
      'held',
      'proof pull only',
      'racked',
      'fit for use',
    ])
  })

  test('of any states that hold, the first is told and the others beside it, each once', () => {
    fc.assert(
      fc.property(fc.subarray([...causes], { minLength: 1 }), (some) => {
        const { state, also } = mouldStanding(together(some.map(([, counts]) => counts)))
        const holding = mouldStates.filter((each) => some.some(([cause]) => cause === each))
        expect([state, ...also]).toEqual(holding)
      }),
    )
  })

  test('the reason is that of the state that is told', () => {
    expect(mouldStanding(quietCounts({ flags: [flag('racked'), flag('away')] })).reason).toBe('because away')
    expect(mouldStanding(quietCounts({ clearedOn: '2026-05-21', clearedForProof: true })).reason).toBe(
      'proof pull',
    )
    expect(
      mouldStanding(
        quietCounts({ openDamage: [{ what: 'a crack', areaName: 'floor', doneOn: '2026-05-20' }] }),
      ).reason,
    ).toBe('a crack (floor)')
  })

  test('a state that holds twice is given with both reasons', () => {
    const counts = together([causes[4]?.[1] ?? {}, causes[5]?.[1] ?? {}])
    expect(holdingStates(counts).map((each) => each.reason)).toEqual([
      'because under repair',
      'Patch 7, floor B5',
    ])
  })
})
