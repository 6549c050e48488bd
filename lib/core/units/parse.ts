import { parseNumber } from './number'
import { findUnit, insideUnit, knownUnit, type Quantity, quantities, unknownUnit } from './table'

/**
 * refuse: can't be read; ask: can be read in two ways, a person must choose; blank: nothing was given, which is
 * not zero. `reason` is in words with the cure, and is exactly 'blank' for a blank.
 */
export type ParsedQuantity =
  | { readonly ok: true; readonly value: number; readonly unit: string }
  | { readonly ok: false; readonly verdict: 'blank' | 'ask' | 'refuse'; readonly reason: string }

/**
 * Reads a quantity with or without its unit; without one it is in `assumedUnit` (the unit inside unless told).
 * Takes a decimal comma, "1 3/8 in", "1 h 30 min", "20:1", "42 %". Never answers with NaN or an infinity.
 */
export function parseQuantity(
  text: string,
  kind: Quantity,
  assumedUnit: string = insideUnit(kind),
): ParsedQuantity {
  const clean = text.replace(/[\u00a0\u2009\u202f]/g, ' ').trim()
  if (clean === '') return { ok: false, verdict: 'blank', reason: 'blank' }
  if (kind === 'ratio') return parseRatio(clean)
  const compound = compoundParts(clean, kind)
  if (compound !== null) return compound
  const split = /^([-+\u2212]?[\d.,][\d.,/' \u2019\u2044-]*(?:[eE][-+]?\d+)?)?\s*(.*)$/.exec(clean)
  const numberText = takeNumber(split?.[1] ?? '', kind)
  const unitText = clean.slice(numberText.length).trim()
  if (numberText === '') return refuse(`"${clean}" does not begin with a number. Give ${example(kind)}.`)
  const unit = unitText === '' ? knownUnit(kind, assumedUnit) : findUnit(kind, unitText)
  if (unit === null) return refuse(unknownUnit(kind, unitText))
  const number = parseNumber(numberText)
  if (!number.ok) return { ok: false, verdict: number.verdict, reason: number.reason }
  if (kind === 'fraction' && unit.symbol === '' && Math.abs(number.value) > 1) {
    return ask(`Is "${clean}" ${clean} %? Write "${clean} %" or a fraction between 0 and 1.`)
  }
  return inRange(number.value * unit.factor + (unit.offset ?? 0), kind, unit.symbol, clean)
}

/** A foot or minute mark belongs to the unit of a length, not to the digits. */
function takeNumber(text: string, kind: Quantity): string {
  const marks = kind === 'length' ? /['\u2019].*$/ : /['\u2019]$/
  return text.replace(marks, '').trimEnd()
}

function parseRatio(text: string): ParsedQuantity {
  const parts = text.split(/\s*(?::|\bto\b)\s*/)
  if (parts.length > 2) return refuse(`"${text}" is not a ratio. Give for example 20:1 or 20.`)
  const numbers = parts.map((part) => parseNumber(part.trim()))
  for (const number of numbers) {
    if (!number.ok)
      return { ok: false, verdict: number.verdict, reason: `${number.reason} A ratio is written 20:1.` }
  }
  const [first, second = 1] = numbers.map((number) => (number.ok ? number.value : 0)) as [number, number?]
  if (second === 0) return refuse(`"${text}" divides by zero. Give for example 20:1.`)
  if (first !== 0 && second !== 1 && Math.abs(first) < Math.abs(second)) {
    return ask(`"${text}": is that ${second}:${first}, so long for so thick? Write the larger number first.`)
  }
  return inRange(first / second, 'ratio', ':1', text)
}

/** "1 h 30 min", "5 ft 3 in": parts from large to small, added up. Null when the text is not of that form. */
function compoundParts(text: string, kind: Quantity): ParsedQuantity | null {
  const { compound } = quantities[kind]
  if (compound === undefined) return null
  const parts = [...text.matchAll(/([\d.,/ ]*\d[\d.,/]*)\s*([^\d\s.,/-]+)\s*/g)]
  if (parts.length < 2 || parts.map((part) => part[0]).join('') !== text) return null
  let sum = 0
  let place = -1
  for (const [, numberText = '', unitText = ''] of parts) {
    const unit = findUnit(kind, unitText)
    if (unit === null) return null
    const next = compound.indexOf(unit.symbol)
    if (next <= place) return refuse(`"${text}": write larger units first and each once, ${example(kind)}.`)
    const number = parseNumber(numberText.trim())
    if (!number.ok) return { ok: false, verdict: number.verdict, reason: number.reason }
    place = next
    sum += number.value * unit.factor
  }
  return inRange(sum, kind, compound[place]!, text)
}

function inRange(value: number, kind: Quantity, unit: string, text: string): ParsedQuantity {
  const { least, name } = quantities[kind]
  if (!Number.isFinite(value)) return refuse(`"${text}" is too large a number. Check the digits.`)
  if (least !== undefined && value < least) {
    return refuse(
      `"${text}" is below ${least} ${insideUnit(kind)}, which ${name} can't be. Check sign and unit.`,
    )
  }
  return { ok: true, value: value === 0 ? 0 : value, unit }
}

function example(kind: Quantity): string {
  if (kind === 'duration') return 'for example 1 h 30 min'
  if (kind === 'length') return 'for example 12.7 mm or 1/2 in'
  if (kind === 'temperature') return 'for example 20 °C'
  return `for example 20 ${insideUnit(kind)}`.trimEnd()
}

function refuse(reason: string): ParsedQuantity {
  return { ok: false, verdict: 'refuse', reason }
}

function ask(reason: string): ParsedQuantity {
  return { ok: false, verdict: 'ask', reason }
}
