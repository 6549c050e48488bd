import * as z from 'zod'
import { parseAmount, type StockUnit, stockUnits } from '#lib/core/stores/amount'
import {
  formatQuantity,
  moneyText,
  parseMoney,
  parseNumber,
  parseQuantity,
  type Quantity,
} from '#lib/core/units'

/**
 * The form of a schema: the same thing with text at its leaves. `decode` reads text ("12,5", "1/2 in", "") into
 * the schema's numbers, `encode` gives the text that a form starts with. A blank is "not given", never 0.
 */
export function formOf<Schema extends z.ZodType>(schema: Schema) {
  return z.codec(z.unknown(), schema as unknown as z.ZodType<z.output<Schema>, unknown>, {
    decode: (raw, context) => {
      const issues: Issue[] = []
      const value = readText(schema, raw, [], issues)
      if (issues.length === 0) return value
      // What could be read is judged as well, so that all faults are told at once.
      const rest = schema.safeParse(value)
      const told = new Set(issues.map((issue) => issue.path.join('.')))
      for (const issue of rest.success ? [] : rest.error.issues) {
        const key = issue.path.join('.')
        if (![...told].some((path) => path === key || path.startsWith(`${key}.`))) {
          issues.push({ path: [...issue.path], message: issue.message })
        }
      }
      for (const issue of issues) {
        context.issues.push({ code: 'custom', input: raw, path: [...issue.path], message: issue.message })
      }
      return z.NEVER
    },
    encode: (value) => writeText(schema, value),
  })
}

/** What a form shows for a value; a value with gaps is shown with gaps. */
export function textOf(schema: z.ZodType, value: unknown): unknown {
  return writeText(schema, value)
}

/** Messages by field, the field's path joined by dots; '' stands for the whole form. */
export type FieldErrors = Readonly<Record<string, string>>

export function fieldErrors(error: z.ZodError): FieldErrors {
  const found: Record<string, string> = {}
  for (const issue of error.issues) {
    const key = issue.path.join('.')
    found[key] ??= issue.message
  }
  return found
}

interface Issue {
  readonly path: readonly PropertyKey[]
  readonly message: string
}

interface Layers {
  readonly core: z.ZodType
  readonly nullable: boolean
  readonly optional: boolean
}

function peel(schema: z.ZodType): Layers {
  let core = schema
  let nullable = false
  let optional = false
  for (;;) {
    if (core instanceof z.ZodNullable) nullable = true
    else if (core instanceof z.ZodOptional || core instanceof z.ZodDefault || core instanceof z.ZodPrefault)
      optional = true
    else return { core, nullable, optional }
    core = core.unwrap() as z.ZodType
  }
}

function quantityOf(schema: z.ZodType): Quantity | null {
  const kind = schema.meta()?.quantity
  return typeof kind === 'string' ? (kind as Quantity) : null
}

/** What stands beside a field in its record: the currency of a price, the unit of an amount. */
type Beside = Readonly<Record<string, unknown>>

/** The text of the field beside that the schema names under `key` ("currency", "unit"); null when there is none. */
function besideOf(schema: z.ZodType, key: 'moneyIn' | 'amountIn', beside: Beside): string | null {
  const name = schema.meta()?.[key]
  if (typeof name !== 'string') return null
  const value = beside[name]
  return typeof value === 'string' ? value : ''
}

function readText(
  schema: z.ZodType,
  raw: unknown,
  path: readonly PropertyKey[],
  issues: Issue[],
  beside: Beside = {},
): unknown {
  const { core, nullable, optional } = peel(schema)
  if (core instanceof z.ZodObject) {
    if (raw === null || raw === undefined || raw === '') return blank(nullable, optional, raw)
    if (typeof raw !== 'object') return raw
    const source = raw as Record<string, unknown>
    const read: Record<string, unknown> = {}
    for (const [key, field] of Object.entries(core.shape)) {
      const value = readText(field as z.ZodType, source[key], [...path, key], issues, source)
      if (value !== undefined) read[key] = value
    }
    return read
  }
  if (core instanceof z.ZodDiscriminatedUnion) {
    if (raw === null || raw === undefined || raw === '') return blank(nullable, optional, raw)
    const key = core.def.discriminator
    const option = core.options.find((candidate) => {
      const literal = (candidate as z.ZodObject).shape[key]
      return literal instanceof z.ZodLiteral && literal.values.has((raw as Record<string, string>)[key] ?? '')
    })
    return option ? readText(option as z.ZodType, raw, path, issues) : raw
  }
  if (core instanceof z.ZodArray) {
    if (raw === undefined || raw === null || raw === '') return optional ? undefined : []
    return listOf(raw).map((row, index) => readText(core.element as z.ZodType, row, [...path, index], issues))
  }
  if (core instanceof z.ZodTuple) {
    if (raw === null || typeof raw !== 'object') return raw
    const given = listOf(raw)
    const items = core.def.items as readonly z.ZodType[]
    return items.map((item, index) => readText(item, given[index], [...path, index], issues))
  }
  if (core instanceof z.ZodBoolean) {
    if (typeof raw === 'boolean') return raw
    return raw === 'on' || raw === 'true' || raw === 'yes'
  }
  if (core instanceof z.ZodNumber) return readNumber(core, raw, { nullable, optional }, path, issues, beside)
  if (raw === undefined || (typeof raw === 'string' && raw.trim() === '')) {
    return nullable ? null : optional ? undefined : (raw ?? '')
  }
  return raw
}

