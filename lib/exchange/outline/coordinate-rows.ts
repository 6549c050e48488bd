import { CsvError, parse } from 'csv-parse/sync'
import { lineName, Refused, stop } from './finding'

export type Delimiter = ';' | '\t' | ',' | ' '

export interface Row {
  readonly cells: readonly string[]
  /** From 1. */
  readonly line: number
}

export interface Rows {
  readonly rows: readonly Row[]
  /** Lines of delimiters with nothing between them. */
  readonly blankRows: readonly number[]
}

/** The only file that knows the CSV library. Throws Refused on a quotation mark that is not closed. */
export function rowsOf(lines: readonly string[], delimiter: Delimiter): Rows {
  const all = delimiter === ' ' ? byBlanks(lines) : byDelimiter(lines, delimiter)
  const isBlank = ({ cells }: Row) => cells.every((cell) => cell === '')
  return {
    rows: all.filter((row) => !isBlank(row)),
    blankRows: all.filter(isBlank).map(({ line }) => line),
  }
}

function byDelimiter(lines: readonly string[], delimiter: Delimiter): readonly Row[] {
  try {
    const records = parse(lines.join('\n'), {
      delimiter,
      record_delimiter: '\n',
      info: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as readonly {
      readonly record: readonly string[]
      readonly info: { readonly lines: number }
    }[]
    return records.map(({ record, info }) => ({ cells: record.map((cell) => cell.trim()), line: info.lines }))
  } catch (fault) {
    if (!(fault instanceof CsvError)) throw fault
    const line = 1 + lines.findIndex((text) => text.split('"').length % 2 === 0)
    throw new Refused(
      stop(
        'table-not-read',
        'A quotation mark is not closed, or stands where none can.',
        lineName(line),
        'Take the quotation marks away; coordinates need none.',
        { line },
      ),
    )
  }
}

function byBlanks(lines: readonly string[]): readonly Row[] {
  return lines.flatMap((text, index): Row[] => {
    const clean = text.trim()
    return clean === '' ? [] : [{ cells: clean.split(/\s+/), line: index + 1 }]
  })
}

/**
 * Delimiter of a table of numbers, told by the lines that begin with one: semicolon or tab where most have it; else
 * blanks where they stand between digits without a comma beside them ("12,5 13,5"); else the comma.
 */
export function delimiterOf(lines: readonly string[]): Delimiter {
  const filled = lines.filter((line) => line.trim() !== '')
  const numeric = filled.filter((line) => /^\s*["']?[-+\u2212]?[.,]?\d/.test(line))
  const telling = numeric.length > 0 ? numeric : filled
  const most = (fits: (line: string) => boolean) => 2 * telling.filter(fits).length > telling.length
  if (most((line) => line.includes(';'))) return ';'
  if (most((line) => line.trim().includes('\t'))) return '\t'
  if (most((line) => /[^,\s]\s+[^,\s]/.test(line.replace(/"[^"]*"/g, '0')))) return ' '
  return most((line) => line.includes(',')) ? ',' : ' '
}
