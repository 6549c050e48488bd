import { daysAfter, type IsoDate } from '../dates'
import { nearDays } from './repair-matters'
import type { MouldCounts, UpkeepRules } from './types'

/**
 * The first day after `today` on which the passing of days alone changes what must be settled before a lay-up; null
 * when nothing is bound to a day.
 */
export function nextChangeOn(counts: MouldCounts, rules: UpkeepRules, today: IsoDate): IsoDate | null {
  const limits = [
    ...counts.repairs.filter((repair) => repair.interim && !repair.closed).map((repair) => repair.untilOn),
    ...counts.openMatters.map((open) => open.untilOn),
  ].filter((day): day is IsoDate => day !== null)
  const days = [
    ...(counts.lastLeak ? [daysAfter(counts.lastLeak.doneOn, rules.leakEveryDays + 1)] : []),
    ...counts.flags.flatMap(({ untilOn }) => (untilOn === null ? [] : [daysAfter(untilOn, 1)])),
    ...limits.flatMap((day) => [daysAfter(day, -nearDays), daysAfter(day, 1)]),
  ]
  return days.filter((day) => day > today).sort()[0] ?? null
}
