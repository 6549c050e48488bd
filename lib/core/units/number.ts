export type ParsedNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly verdict: 'ask' | 'refuse'; readonly reason: string }

/**
 * Number as people write it: "12.5", "12,5", "1 234,5", "1,234.5", "1.2E-03", "1/2", "1 3/8", "1-3/8".
 * A point alone is always the decimal point; a comma alone is one too, except where it could as well part
 * thousands ("1,234"): then a person is asked.
 */
export function parseNumber(text: string): ParsedNumber {
  const clean = text.trim().replace('\u2212', '-').replace('\u2044', '/')
  if (clean.includes('/')) return parseFraction(clean)
  const sign = clean.startsWith('-') ? -1 : 1
  const unsigned = clean.replace(/^[-+]\s*/, '')
  const [digits = '', exponent = ''] = unsigned.split(/(?=[eE])/)
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits)) {
    const plain = digits.replace(',', '')
    return ask(
      `"${text}" can be ${plain} or ${digits.replace(',', '.')}. Write ${plain}, or ${digits.replace(',', '.')} with a point.`,
    )
  }
  const canonical = withPoint(digits)
  if (canonical === null || (exponent !== '' && !/^[eE][-+]?\d+$/.test(exponent))) {
    return refuse(`"${text}" is not a number. Write digits with one decimal point or comma, such as 12.5.`)
  }
  const value = sign * Number(canonical + exponent)
  if (!Number.isFinite(value)) return refuse(`"${text}" is too large a number. Check the digits.`)
  return { ok: true, value: value === 0 ? 0 : value }
}

/** Digits with a point as decimal sign and nothing else; null when they can't be read so. */
function withPoint(digits: string): string | null {
  if (/^(\d+\.?\d*|\.\d+)$/.test(digits)) return digits
  if (/^(\d+,\d*|,\d+)$/.test(digits)) return digits.replace(',', '.')
  if (/^\d{1,3}(,\d{3})+(\.\d*)?$/.test(digits)) return digits.replaceAll(',', '')
  if (/^\d{1,3}(\.\d{3})+,\d*$/.test(digits)) return digits.replaceAll('.', '').replace(',', '.')
  if (/^\d{1,3}(\.\d{3}){2,}$/.test(digits)) return digits.replaceAll('.', '')
  if (/^\d{1,3}(?:([ '\u2019])\d{3})(?:\1\d{3})*([.,]\d*)?$/.test(digits)) {
    return digits.replace(/[ '\u2019]/g, '').replace(',', '.')
  }
  return null
}

function parseFraction(text: string): ParsedNumber {
  const match = /^([-+])?\s*(?:(\d+)[ -]\s*)?(\d+)\s*\/\s*(\d+)$/.exec(text)
  if (match === null) return refuse(`"${text}" is not a fraction. Write it such as 1/2 or 1 3/8.`)
  const [, sign, whole = '0', over = '', under = ''] = match
  if (Number(under) === 0) return refuse(`"${text}" divides by zero. Write a fraction such as 1/2.`)
  const value = Number(whole) + Number(over) / Number(under)
  return { ok: true, value: sign === '-' && value !== 0 ? -value : value }
}

function ask(reason: string): ParsedNumber {
  return { ok: false, verdict: 'ask', reason }
}

function refuse(reason: string): ParsedNumber {
  return { ok: false, verdict: 'refuse', reason }
}
