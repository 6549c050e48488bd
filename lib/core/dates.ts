/** A calendar date of the shop, "2026-03-14". Compared and sorted as text. */
export type IsoDate = string

const isoDate = /^(\d{4})-(\d{2})-(\d{2})$/

/** True for a date that exists in the calendar. */
export function isIsoDate(text: string): boolean {
  const match = isoDate.exec(text)
  if (!match) return false
  const date = new Date(`${text}T00:00:00Z`)
  return !Number.isNaN(date.getTime()) && date.toISOString().slice(0, 10) === text
}

/** Whole days from one date to another; negative when `to` is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000)
}

/** The date so many days after another; before it when `days` is negative. */
export function daysAfter(date: IsoDate, days: number): IsoDate {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
}

/** The calendar date and the minute of the day that a moment has in a time zone. `moment` is ISO 8601 with an offset. */
export function shopDay(
  moment: string,
  timeZone: string,
): { readonly day: IsoDate; readonly minuteOfDay: number } {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(new Date(moment))
  const part = (type: string) => parts.find((candidate) => candidate.type === type)?.value ?? ''
  return {
    day: `${part('year')}-${part('month')}-${part('day')}`,
    minuteOfDay: Number(part('hour')) * 60 + Number(part('minute')),
  }
}

/**
 * Minutes from the shop's midnight to a moment as they really passed: where the clock is put back within the day, the
 * hour that comes twice counts twice and order is kept; where it is put forward, the clock's own minutes count.
 */
export function minutesIntoDay(moment: string, timeZone: string): number {
  const { day, minuteOfDay } = shopDay(moment, timeZone)
  const aheadMin = (at: number) => {
    const shown = shopDay(new Date(at).toISOString(), timeZone)
    return Date.parse(`${shown.day}T00:00:00Z`) / 60_000 + shown.minuteOfDay - Math.floor(at / 60_000)
  }
  const at = Date.parse(moment)
  const asUniversal = Date.parse(`${day}T00:00:00Z`)
  const atMidnight = asUniversal - aheadMin(at - minuteOfDay * 60_000) * 60_000
  return minuteOfDay + Math.max(0, aheadMin(atMidnight) - aheadMin(at))
}

const shortMonths = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/**
 * A time as well as it is known: "2023-06" reads "Jun 2023" and "2023-09-08" reads "8 Sep 2023"; any other words stay
 * as they were written ("before 2022", "May 2024").
 */
export function monthWords(text: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(text.trim()) ?? []
  const name = shortMonths[Number(month) - 1]
  if (!year || !name) return text
  return `${day ? `${Number(day)} ` : ''}${name} ${year}`
}

/** "21 Oct", or "21 Oct 2024" when the year is not the one of `today`. */
export function shortDate(date: IsoDate, today: IsoDate): string {
  const [year, month, day] = date.split('-')
  const short = `${Number(day)} ${shortMonths[Number(month) - 1] ?? month}`
  return year === today.slice(0, 4) ? short : `${short} ${year}`
}

/**
 * The moment at which a clock on the shop's wall shows a time on a day, as ISO 8601 in universal time. In the hour
 * that comes twice the first one is meant; a time that the clock skips is told as null.
 */
export function momentOf(day: IsoDate, time: string, timeZone: string): string | null {
  if (!isIsoDate(day) || !/^([01]\d|2[0-3]):[0-5]\d$/.test(time)) return null
  const minutes = Number(time.slice(0, 2)) * 60 + Number(time.slice(3))
  const asUniversal = Date.parse(`${day}T${time}:00Z`)
  // Offsets lie between -12 and +14 h; the wall clock tells which of the candidates is meant, earliest first.
  for (let offsetMin = 14 * 60; offsetMin >= -12 * 60; offsetMin -= 15) {
    const moment = new Date(asUniversal - offsetMin * 60_000).toISOString()
    const shown = shopDay(moment, timeZone)
    if (shown.day === day && shown.minuteOfDay === minutes) return moment
  }
  return null
}

/** The time of day that a moment has in a zone, "14:05". */
export function shopTime(moment: string, timeZone: string): string {
  const { minuteOfDay } = shopDay(moment, timeZone)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${two(Math.floor(minuteOfDay / 60))}:${two(minuteOfDay % 60)}`
}
