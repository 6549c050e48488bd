import * as z from 'zod'
import { stockUnits } from '#lib/core/stores/amount'
import { bases } from '#lib/core/stores/words'
import { choice, freeText, isoDate, moneyMinor, quantity, text, uuid } from './fields'
import { currency } from './shop'
import { subjectKinds } from './stock'

/** What one unit costs from a day on. Never changed: a wrong price is put right by a new one of the same day. */
export const NewPrice = z.object({
  id: uuid(),
  subjectKind: choice(subjectKinds),
  subjectId: uuid(),
  unit: choice(stockUnits),
  currency: currency(),
  minorPerUnit: moneyMinor(),
  fromOn: isoDate(),
  sourceNote: freeText(300),
})
export type NewPrice = z.output<typeof NewPrice>

/** What an operation takes and costs from a day on; labour may have hours and no money. */
export const NewRate = z
  .object({
    id: uuid(),
    operation: text('the operation, for example lay', 60),
    basis: choice(bases),
    hours: quantity('hours', { min: 0.001, max: 10_000 }).nullable(),
    currency: currency(),
    minorPerBasis: moneyMinor().nullable(),
    fromOn: isoDate(),
    sourceNote: freeText(300),
  })
  .superRefine((rate, context) => {
    const wrong = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message })
    if (rate.basis === 'hour' && rate.hours !== null)
      wrong('hours', 'By the hour: an hour takes an hour, leave it blank')
    if (rate.basis !== 'hour' && rate.hours === null && rate.minorPerBasis === null) {
      wrong('hours', 'Give hours, money, or both')
    }
  })
export type NewRate = z.output<typeof NewRate>

/** The usual operations with hours from memory, from a day on. */
export const UsualRates = z.object({ id: uuid(), fromOn: isoDate(), currency: currency() })
