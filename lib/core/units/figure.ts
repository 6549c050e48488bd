/**
 * A number as a person writes it in a line of hand calculation: at most `decimals` places, no trailing zeros.
 * For words only; nothing is computed from it.
 */
export function figure(value: number, decimals = 2): string {
  const text = value.toFixed(decimals)
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text
  return trimmed === '-0' ? '0' : trimmed
}
