import { describe, expect, test } from 'vitest'
import { byUse, lotStanding } from '#lib/core/stores/index'
import { roll, tin, today } from './sample-stock'

const state = (lot: Parameters<typeof lotStanding>[0], day = today) => lotStanding(lot, day).state

test('a lot is fit on its last day and late the day after', () => {
  const lot = roll({ expiresOn: today })
  expect(lotStanding(lot, today)).toMatchObject({ state: 'use first', usable: true })
  expect(lotStanding(lot, today).reasons[0]?.text).toBe('good until today')
  expect(lotStanding(lot, '2026-11-26')).toMatchObject({ state: 'late', usable: false })
  expect(lotStanding(lot, '2026-11-26').reasons[0]?.text).toBe('past its date: it was good until 25 Nov')
})

test('it is told a fortnight before its last day, not earlier', () => {
  expect(state(roll({ expiresOn: '2026-12-10' }))).toBe('fit')
  expect(state(roll({ expiresOn: '2026-12-09' }))).toBe('use first')
})

describe('the last good day', () => {
  test('is the date on the lot, not the shelf life of the card', () => {
    expect(lotStanding(tin({ expiresOn: '2028-01-31', receivedOn: '2024-01-01' }), today).goodUntil).toEqual({
      on: '2028-01-31',
      by: 'date on the lot',
    })
  })
  test('is the shelf life from its receipt where the lot has no date', () => {
    expect(lotStanding(tin({ receivedOn: '2026-01-01' }), today).goodUntil).toEqual({
      on: '2028-01-01',
      by: 'shelf life',
    })
  })
  test('is the open life where that ends first: 180 days from 29 May end on 25 November', () => {
    const opened = tin({ openedOn: '2026-05-29' })
    expect(lotStanding(opened, today).goodUntil).toEqual({ on: '2026-11-25', by: 'open life' })
    expect(state(opened)).toBe('use first')
    expect(state(opened, '2026-11-26')).toBe('late')
  })
  test('is none where nobody has said one', () => {
    expect(lotStanding(tin({ shelfLifeDays: null }), today)).toMatchObject({ state: 'fit', goodUntil: null })
  })
})

test('out of the freezer: nearly from four fifths of its life, gone when no hour is left', () => {
  expect(state(roll({ outHours: 191.9 }))).toBe('fit')
  expect(state(roll({ outHours: 192 }))).toBe('use first')
  expect(lotStanding(roll({ outHours: 239.5 }), today)).toMatchObject({ usable: true, outHoursLeft: 0.5 })
  expect(lotStanding(roll({ outHours: 240 }), today)).toMatchObject({ state: 'out life gone', usable: false })
  expect(lotStanding(roll({ outHours: 500, outLifeH: null }), today)).toMatchObject({
    state: 'fit',
    outHoursLeft: null,
  })
})

test('how much is left: low below the limit, empty at nothing, told when more was taken than there was', () => {
  expect(state(roll({ remaining: 10 }))).toBe('fit')
  expect(state(roll({ remaining: 9.99 }))).toBe('low')
  expect(state(roll({ remaining: 1e-9 }))).toBe('empty')
  const overdrawn = lotStanding(roll({ remaining: -0.5 }), today)
  expect(overdrawn).toMatchObject({ state: 'empty', usable: false })
  expect(overdrawn.reasons[0]).toMatchObject({ code: 'overdrawn', cure: 'Count what is there.' })
})

test('what weighs most gives the state, and every reason is told', () => {
  const worst = lotStanding(roll({ expiresOn: '2026-11-01', outHours: 300, remaining: 0 }), today)
  expect(worst.state).toBe('late')
  expect(worst.reasons.map((reason) => reason.code)).toEqual(['late', 'out-life-gone', 'empty'])
})

test('a closed lot has no reasons and is not usable', () => {
  const closed = roll({ closedOn: '2026-10-01', closedWhy: 'used up', expiresOn: '2026-01-01' })
  expect(lotStanding(closed, today)).toMatchObject({ state: 'closed', usable: false, reasons: [] })
})

test('lots are offered fit ones first, of those what ends first', () => {
  const lots = [
    roll({ lot: 'late', expiresOn: '2026-01-01' }),
    tin({ lot: 'no end', shelfLifeDays: null }),
    roll({ lot: 'next year' }),
    roll({ lot: 'soon', expiresOn: '2026-12-01' }),
  ].map((lot) => ({ ...lot, standing: lotStanding(lot, today) }))
  expect(lots.sort(byUse).map((lot) => lot.lot)).toEqual(['soon', 'next year', 'no end', 'late'])
})
