import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { daysAfter, daysBetween } from '#lib/core/dates'
import { defaultUpkeepRules, judgement, type MouldCounts, mouldStates } from '#lib/core/log/index'
import { quietCounts, release } from './sample-counts'

const today = '2026-06-01'
const at = (counts: MouldCounts, day: string) =>
  judgement(counts, defaultUpkeepRules, day, `${day}T12:00:00Z`)
const dayAbout = fc.integer({ min: -300, max: 60 }).map((days) => daysAfter(today, days))
const limit = fc.option(fc.integer({ min: -30, max: 60 }).map((days) => daysAfter(today, days)))

const repair: fc.Arbitrary<MouldCounts['repairs'][number]> = fc.record({
  entryId: fc.uuid(),
  areaId: fc.constant(null),
  areaName: fc.constant(null),
  doneOn: fc.constant('2026-05-20'),
  method: fc.constant('fill' as const),
  what: fc.constant('a chip'),
  interim: fc.boolean(),
  untilPulls: fc.option(fc.integer({ min: 1, max: 10 })),
  untilOn: limit,
  maxC: fc.constant(null),
  pullsSince: fc.integer({ min: 0, max: 10 }),
  usualSince: fc.integer({ min: 0, max: 3 }),
  sealedSince: fc.boolean(),
  coatsSince: fc.integer({ min: 0, max: 5 }),
  tapeSlipsSince: fc.boolean(),
  closed: fc.boolean(),
})

const someCounts = fc
  .record({
    leakOn: fc.option(dayAbout),
    flags: fc.array(
      fc.record({
        state: fc.constantFrom('away' as const, 'held' as const, 'racked' as const),
        reason: fc.constant('lent'),
        doneOn: fc.constant('2026-05-01'),
        untilOn: limit,
      }),
      { maxLength: 2 },
    ),
    repairs: fc.array(repair, { maxLength: 2 }),
    matters: fc.array(limit, { maxLength: 3 }),
  })
  .map(({ leakOn, flags, repairs, matters }) => {
    const quiet = quietCounts()
    return quietCounts({
      lastLeak: leakOn === null || quiet.lastLeak === null ? null : { ...quiet.lastLeak, doneOn: leakOn },
      flags,
      repairs,
      openMatters: [
        ...matters.map((untilOn, index) => ({ ...matter, entryId: `matter-${index}`, untilOn })),
        // An interim repair stands in the list of open matters as well, until it is closed.
        ...repairs
          .filter((each) => each.interim && !each.closed)
          .map(({ entryId, untilOn }) => ({ ...matter, kind: 'repair' as const, entryId, untilOn })),
      ],
    })
  })

const matter: MouldCounts['openMatters'][number] = {
  entryId: '',
  kind: 'matter',
  what: 'see to it',
  who: 'Sam',
  untilOn: null,
  doneOn: '2026-05-02',
  byName: 'Ada Lead',
  areaName: null,
  carried: false,
}

describe('judgement', () => {
  test('a quiet mould is fit for use, and changes when its leak check grows old', () => {
    const counts = quietCounts()
    expect(at(counts, today)).toMatchObject({
      state: 'fit for use',
      stateRank: mouldStates.length - 1,
      stops: 0,
      // 180 days after 1 May 2026, and one more.
      changesOn: '2026-10-29',
      dryingUntil: null,
    })
  })

  test('a coat that dries is told with the moment when it is dry', () => {
    const coated = quietCounts({ release: [release({ coatAt: '2026-06-01T11:50:00Z' })] })
    expect(at(coated, today)).toMatchObject({ stops: 1, dryingUntil: '2026-06-01T12:20:00.000Z' })
    expect(at(quietCounts({ release: [release({ coatAt: '2026-06-01T11:00:00Z' })] }), today)).toMatchObject({
      stops: 0,
      dryingUntil: null,
    })
  })

  test('until the day that it names, the passing of days changes nothing', () => {
    fc.assert(
      fc.property(someCounts, (counts) => {
        const { changesOn, ...now } = at(counts, today)
        const days = changesOn === null ? 100 : daysBetween(today, changesOn)
        expect(days).toBeGreaterThan(0)
        for (let passed = 1; passed < days; passed += 1) {
          const { changesOn: _later, ...then } = at(counts, daysAfter(today, passed))
          if (JSON.stringify(then) !== JSON.stringify(now)) expect({ passed, ...then }).toEqual(now)
        }
      }),
      { numRuns: 80 },
    )
  })
})
