import type { IsoDate } from '#lib/core/dates'

/** A name for a worksheet: at most 31 signs, none of []:*?/\ and no apostrophe at its ends. */
export function sheetName(title: string): string {
  const clean = title
    .replace(/[[\]:*?/\\\p{C}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[' ]+|[' ]+$/g, '')
  const cut =
    clean.length > 31
      ? `${clean
          .slice(0, 30)
          .replace(/[\uD800-\uDBFF]$/, '')
          .trimEnd()}…`
      : clean
  // "History" is kept by one program for itself.
  return cut === '' || cut.toLowerCase() === 'history' ? `${cut || 'Table'} 1` : cut
}

/** "Lanternfish-Solar-log-LH-P-2026-11-25.csv": shop, table, what it was narrowed to, day. */
export function tableFileName(parts: readonly string[], day: IsoDate, extension: 'csv' | 'xlsx'): string {
  const names = parts.map(namePart).filter((part) => part !== '')
  return `${[...names, day].join('-')}.${extension}`
}

function namePart(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
}

/**
 * The header that names a download (RFC 6266): a name in plain ASCII for old programs, and the real one in UTF-8
 * (RFC 8187, formerly 5987).
 */
export function attachment(fileName: string): string {
  const ascii = fileName
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9._-]+/g, '_')
  const encoded = encodeURIComponent(fileName).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  )
  return `attachment; filename="${ascii}"; filename*=UTF-8''${encoded}`
}
