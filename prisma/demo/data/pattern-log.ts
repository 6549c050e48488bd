import type { IsoDate } from '#lib/core/dates'
import type { LogData, PatternKind } from '#lib/core/log/index'
import type { Who } from './people'

export interface PatternLine<Kind extends PatternKind = PatternKind> {
  readonly pattern: string
  readonly on: IsoDate
  readonly by: Who
  readonly kind: Kind
  readonly data: LogData[Kind]
  readonly note?: string
}

const line = <Kind extends PatternKind>(
  pattern: string,
  on: IsoDate,
  by: Who,
  kind: Kind,
  data: LogData[Kind],
  note = '',
): PatternLine => ({ pattern, on, by, kind, data, note })

/** What happened to the patterns, oldest first. */
export const patternLog: readonly PatternLine[] = [
  line('LH-PAT', '2025-05-12', 'SL', 'moved', { place: 'Machine shop, bay 2' }),
  line('LH-PAT', '2025-05-14', 'SL', 'inspection', {
    verdict: 'sound',
    what: 'As found: two dents at the aft end, sealer worn through at the pins',
  }),
  line('LH-PAT', '2025-05-16', 'SL', 'seal', { product: 'Base sealer S', lot: 'S-038', coats: 3 }),
  line('LH-PAT', '2026-10-26', 'MO', 'moved', { place: 'Outside shop for machining' }),
  line(
    'LH-PAT',
    '2026-10-27',
    'MO',
    're-machined',
    {
      what: 'Pin of D02 moved to its new place; pad cut flush',
      depthMm: 4,
      by: 'outside shop, five-axis mill',
    },
    'Before patch 2 of LH-P.',
  ),
  line('LH-PAT', '2026-10-29', 'MO', 'measured', {
    instrument: 'measuring arm',
    temperatureC: 20,
    frame: 'datum',
    points: [
      { tag: 'D01', xMm: 130.01, yMm: 359.98, zMm: 0.02 },
      { tag: 'D05', xMm: 1350.02, yMm: 215.01, zMm: 0.01 },
    ],
  }),
  line('LH-PAT', '2026-10-30', 'MO', 'moved', { place: 'Pattern store, Hall B' }),
  line('LH-PAT', '2026-11-02', 'SL', 'matter', {
    what: 'Fill the old pin hole of D02 before the pattern is used again',
    who: 'Sten Lindqvist',
    untilOn: '2026-12-04',
  }),
  line('ST-PAT', '2026-09-21', 'SL', 'inspection', {
    verdict: 'look',
    what: 'Hairline crack along the left shoulder, 120 mm; does not open under hand pressure',
  }),
]
