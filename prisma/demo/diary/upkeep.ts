import type { IsoDate } from '#lib/core/dates'
import type { LogData } from '#lib/core/log/index'
import type { Who } from '../data/people'
import type { Book, More } from './book'

export const sealer = 'Base sealer S'
export const agent = 'Semi-permanent agent A'
const stripper = 'Strip paste P'
const cleaner = 'Mould cleaner C'

type Lots = readonly (readonly [from: IsoDate, lot: string])[]

const sealerLots: Lots = [
  ['2023-01-01', 'S-031'],
  ['2024-09-01', 'S-038'],
  ['2025-09-01', 'S-044'],
  ['2026-09-01', 'S-051'],
]

const agentLots: Lots = [
  ['2023-01-01', 'A-072'],
  ['2024-02-15', 'A-085'],
  ['2024-09-01', 'A-091'],
  ['2025-02-20', 'A-099'],
  ['2025-09-01', 'A-106'],
  ['2026-02-20', 'A-112'],
  ['2026-09-01', 'A-118'],
  ['2026-11-16', 'A-121'],
]

/** The tin that was open on a day. */
function lotOn(lots: Lots, day: IsoDate): string {
  return lots.filter(([from]) => from <= day).at(-1)?.[1] ?? ''
}

export function coats(book: Book, on: IsoDate, by: Who, count: number, more: More = {}): void {
  const data = {
    product: agent,
    lot: lotOn(agentLots, on),
    coats: count,
    minutesBetween: count > 1 ? 15 : null,
  }
  book.write(on, by, 'coat', data, more)
}

export function seal(book: Book, on: IsoDate, by: Who, count: number, more: More = {}): void {
  book.write(on, by, 'seal', { product: sealer, lot: lotOn(sealerLots, on), coats: count }, more)
}

export function clean(book: Book, on: IsoDate, by: Who, more: More = {}): void {
  book.write(on, by, 'clean', { product: cleaner }, more)
}

export function strip(book: Book, on: IsoDate, by: Who, more: More = {}): void {
  book.write(on, by, 'strip', { product: stripper }, more)
}

export function tape(book: Book, on: IsoDate, by: Who, result: 'slips' | 'grips', more: More = {}): void {
  book.write(on, by, 'tape-test', { result }, more)
}

/** A new mould, or one that was stripped: sealer, five coats, tape. */
export function freshRelease(book: Book, on: IsoDate, by: Who, more: More = {}): void {
  seal(book, on, by, 2, more)
  coats(book, on, by, 5, { ...more, afterMin: 60 + book.draw(5, 30) })
  tape(book, on, by, 'slips', { ...more, afterMin: 90 + book.draw(5, 40) })
}

export function stripAndRelease(book: Book, on: IsoDate, by: Who, more: More = {}): void {
  strip(book, on, by, more)
  freshRelease(book, on, by, more)
}

/** mbar lost in 10 min from 40 mbar absolute, the mould alone in an envelope bag, cold and then hot. */
export function leakChecks(
  book: Book,
  on: IsoDate,
  by: Who,
  coldMbar: number,
  hotMbar: number,
  note = '',
): void {
  const check = (heat: 'cold' | 'hot', temperatureC: number, lossMbar: number) =>
    book.write(
      on,
      by,
      'leak-check',
      {
        bagging: 'mould alone, envelope bag',
        heat,
        temperatureC,
        pins: 'out',
        volumeL: null,
        startMbar: 40,
        endMbar: Math.round((40 + lossMbar) * 10) / 10,
        minutes: 10,
      },
      heat === 'hot' ? { note, afterMin: 170 + book.draw(0, 50) } : {},
    )
  check('cold', 20 + book.draw(0, 2), coldMbar)
  check('hot', 120, hotMbar)
}

export function moved(book: Book, on: IsoDate, by: Who, place: string): void {
  book.write(on, by, 'moved', { place })
}

/** Out to a place of work; a mould that was racked is so no longer. */
export function offTheRack(book: Book, on: IsoDate, by: Who, place: string): void {
  moved(book, on, by, place)
  const states = book.drafts
    .filter(({ kind }) => kind === 'state')
    .map(({ data }) => data as LogData['state'])
  const wasRacked = states.findLast(({ state }) => state === 'racked')?.on ?? false
  if (wasRacked) book.write(on, by, 'state', { state: 'racked', on: false, reason: 'Out for the season' })
}

/** September of a season: out of the rack, looked over and checked. */
export function walk(
  book: Book,
  on: IsoDate,
  by: Who,
  place: string,
  coldMbar: number,
  hotMbar: number,
): void {
  offTheRack(book, on, by, place)
  book.write(on, by, 'inspection', {
    verdict: 'sound',
    what: 'Season walk: face, flanges, bushes; photos in the folder',
  })
  leakChecks(book, on, by, coldMbar, hotMbar)
}

/** After the season: cleaned and put away. */
export function rack(book: Book, on: IsoDate, by: Who, place: string): void {
  clean(book, on, by)
  moved(book, on, by, place)
  book.write(on, by, 'state', { state: 'racked', on: true, reason: 'End of the season' })
}
