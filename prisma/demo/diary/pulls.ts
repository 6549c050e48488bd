import type { IsoDate } from '#lib/core/dates'
import type { LogData, PullGrade } from '#lib/core/log/index'
import { pullDays } from '../base/calendar'
import type { Who } from '../data/people'
import type { Book } from './book'
import { clean, coats, tape } from './upkeep'

export interface OnePull {
  readonly layUp: IsoDate
  readonly on: IsoDate
  readonly by: Who
  readonly serial: string | null
  readonly went?: PullGrade
  readonly fate?: Partial<Pick<LogData['pull'], 'partFate' | 'mouldFate'>>
  readonly cureC?: number
  /** False: nobody cleared it. */
  readonly cleared?: boolean
  /** Looks that stood open when it was cleared. */
  readonly open?: readonly string[]
  /** Why a lead cleared it over a stop. */
  readonly because?: string
  readonly proof?: boolean
  readonly note?: string
  /** When the pull was written down, if that was another day. */
  readonly writtenOn?: IsoDate
}

/** The shop's rule: a touch-up is due from so many pulls on. */
const pullsPerTouchUp = 5

/** Cleared on one day, pulled on the next. Answers the key of the pull. */
export function pull(book: Book, one: OnePull): string {
  const due = book.since.coat >= pullsPerTouchUp
  const touchUp = `Whole face: ${book.since.coat} pulls since coated; the shop's rule is ${pullsPerTouchUp}`
  const data = { open: [...(one.open ?? []), ...(due ? [touchUp] : [])], because: one.because ?? null }
  if (one.cleared ?? true) book.write(one.layUp, one.by, 'cleared', { ...data, proof: one.proof ?? false })
  return book.write(
    one.on,
    one.by,
    'pull',
    {
      went: one.went ?? 'usual',
      serial: one.serial,
      partFate: one.fate?.partFate ?? 'good',
      mouldFate: one.fate?.mouldFate ?? 'unharmed',
      cureC: one.cureC ?? 120,
    },
    {
      ...(one.note ? { note: one.note } : {}),
      ...(one.writtenOn ? { writtenOn: one.writtenOn, at: '10:30' } : {}),
    },
  )
}

/** What follows a pull: wiped, and touched up after the first three since a strip and every few pulls. */
export function care(book: Book, on: IsoDate, by: Who, touchUpEvery = 4): void {
  const first = book.since.strip <= 3
  const due = first || book.since.coat >= touchUpEvery
  if (due || book.draw(0, 2) === 0) clean(book, on, by)
  if (!due) return
  const grips = !first && book.draw(0, 4) === 0
  if (!first) tape(book, on, by, grips ? 'grips' : 'slips')
  coats(book, on, by, grips ? 2 : 1)
  if (grips) tape(book, on, by, 'slips', { afterMin: 40 })
}

export interface Run {
  readonly from: IsoDate
  readonly to: IsoDate
  readonly count: number
  /** Code of the part and the year in which the season ends: "WSP-26". */
  readonly serials: string
  readonly firstNo?: number
  readonly by: readonly Who[]
  readonly touchUpEvery?: number
  /** What was out of the ordinary, by the number in the serial. */
  readonly odd?: Readonly<Record<number, Partial<OnePull>>>
}

/** A stretch of pulls, spread over its time. */
export function run(
  book: Book,
  { from, to, count, serials, firstNo = 1, by, touchUpEvery, odd = {} }: Run,
): void {
  for (const [index, days] of pullDays(from, to, count, book.draw).entries()) {
    const no = firstNo + index
    const who = by[book.draw(0, by.length - 1)] ?? 'MO'
    pull(book, { ...days, by: who, serial: `${serials}-${String(no).padStart(2, '0')}`, ...odd[no] })
    care(book, days.on, who, touchUpEvery)
  }
}
