import { figure, parseNumber, parseQuantity, type Quantity, quantities } from '../units'

/** What stores count in: materials in square metres, products in the unit of their card. */
export const stockUnits = ['l', 'kg', 'piece', 'm', 'm2'] as const
export type StockUnit = (typeof stockUnits)[number]

export const unitWords: Readonly<Record<StockUnit, string>> = {
  l: 'l',
  kg: 'kg',
  piece: 'pieces',
  m: 'm',
  m2: 'm²',
}

const quantityOfUnit: Readonly<Record<StockUnit, Quantity | null>> = {
  l: 'volume',
  kg: 'mass',
  piece: null,
  m: 'roll-length',
  m2: 'area',
}

/** Below this an amount is dust of rounding. */
export const leastAmount = 1e-6

/** "12.5 m²", "1 piece", "0.125 l". */
export function amountText(value: number, unit: StockUnit): string {
  const shown = figure(value, Math.abs(value) < 1 ? 3 : 2)
  return `${shown} ${unit === 'piece' && shown === '1' ? 'piece' : unitWords[unit]}`
}

export type ParsedAmount =
  | { readonly ok: true; readonly value: number; readonly unit: StockUnit | null }
  | { readonly ok: false; readonly verdict: 'blank' | 'ask' | 'refuse'; readonly reason: string }

/**
 * Reads an amount of stock: "0.2", "200 ml", "3 pieces". With a unit given it must be of that unit's kind; without
 * one, the unit that was typed is answered, null where only a figure was.
 */
export function parseAmount(text: string, unit: StockUnit | null): ParsedAmount {
  const clean = text.trim()
  if (clean === '') return { ok: false, verdict: 'blank', reason: 'blank' }
  const figureOnly = parseNumber(clean)
  if (figureOnly.ok) return { ok: true, value: figureOnly.value, unit }
  if (figureOnly.verdict === 'ask') return figureOnly
  const pieces = /^(.*?)\s*(?:pieces?|pcs?|off)\.?$/i.exec(clean)
  if (pieces && (unit === 'piece' || unit === null)) {
    const count = parseNumber(pieces[1] ?? '')
    return count.ok ? { ok: true, value: count.value, unit: 'piece' } : count
  }
  const candidates = unit === null ? stockUnits : [unit]
  for (const candidate of candidates) {
    const kind = quantityOfUnit[candidate]
    if (kind === null) continue
    const parsed = parseQuantity(clean, kind)
    if (parsed.ok) return { ok: true, value: parsed.value, unit: candidate }
  }
  const wanted =
    unit === null
      ? 'such as 0.2 l, 250 g, 1.5 m2 or 3 pieces'
      : unit === 'piece'
        ? 'as a number of pieces'
        : `in ${quantities[quantityOfUnit[unit] ?? 'area'].units.map((each) => each.symbol).join(' or ')}`
  return { ok: false, verdict: 'refuse', reason: `"${clean}" can't be read. Give the amount ${wanted}.` }
}

/** Square metres of a roll of a length. */
export function rollAreaM2(rollLengthM: number, rollWidthMm: number): number {
  return (rollLengthM * rollWidthMm) / 1000
}
