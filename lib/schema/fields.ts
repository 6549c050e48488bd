import * as z from 'zod'
import { isIsoDate } from '#lib/core/dates'
import { plainSigns } from '#lib/core/search/index'
import { figure, insideUnit, type Quantity } from '#lib/core/units'

/** zod must not compile schemas with `new Function`: a strict content security policy forbids it. */
z.config({ jitless: true })

interface Range {
  readonly min?: number
  readonly max?: number
}

/** A number in the inside unit of its quantity; forms write it with any unit of that quantity. */
export function quantity(kind: Quantity, range: Range = {}) {
  const unit = insideUnit(kind)
  const named = (value: number) => `${figure(value)}${unit === '' ? '' : ` ${unit}`}`
  let schema = z.number({ error: () => `Give a number in ${unit === '' ? 'figures' : unit}` })
  if (range.min !== undefined) {
    schema = schema.min(range.min, { error: () => `At least ${named(range.min ?? 0)}` })
  }
  if (range.max !== undefined) {
    schema = schema.max(range.max, { error: () => `At most ${named(range.max ?? 0)}` })
  }
  return schema.meta({ quantity: kind })
}

export const lengthMm = (range: Range = {}) => quantity('length', range)
export const temperatureC = (range: Range = { min: -50, max: 500 }) => quantity('temperature', range)
export const durationMin = (range: Range = { min: 0, max: 100_000 }) => quantity('duration', range)
export const angleDeg = (range: Range = { min: -360, max: 360 }) => quantity('angle', range)

/** A whole number of things. */
export const count = (range: Range = { min: 0, max: 100_000 }) =>
  z
    .int({ error: () => 'Give a whole number' })
    .min(range.min ?? 0, { error: () => `At least ${range.min ?? 0}` })
    .max(range.max ?? 100_000, { error: () => `At most ${range.max ?? 100_000}` })

/** Money in whole minor units; forms write it as "12.50" in the currency that stands beside it under `currencyField`. */
export const moneyMinor = (currencyField = 'currency') =>
  count({ min: 0, max: 2_000_000_000 }).meta({ moneyIn: currencyField })

/** An amount of stock in the unit that stands beside it under `unitField`; forms write it with any unit of that kind. */
export const stockAmount = (unitField = 'unit', range: Range = {}) =>
  plainNumber({ min: 0, max: 1e6, ...range }).meta({ amountIn: unitField })

/** A plain number without a unit. */
export const plainNumber = (range: Range = {}) =>
  z
    .number({ error: () => 'Give a number' })
    .min(range.min ?? -1e9, { error: () => `At least ${range.min ?? -1e9}` })
    .max(range.max ?? 1e9, { error: () => `At most ${range.max ?? 1e9}` })

/** NUL and halves of pairs: no text that the database can hold. */
const isText = (typed: string) => !/[\0\p{Cs}]/u.test(typed)
const noText = { error: () => 'There is a sign in it that is no text; type it again' }

/** Text that must not be blank. */
export const text = (what: string, longest = 200) =>
  z
    .string({ error: () => `Give ${what}` })
    .refine(isText, noText)
    .trim()
    .min(1, { error: () => `Give ${what}` })
    .max(longest, { error: () => `At most ${longest} signs` })

/** Text that may be blank. */
export const freeText = (longest = 4000) =>
  z
    .string()
    .refine(isText, noText)
    .trim()
    .max(longest, { error: () => `At most ${longest} signs` })

/**
 * What somebody looks for, a code or words, as it was typed or stands in an address. Signs that no stored text holds count as
 * blanks.
 */
export const asked = (longest = 200) =>
  z
    .string()
    .overwrite(plainSigns)
    .max(longest, { error: () => `At most ${longest} signs` })

/** A code for people: letters, figures, dot, dash, underscore; compared without case. */
export const code = (what = 'a code, for example LH-P2') =>
  text(what, 40).regex(/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u, {
    error: () => 'A code has letters, figures, dots, dashes; it begins with a letter or a figure',
  })

/** `message`: what to do instead, where a person chooses it from a list. */
export const uuid = (message = 'Not an id') => z.uuid({ error: () => message })

export const isoDate = () =>
  z
    .string({ error: () => 'Give a date' })
    .refine(isIsoDate, { error: () => 'Give a date that exists, as 2026-10-21' })
    .meta({ format: 'date' })

/** A moment with its offset from universal time. */
export const isoMoment = () =>
  z.iso.datetime({ offset: true, error: () => 'Give date and time with the offset, as 2026-10-21T14:05:00Z' })

export const choice = <const Names extends readonly [string, ...string[]]>(names: Names) =>
  z.enum(names, { error: () => `Choose one of: ${names.join(', ')}` })

/** [u, v] in mm. Coordinates beyond 100 m are taken for a slip. */
export const point = () => z.tuple([lengthMm({ min: -1e5, max: 1e5 }), lengthMm({ min: -1e5, max: 1e5 })])

export const loop = () =>
  z
    .array(point())
    .min(3, { error: () => 'An outline needs at least three points' })
    .max(20_000, { error: () => 'An outline has at most 20000 points' })
