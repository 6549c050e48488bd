import { parseNumber } from './number'

/** Money in whole minor units of a currency, or why it can't be read; `reason` is in words with the cure. */
export type ParsedMoney =
  | { readonly ok: true; readonly minor: number }
  | { readonly ok: false; readonly verdict: 'blank' | 'ask' | 'refuse'; readonly reason: string }

const style = (currency: string) =>
  new Intl.NumberFormat('en-GB', { style: 'currency', currency, currencyDisplay: 'narrowSymbol' })

/** Decimals that a currency is counted in (ISO 4217): 2 for EUR, 0 for JPY, 3 for KWD; 2 where it is not known. */
export function currencyDecimals(currency: string): number {
  return style(currency).resolvedOptions().maximumFractionDigits ?? 2
}

/** As it is shown: "€12.50", "¥1,250". */
export function formatMoney(minor: number, currency: string): string {
  return new Intl.NumberFormat('en-GB', { style: 'currency', currency }).format(
    minor / 10 ** currencyDecimals(currency),
  )
}

/** As a form starts with it: "12.50", which reads back to the same. */
export function moneyText(minor: number, currency: string): string {
  const decimals = currencyDecimals(currency)
  return (minor / 10 ** decimals).toFixed(decimals)
}

/**
 * Reads money typed in a currency: "12.50", "12,5", "€ 1 234.00", "12 EUR". More decimals than the currency has
 * are not rounded away: a person says what is meant. Another currency is refused.
 */
export function parseMoney(text: string, currency: string): ParsedMoney {
  const clean = text.replace(/[\u00a0\u2009\u202f]/g, ' ').trim()
  if (clean === '') return { ok: false, verdict: 'blank', reason: 'blank' }
  const bare = withoutCurrency(clean, currency)
  if (/[\p{L}\p{Sc}]/u.test(bare.replace(/e[-+]?\d+$/i, ''))) {
    return refuse(`"${clean}" is not an amount in ${currency}. Write figures alone, such as 12.50.`)
  }
  const number = parseNumber(bare)
  if (!number.ok) return { ok: false, verdict: number.verdict, reason: number.reason }
  const decimals = currencyDecimals(currency)
  const [, after = ''] = /^[^.,]*[.,](\d+)$/.exec(bare) ?? []
  const exact = number.value * 10 ** decimals
  const minor = Math.round(exact)
  if (after.length > decimals || Math.abs(exact - minor) > 1e-6 * Math.max(1, Math.abs(minor))) {
    const has = decimals === 0 ? 'has no decimals' : `has ${decimals} decimals`
    return {
      ok: false,
      verdict: 'ask',
      reason: `${currency} ${has}. Write ${moneyText(minor, currency)}, or the thousands without a sign between.`,
    }
  }
  if (!Number.isSafeInteger(minor)) return refuse(`"${clean}" is too large an amount. Check the digits.`)
  return { ok: true, minor: minor === 0 ? 0 : minor }
}

/** The text without the currency's own code or sign before or after it. */
function withoutCurrency(text: string, currency: string): string {
  const symbol = style(currency)
    .formatToParts(0)
    .find((part) => part.type === 'currency')?.value
  for (const name of [currency, symbol ?? currency]) {
    const [low, own] = [text.toLowerCase(), name.toLowerCase()]
    if (low.startsWith(own)) return text.slice(name.length).trim()
    if (low.endsWith(own)) return text.slice(0, -name.length).trim()
  }
  return text
}

function refuse(reason: string): ParsedMoney {
  return { ok: false, verdict: 'refuse', reason }
}
