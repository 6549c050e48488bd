import * as z from 'zod'
import { stockUnits } from '#lib/core/stores/amount'
import { closings, containers } from '#lib/core/stores/words'
import { choice, freeText, isoDate, quantity, stockAmount, text, uuid } from './fields'

export const subjectKinds = ['material', 'product'] as const

/** A material or a product by its id. */
export const StockSubjectRef = z.object({ kind: choice(subjectKinds), id: uuid() })

const lotWords = {
  lot: text("the maker's lot or batch number", 80),
  container: choice(containers),
  receivedOn: isoDate(),
  expiresOn: isoDate().nullable(),
  openedOn: isoDate().nullable(),
  place: freeText(120),
  note: freeText(1000),
} as const

function checkDays(
  lot: { readonly receivedOn: string; readonly openedOn: string | null },
  context: z.RefinementCtx,
): void {
  if (lot.openedOn !== null && lot.openedOn < lot.receivedOn) {
    context.addIssue({ code: 'custom', path: ['openedOn'], message: 'Opened before it came' })
  }
}

/**
 * A roll or a tin that has come. How much: an amount in the unit of its material or product, or for a material the
 * length of the roll, which is taken times the roll width.
 */
export const NewLot = z
  .object({
    id: uuid(),
    subjectKind: choice(subjectKinds),
    subjectId: uuid(),
    unit: choice(stockUnits),
    amount: stockAmount('unit').nullable(),
    rollLengthM: quantity('roll-length', { min: 0.01, max: 5000 }).nullable(),
    ...lotWords,
  })
  .superRefine((lot, context) => {
    checkDays(lot, context)
    const wrong = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message })
    if (lot.amount === null && lot.rollLengthM === null) {
      wrong(
        'amount',
        lot.subjectKind === 'material' ? 'Give the length of the roll, or its area' : 'Give how much came',
      )
    }
    if (lot.amount !== null && lot.rollLengthM !== null)
      wrong('amount', 'Give the length or the area, not both')
    if (lot.amount !== null && lot.amount <= 0) wrong('amount', 'More than nothing')
    if (lot.subjectKind === 'product' && lot.rollLengthM !== null) {
      wrong('rollLengthM', 'A product is counted in its own unit')
    }
  })
export type NewLot = z.output<typeof NewLot>

/** What of a lot is edited later; how much there is changes by moves only. */
export const LotEdit = z.object({ id: uuid(), ...lotWords, version: z.int() }).superRefine(checkDays)
export type LotEdit = z.output<typeof LotEdit>

const move = {
  /** Made by whoever writes: sent twice, stored once. */
  id: uuid(),
  lotId: uuid(),
  doneOn: isoDate(),
  note: freeText(500),
} as const

/** So much was taken. A lot out of life is taken from with a because, which stands in the note. */
export const TakeFromLot = z.object({
  ...move,
  unit: choice(stockUnits),
  amount: stockAmount('unit', { min: 0.000_001 }),
  because: freeText(500),
})
export type TakeFromLot = z.output<typeof TakeFromLot>

/** So much is there, as counted or weighed. */
export const CountLot = z.object({ ...move, unit: choice(stockUnits), amount: stockAmount('unit') })
export type CountLot = z.output<typeof CountLot>

const clock = () => z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: () => 'Give a time, as 14:05' })

/** Out of the freezer: hours, or from when to when. */
export const FreezerHours = z
  .object({
    ...move,
    hours: quantity('hours', { min: 0.01, max: 5000 }).nullable(),
    outAt: clock().nullable(),
    backOn: isoDate().nullable(),
    backAt: clock().nullable(),
  })
  .superRefine((given, context) => {
    const wrong = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message })
    const times = given.outAt !== null || given.backAt !== null
    if (given.hours === null && !times) wrong('hours', 'Give the hours, or when it came out and went back')
    if (given.hours !== null && times) wrong('hours', 'Give the hours or the times, not both')
    if (times && given.outAt === null) wrong('outAt', 'When did it come out?')
    if (times && given.backAt === null) wrong('backAt', 'When did it go back?')
  })
export type FreezerHours = z.output<typeof FreezerHours>

/** Strikes a move that was wrong; what should have stood there is written as a new move. */
export const CorrectMove = z.object({
  id: uuid(),
  lotId: uuid(),
  correctsId: uuid(),
  note: text('why it is struck out', 500),
})
export type CorrectMove = z.output<typeof CorrectMove>

export const CloseLot = z.object({
  lotId: uuid(),
  version: z.int(),
  closedOn: isoDate(),
  closedWhy: choice(closings),
})
export type CloseLot = z.output<typeof CloseLot>

/** The rows of lots of a form without those in which no lot was chosen. */
export function chosenUses(raw: unknown): Record<string, unknown>[] {
  if (typeof raw !== 'object' || raw === null) return []
  return Object.values(raw as Record<string, unknown>).filter(
    (row): row is Record<string, unknown> =>
      typeof row === 'object' &&
      row !== null &&
      String((row as { lotId?: unknown }).lotId ?? '').trim() !== '',
  )
}

export const ReopenLot = z.object({ lotId: uuid(), version: z.int() })
