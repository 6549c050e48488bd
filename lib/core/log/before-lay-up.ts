import type { IsoDate } from '../dates'
import { leakMatters } from './leak-matters'
import { type Matter, matter } from './matter'
import { overdueMatters } from './open-matters'
import { releaseMatters } from './release-matters'
import { repairMatters } from './repair-matters'
import { stateMatters } from './state-matters'
import type { MouldCounts, UpkeepRules } from './types'

/**
 * What must be settled before the next lay-up, worst first: state, release of the face, of its areas and of fresh
 * patches, repairs and their limits, leak checks, open matters past their day, and what differs from the last good pull. Limits are the shop's rules (from memory, editable).
 * `now` is an ISO moment, `today` the shop's day.
 */
export function beforeLayUp(
  counts: MouldCounts,
  rules: UpkeepRules,
  today: IsoDate,
  now: string,
): readonly Matter[] {
  const matters = [
    ...stateMatters(counts, today),
    ...counts.release.flatMap((target) => releaseMatters(target, counts, rules, now)),
    ...repairMatters(counts, rules, today),
    ...leakMatters(counts, rules, today),
    ...overdueMatters(counts, today),
    ...differences(counts),
  ]
  const rank = { stop: 0, look: 1, note: 2 } as const
  return [...matters].sort((a, b) => rank[a.severity] - rank[b.severity])
}
function differences(counts: MouldCounts): Matter[] {
  const before = counts.atLastGoodPull
  const now = counts.release.find((target) => target.target === 'face')
  if (!before || !now) return []
  const told = [
    differs('sealer', before.sealProduct, now.sealProduct),
    differs('sealer lot', before.sealLot, now.sealLot),
    differs('release agent', before.coatProduct, now.coatProduct),
    differs('release lot', before.coatLot, now.coatLot),
  ].filter((line): line is string => line !== null)
  const first = told[0]
  if (!first) return []
  return [
    matter({
      code: 'differs-from-last-good',
      severity: 'note',
      text: `Differs from the last good pull: ${told.join('; ')}`,
      word: first.split(':')[0] ?? first,
      cure: 'Make sure that it is meant; a test patch tells',
      settledBy: null,
    }),
  ]
}

function differs(what: string, before: string | null, now: string | null): string | null {
  if (before === null || now === null || before === now) return null
  return `${what}: ${before} then, ${now} now`
}
