import type { IsoDate } from '#lib/core/dates'
import type { Who } from '../data/people'
import { laidKey, planIdOf, provedKey } from '../data/plan-story'
import type { Book } from './book'
import { type OnePull, pull } from './pulls'
import { coats, leakChecks, seal, tape } from './upkeep'

export interface LaidPatch {
  readonly number: number
  readonly area: string
  readonly on: IsoDate
  readonly by: Who
  readonly lots: readonly [surface: string, bulk: string]
  readonly leak: readonly [on: string, coldMbar: number, hotMbar: number]
  readonly release: IsoDate
  readonly taped: IsoDate
  readonly dowel?: { readonly tag: string; readonly uMm: number; readonly vMm: number }
}

/** The patch is in the mould: laid, checked for leaks, looked over, sealed and coated as new, taped. */
export function layDownPatch(book: Book, laid: LaidPatch): void {
  const { mould } = book
  const { number, by, area } = laid
  book.write(
    laid.on,
    by,
    'patch-laid',
    {
      planId: planIdOf(mould, number, 1),
      number,
      lots: [
        { material: 'Surface twill 200', lot: laid.lots[0] },
        { material: 'Bulk twill 650', lot: laid.lots[1] },
      ],
    },
    { key: laidKey(mould, number), area, patch: number, at: '16:50' },
  )
  if (laid.dowel) {
    const { tag, uMm, vMm } = laid.dowel
    book.write(
      laid.on,
      by,
      'dowel-changed',
      { tag, what: 'set new', uMm, vMm, diameterMm: 8 },
      {
        note: 'Off the pattern pin, before it was lifted.',
      },
    )
  }
  const [leakOn, coldMbar, hotMbar] = laid.leak
  leakChecks(book, leakOn, by, coldMbar, hotMbar, `After patch ${number}.`)
  book.write(laid.release, 'MO', 'inspection', {
    verdict: 'sound',
    what: `Patch ${number} flush within 0.05 mm, tap test clear; rest of the face looked over`,
  })
  seal(book, laid.release, by, 2, { area, patch: number })
  coats(book, laid.release, by, 5, { area, patch: number, afterMin: 75 })
  coats(book, laid.release, by, 1, { afterMin: 90 })
  tape(book, laid.taped, by, 'slips', { area, patch: number })
}

/** The careful first pull over a patch, and its being proved. */
export function provePatch(
  book: Book,
  patch: Pick<LaidPatch, 'number' | 'area'>,
  place: string,
  one: OnePull,
): void {
  const { number, area } = patch
  pull(book, {
    ...one,
    proof: true,
    open: [`Patch ${number}, ${place}: not yet proved`],
    note: `Proof pull over patch ${number}: came off by hand, nothing left on the patch.`,
  })
  book.write(
    one.on,
    one.by,
    'proved',
    { planId: planIdOf(book.mould, number, 1), number },
    {
      key: provedKey(book.mould, number),
      area,
      patch: number,
      at: '16:10',
    },
  )
  coats(book, one.on, one.by, 1, { afterMin: 20 })
}
