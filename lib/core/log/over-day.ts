import { daysBetween, type IsoDate, shortDate } from '../dates'

/** "until 12 Dec, 3 days over", "until 12 Dec". */
export function untilWords(untilOn: IsoDate, today: IsoDate): string {
  const over = daysBetween(untilOn, today)
  const until = `until ${shortDate(untilOn, today)}`
  return over > 0 ? `${until}, ${over} ${over === 1 ? 'day' : 'days'} over` : until
}
