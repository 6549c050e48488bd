import { daysBetween, type IsoDate, shortDate } from '../dates'
import { type Matter, matter } from './matter'
import type { MouldCounts, UpkeepRules } from './types'

/** Leak checks that are missing, old, older than the last repair, or over the limit. */
export function leakMatters(counts: MouldCounts, rules: UpkeepRules, today: IsoDate): Matter[] {
  const last = counts.lastLeak
  const settled = { severity: 'look', settledBy: 'leak-check' } as const
  if (!last) {
    return [
      matter({
        ...settled,
        code: 'leak-unknown',
        text: 'No leak check of the mould is written down',
        word: 'missing',
        cure: 'Check the mould alone, pins out, cold; then hot',
      }),
    ]
  }
  const found: Matter[] = []
  const loss = leakLossMbar(last.startMbar, last.endMbar)
  const allowed = (rules.leakLimitMbar / rules.leakLimitMin) * last.minutes
  const told = `${oneDecimal(loss)} mbar in ${last.minutes} min on ${shortDate(last.doneOn, today)}, ${last.heat}, pins ${last.pins}`
  // Readings have at most a few decimals: what their binary difference adds is no leak.
  if (loss > allowed + 1e-9) {
    found.push(
      matter({
        code: 'leak-over-limit',
        severity: 'stop',
        text: `Leak over the limit: ${told}; the shop's rule is ${rules.leakLimitMbar} mbar in ${rules.leakLimitMin} min`,
        word: 'leaks',
        cure: 'Tell bag from mould by a test on a plate that is known to be good; find and mend; check again',
        settledBy: 'leak-check',
      }),
    )
  }
  if (!counts.leakSinceRepair) {
    found.push(
      matter({
        ...settled,
        code: 'leak-before-repair',
        text: `No leak check since the last repair; the last one: ${told}`,
        word: 'missing',
        cure: 'Check the mould alone, cold and hot',
      }),
    )
  } else if (daysBetween(last.doneOn, today) > rules.leakEveryDays) {
    found.push(
      matter({
        ...settled,
        code: 'leak-old',
        text: `Last leak check ${daysBetween(last.doneOn, today)} days ago: ${told}`,
        word: 'due',
        cure: 'Check the mould alone, same bagging and start pressure as last time',
      }),
    )
  }
  return found
}
/** mbar lost: the absolute pressure under the bag rises from start to end. */
export function leakLossMbar(startMbar: number, endMbar: number): number {
  return endMbar - startMbar
}
function oneDecimal(value: number): string {
  return value.toFixed(1).replace(/\.0$/, '')
}
