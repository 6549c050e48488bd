import type { IsoDate } from '#lib/core/dates'
import { pullDays } from '../base/calendar'
import { drawer } from '../base/ids'
import type { Who } from '../data/people'
import type { Book } from './book'
import { care, type OnePull, pull } from './pulls'
import { walk } from './upkeep'

/** A hull comes off three pieces: its days and its serial are theirs together. */
export interface Hull extends Pick<OnePull, 'layUp' | 'on' | 'by'> {
  readonly serial: string
}

/** How it went on each of the pieces, where it was out of the ordinary. */
export type Odd = Readonly<Record<string, Partial<OnePull>>>

function hulls(
  from: string,
  to: string,
  count: number,
  season: string,
  firstNo: number,
  by: readonly Who[],
): Hull[] {
  const draw = drawer(`hulls/${season}/${firstNo}`)
  return pullDays(from, to, count, draw).map((days, index) => ({
    ...days,
    by: by[draw(0, by.length - 1)] ?? 'MO',
    serial: `LH-${season}-${String(firstNo + index).padStart(2, '0')}`,
  }))
}

export const first = hulls('2023-10-09', '2024-05-24', 9, '24', 1, ['AW', 'JR', 'MO'])
export const second = hulls('2024-10-07', '2025-02-05', 5, '25', 1, ['SL', 'JR', 'TA'])
export const stuck: Hull = { layUp: '2025-02-11', on: '2025-02-12', by: 'JR', serial: 'LH-25-06' }
export const proofStarboard: Hull = { layUp: '2025-03-19', on: '2025-03-20', by: 'MO', serial: 'LH-25-07' }
export const afterStarboard = hulls('2025-03-27', '2025-04-29', 2, '25', 8, ['TA', 'SL'])
export const proofPort: Hull = { layUp: '2025-05-27', on: '2025-05-28', by: 'MO', serial: 'LH-25-10' }
export const lastOfSecond: Hull = { layUp: '2025-06-11', on: '2025-06-12', by: 'TA', serial: 'LH-25-11' }
export const third = hulls('2025-10-02', '2026-06-12', 11, '26', 1, ['SL', 'TA', 'RN'])
export const ahead: readonly Hull[] = [
  { layUp: '2026-10-21', on: '2026-10-22', by: 'TA', serial: 'LH-27-01' },
  { layUp: '2026-11-11', on: '2026-11-12', by: 'RN', serial: 'LH-27-02' },
]

/** The given hulls come off a piece. */
export function take(book: Book, some: readonly Hull[], odd: Odd = {}): void {
  for (const hull of some) {
    pull(book, { ...hull, ...odd[hull.serial] })
    care(book, hull.on, hull.by)
  }
}

export function seasonWalk(book: Book, on: IsoDate, by: Who, coldMbar: number, hotMbar: number): void {
  walk(book, on, by, 'Bay 1, hull trolley', coldMbar, hotMbar)
}
