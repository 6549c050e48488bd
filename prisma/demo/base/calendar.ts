import { daysBetween, type IsoDate, shopDay } from '#lib/core/dates'

export const timeZone = 'Europe/Berlin'

export function addDays(day: IsoDate, days: number): IsoDate {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
}

/** Nobody is in the workshop on Sundays and from Christmas to Epiphany. */
function closed(day: IsoDate): boolean {
  const monthDay = day.slice(5)
  return new Date(`${day}T00:00:00Z`).getUTCDay() === 0 || monthDay >= '12-21' || monthDay <= '01-06'
}

export function workdayFrom(day: IsoDate): IsoDate {
  let found = day
  while (closed(found)) found = addDays(found, 1)
  return found
}

export function workdayBefore(day: IsoDate): IsoDate {
  let found = addDays(day, -1)
  while (closed(found)) found = addDays(found, -1)
  return found
}

/** What midnight of a day in the shop is as a moment, kept since asking the calendar is slow. */
const midnights = new Map<IsoDate, number>()

function midnightOf(day: IsoDate): number {
  const kept = midnights.get(day)
  if (kept !== undefined) return kept
  const utc = Date.parse(`${day}T00:00:00Z`)
  const found = [60, 120]
    .map((offsetMin) => utc - offsetMin * 60_000)
    .find((moment) => {
      const there = shopDay(new Date(moment).toISOString(), timeZone)
      return there.day === day && there.minuteOfDay === 0
    })
  if (found === undefined) throw new RangeError(`${day} has no midnight in ${timeZone}`)
  midnights.set(day, found)
  return found
}

/** The moment of a minute of a working day in the shop, as ISO in universal time; clocks change on Sundays only. */
export function momentOf(day: IsoDate, minuteOfDay: number): string {
  return new Date(midnightOf(day) + minuteOfDay * 60_000).toISOString()
}

/** "14:05" as minutes of the day. */
export function minuteOf(clock: string): number {
  const [hours, minutes] = clock.split(':').map(Number)
  return (hours ?? 0) * 60 + (minutes ?? 0)
}

/**
 * Days on which parts came off, spread over a stretch of time with some play, each at least three days after the
 * one before it, with the day before it on which it was laid up.
 */
export function pullDays(
  from: IsoDate,
  to: IsoDate,
  count: number,
  draw: (low: number, high: number) => number,
): { readonly layUp: IsoDate; readonly on: IsoDate }[] {
  const slot = daysBetween(from, to) / count
  const play = Math.max(0, Math.floor(slot) - 3)
  const days: { layUp: IsoDate; on: IsoDate }[] = []
  let free = addDays(from, 1)
  for (let index = 0; index < count; index += 1) {
    const wish = addDays(from, Math.round(slot * index) + 1 + draw(0, play))
    const on = workdayFrom([wish, free].sort()[1] ?? wish)
    if (on > to) throw new RangeError(`${count} pulls do not fit between ${from} and ${to}`)
    days.push({ layUp: workdayBefore(on), on })
    // Room for a Sunday between a pull and the next lay-up.
    free = addDays(on, 3)
  }
  return days
}
