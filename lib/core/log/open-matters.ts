import type { IsoDate } from '../dates'
import { type Matter, matter } from './matter'
import { untilWords } from './over-day'
import type { MouldCounts } from './types'

/** Open matters past their day. A repair for the time being speaks of its limits itself. */
export function overdueMatters(counts: MouldCounts, today: IsoDate): Matter[] {
  return counts.openMatters.flatMap((open) => {
    if (open.kind === 'repair' || open.untilOn === null || open.untilOn >= today) return []
    return [
      matter({
        code: 'matter-over',
        severity: 'look',
        text: `Open matter ${untilWords(open.untilOn, today)}: ${[open.what, open.who].filter(Boolean).join('; ')}`,
        word: 'over its day',
        cure: 'See to it and close it, or carry it on with a new day',
        settledBy: 'settled',
        entryId: open.entryId,
      }),
    ]
  })
}
