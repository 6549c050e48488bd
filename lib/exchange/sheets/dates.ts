import { shopDay, shortDate } from '#lib/core/dates'

/** "21 Oct 2026": on paper the year always stands, nobody knows when it is read. */
export function paperDate(day: string): string {
  return shortDate(day, '')
}

/** "21 Oct 2026, 14:05" in the shop's zone. */
export function paperMoment(moment: string, timeZone: string): string {
  const { day, minuteOfDay } = shopDay(moment, timeZone)
  const two = (value: number) => `${value}`.padStart(2, '0')
  return `${paperDate(day)}, ${two(Math.floor(minuteOfDay / 60))}:${two(minuteOfDay % 60)}`
}
