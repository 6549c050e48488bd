/** Most signs that a cell of a worksheet holds (ECMA-376 leaves it open; spreadsheets stop here). */
export const mostSignsInCell = 32_767

const cutMark = ' … [cut: the CSV has all of it]'

/**
 * What XML 1.0 forbids, and the signs that Unicode reserves for no text at all: control characters but tab and line
 * breaks, halves of surrogate pairs, noncharacters.
 */
const forbidden =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFDD0-\uFDEF\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]|[\uD83F\uD87F\uD8BF\uD8FF\uD93F\uD97F\uD9BF\uD9FF\uDA3F\uDA7F\uDABF\uDAFF\uDB3F\uDB7F\uDBBF\uDBFF][\uDFFE\uDFFF]/g

/** A text as it will stand in a cell: without what a worksheet can't hold, and cut where it is too long, saying so. */
export function sheetText(text: string): string {
  const clean = text.replace(forbidden, '')
  if (clean.length <= mostSignsInCell) return clean
  const kept = clean.slice(0, mostSignsInCell - cutMark.length)
  // Not through the middle of a pair.
  return `${kept.replace(/[\uD800-\uDBFF]$/, '')}${cutMark}`
}

/**
 * A cleaned text as the file stores it (ST_Xstring of ECMA-376): a carriage return, which XML would swallow, and signs
 * that the writer would drop stand as _xHHHH_, and so does a text that looks like such a mark by chance.
 */
export function storedText(clean: string): string {
  const escaped = clean.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_').replace(/[\r\u007F-\u009F\uFFFD]/g, mark)
  // The writer keeps texts in a plain object: "constructor" would be found there before it was ever put in.
  return escaped in Object.prototype ? mark(escaped.charAt(0)) + escaped.slice(1) : escaped
}

function mark(sign: string): string {
  return `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`
}
