import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  daysBetween,
  isIsoDate,
  minutesIntoDay,
  momentOf,
  monthWords,
  shopDay,
  shopTime,
  shortDate,
} from '#lib/core/dates'

const zones = [
  'UTC',
  'Europe/Berlin',
  'America/Los_Angeles',
  'Pacific/Auckland',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Africa/Cairo',
  'America/St_Johns',
  'Pacific/Kiritimati',
]
const zone = fc.constantFrom(...zones)
const moments = fc
  .integer({ min: Date.UTC(2015, 0, 1), max: Date.UTC(2035, 0, 1) })
  .map((ms) => new Date(ms).toISOString())

describe('calendar dates', () => {
  test.each(['2026-05-10', '2024-02-29', '0999-01-01', '9999-12-31'])('%s exists', (date) =>
    expect(isIsoDate(date)).toBe(true),
  )
  test.each([
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-5-10',
    '10.05.2026',
    '2026-05-10T00:00',
    '',
    ' 2026-05-10',
  ])('%j does not', (date) => expect(isIsoDate(date)).toBe(false))

  test('days between are whole, also over a clock change, and negative backwards', () => {
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2)
    expect(daysBetween('2026-10-24', '2026-10-26')).toBe(2)
    expect(daysBetween('2026-01-01', '2025-01-01')).toBe(-365)
  })

  test('short dates leave the year out when it is this one', () => {
    expect(shortDate('2026-10-01', '2026-11-25')).toBe('1 Oct')
    expect(shortDate('2024-10-21', '2026-11-25')).toBe('21 Oct 2024')
  })
})

describe("the shop's clock", () => {
  test.each([
    ['2026-05-10T22:30:00Z', 'Europe/Berlin', '2026-05-11', 30],
    ['2026-05-10T22:30:00Z', 'America/Los_Angeles', '2026-05-10', 15 * 60 + 30],
    ['2026-05-10T00:30:00+02:00', 'Europe/Berlin', '2026-05-10', 30],
    ['2026-12-31T12:00:00Z', 'Pacific/Auckland', '2027-01-01', 60],
    ['2026-05-10T00:00:00Z', 'Asia/Kathmandu', '2026-05-10', 5 * 60 + 45],
  ])('%s in %s', (moment, timeZone, day, minuteOfDay) => {
    expect(shopDay(moment, timeZone)).toEqual({ day, minuteOfDay })
  })

  test('midnight is 00:00 and not 24:00', () => {
    expect(shopTime('2026-05-09T22:00:00Z', 'Europe/Berlin')).toBe('00:00')
  })

  test("a wall clock's time and the moment belong together, both ways", () => {
    fc.assert(
      fc.property(moments, zone, (moment, timeZone) => {
        const { day } = shopDay(moment, timeZone)
        const time = shopTime(moment, timeZone)
        const back = momentOf(day, time, timeZone)
        expect(back).not.toBeNull()
        expect(shopDay(back ?? '', timeZone)).toEqual(shopDay(moment, timeZone))
        // Of an hour that comes twice the first is meant.
        expect(Date.parse(back ?? '')).toBeLessThanOrEqual(Date.parse(moment))
      }),
      { numRuns: 60 },
    )
  })

  test('the hour that comes twice means the first; the hour that is skipped is no time', () => {
    expect(momentOf('2026-10-25', '02:30', 'Europe/Berlin')).toBe('2026-10-25T00:30:00.000Z')
    expect(momentOf('2026-03-29', '02:30', 'Europe/Berlin')).toBeNull()
    expect(momentOf('2026-03-29', '25:00', 'Europe/Berlin')).toBeNull()
    expect(momentOf('2026-02-30', '12:00', 'Europe/Berlin')).toBeNull()
  })
})

describe('minutes into the day', () => {
  test.each([
    // The clock goes back from 3:00 to 2:00: the second 2:10 comes after the first 2:40.
    ['2026-10-25T00:40:00Z', 160],
    ['2026-10-25T01:10:00Z', 190],
    ['2026-10-25T22:59:00Z', 1499],
    // It goes forward from 2:00 to 3:00: the clock's own minutes.
    ['2026-03-29T00:59:00Z', 119],
    ['2026-03-29T01:00:00Z', 180],
    ['2026-03-29T21:59:00Z', 1439],
    ['2026-05-09T22:00:00Z', 0],
  ])('%s in Berlin', (moment, minutes) => {
    expect(minutesIntoDay(moment, 'Europe/Berlin')).toBe(minutes)
  })

  test('of two moments of one day the later one has no fewer, and they stay below 26 hours', () => {
    fc.assert(
      fc.property(moments, fc.integer({ min: 1, max: 600 }), zone, (moment, laterMin, timeZone) => {
        const later = new Date(Date.parse(moment) + laterMin * 60_000).toISOString()
        const [first, second] = [minutesIntoDay(moment, timeZone), minutesIntoDay(later, timeZone)]
        expect(first).toBeGreaterThanOrEqual(0)
        expect(first).toBeLessThan(1560)
        if (shopDay(moment, timeZone).day === shopDay(later, timeZone).day)
          expect(second).toBeGreaterThan(first)
      }),
      { numRuns: 400 },
    )
  })

  test('the nights on which clocks change keep their order, minute by minute', () => {
    for (const [from, timeZone] of [
      ['2026-10-24T20:00:00Z', 'Europe/Berlin'],
      ['2026-03-28T20:00:00Z', 'Europe/Berlin'],
      ['2026-04-04T12:00:00Z', 'Australia/Lord_Howe'],
      ['2026-10-29T18:00:00Z', 'Africa/Cairo'],
      ['2026-04-23T18:00:00Z', 'Africa/Cairo'],
      ['2026-11-01T04:00:00Z', 'America/Los_Angeles'],
    ] as const) {
      let before: { day: string; minutes: number } | null = null
      for (let minute = 0; minute < 480; minute += 7) {
        const moment = new Date(Date.parse(from) + minute * 60_000).toISOString()
        const now = { day: shopDay(moment, timeZone).day, minutes: minutesIntoDay(moment, timeZone) }
        if (before && before.day === now.day) expect(now.minutes).toBeGreaterThan(before.minutes)
        before = now
      }
    }
  })
})

describe('a time as well as it is known', () => {
  test('a month or a day is read, other words stay as they were written', () => {
    expect(monthWords('2023-06')).toBe('Jun 2023')
    expect(monthWords('2023-09-08')).toBe('8 Sep 2023')
    for (const words of ['before 2022', 'May 2024', '2024', '2023-13', ''])
      expect(monthWords(words)).toBe(words)
  })
})