/** The bare figure where reading it back gives the same, since the unit stands beside the field; else with its unit. */
function quantityText(value: number, kind: Quantity): string {
  const bare = String(value === 0 ? 0 : value)
  const read = parseQuantity(bare, kind)
  return read.ok && read.value === value ? bare : formatQuantity(value, kind)
}

/** A list from a list, from fields named "0", "1" ..., or of the one thing that was given. */
function listOf(raw: unknown): readonly unknown[] {
  if (Array.isArray(raw)) return raw
  if (typeof raw === 'object' && raw !== null && Object.keys(raw).every((key) => /^\d+$/.test(key))) {
    return Object.entries(raw)
      .sort(([a], [b]) => Number(a) - Number(b))
      .map(([, value]) => value)
  }
  return [raw]
}

function blank(nullable: boolean, optional: boolean, raw: unknown): unknown {
  return nullable ? null : optional ? undefined : raw
}

function readNumber(
  core: z.ZodNumber,
  raw: unknown,
  may: { readonly nullable: boolean; readonly optional: boolean },
  path: readonly PropertyKey[],
  issues: Issue[],
  beside: Beside,
): unknown {
  if (typeof raw === 'number') return raw
  const text = typeof raw === 'string' ? raw.trim() : ''
  if (text === '') {
    if (may.nullable) return null
    if (may.optional) return undefined
    issues.push({ path, message: 'Give a number; blank is not zero' })
    return undefined
  }
  const parsed = parseLeaf(core, text, beside)
  if (parsed.ok) return parsed.value
  issues.push({ path, message: parsed.reason })
  return undefined
}

function parseLeaf(
  core: z.ZodNumber,
  text: string,
  beside: Beside,
): { readonly ok: true; readonly value: number } | { readonly ok: false; readonly reason: string } {
  const currency = besideOf(core, 'moneyIn', beside)
  if (currency !== null) {
    if (!/^[A-Z]{3}$/.test(currency)) return { ok: false, reason: 'Money needs its currency, as EUR' }
    const money = parseMoney(text, currency)
    return money.ok ? { ok: true, value: money.minor } : money
  }
  const unit = besideOf(core, 'amountIn', beside)
  if (unit !== null)
    return parseAmount(text, stockUnits.includes(unit as StockUnit) ? (unit as StockUnit) : null)
  const kind = quantityOf(core)
  return kind ? parseQuantity(text, kind) : parseNumber(text)
}

function writeText(schema: z.ZodType, value: unknown, beside: Beside = {}): unknown {
  const { core } = peel(schema)
  if (value === null || value === undefined) return ''
  if (core instanceof z.ZodObject && typeof value === 'object') {
    const source = value as Record<string, unknown>
    return Object.fromEntries(
      Object.entries(core.shape).map(([key, field]) => [
        key,
        writeText(field as z.ZodType, source[key], source),
      ]),
    )
  }
  if (core instanceof z.ZodArray && Array.isArray(value)) {
    return value.map((row) => writeText(core.element as z.ZodType, row))
  }
  if (core instanceof z.ZodTuple && Array.isArray(value)) {
    const items = core.def.items as readonly z.ZodType[]
    return items.map((item, index) => writeText(item, value[index]))
  }
  if (core instanceof z.ZodNumber && typeof value === 'number') {
    const currency = besideOf(core, 'moneyIn', beside)
    if (currency) return moneyText(value, currency)
    const kind = quantityOf(core)
    return kind ? quantityText(value, kind) : String(value)
  }
  return value
}
