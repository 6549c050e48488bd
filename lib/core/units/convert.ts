import { insideUnit, knownUnit, type Quantity } from './table'

/** Number in `unit` to the unit inside. RangeError on a unit that the kind does not have. */
export function toInside(value: number, kind: Quantity, unit: string): number {
  const { factor, offset = 0 } = knownUnit(kind, unit)
  return value * factor + offset
}

/** Number in the unit inside to `unit`. RangeError on a unit that the kind does not have. */
export function fromInside(value: number, kind: Quantity, unit: string): number {
  const { factor, offset = 0 } = knownUnit(kind, unit)
  return (value - offset) / factor
}

/**
 * Text of a number inside. Without `decimals` all digits are kept, so that reading it back gives the same number;
 * `decimals` rounds, for display only.
 */
export function formatQuantity(
  value: number,
  kind: Quantity,
  unit: string = insideUnit(kind),
  decimals?: number,
): string {
  if (!Number.isFinite(value)) throw new RangeError(`only finite numbers can be shown, got ${value}`)
  const shown = fromInside(value, kind, unit)
  const text = decimals === undefined ? String(shown === 0 ? 0 : shown) : shown.toFixed(decimals)
  const unsigned = Number(text) === 0 ? text.replace('-', '') : text
  const gap = unit === '' || unit === ':1' ? '' : ' '
  return `${unsigned}${gap}${unit}`
}
