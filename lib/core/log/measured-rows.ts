/** One measured point as it was typed; figures are read later, cell by cell. */
export interface MeasuredRow {
  readonly tag: string
  readonly xMm: string
  readonly yMm: string
  readonly zMm: string
}

export interface MeasuredRows {
  readonly rows: readonly MeasuredRow[]
  /** Number of the line that each row stands on, from 1. */
  readonly lines: readonly number[]
  /** Lines that are no rows, in words. */
  readonly faults: readonly string[]
}

const isHead = (cells: readonly string[]) => /^(tag|name|point|id)$/i.test(cells[0] ?? '')

/**
 * Measured points as they are typed or pasted, a line each: tag, x, y and, where it is known, z. Parted by tabs or
 * semicolons; else by commas with a space behind them (others are decimal commas); else by spaces. A head is passed over.
 */
export function measuredRows(text: string): MeasuredRows {
  const rows: MeasuredRow[] = []
  const lines: number[] = []
  const faults: string[] = []
  for (const [index, line] of text.split(/\r\n|\r|\n/).entries()) {
    if (line.trim() === '') continue
    const cells = cellsOf(line.trim())
    if (rows.length === 0 && isHead(cells)) continue
    const [tag = '', xMm = '', yMm = '', zMm = ''] = cells
    if (cells.length < 3 || cells.length > 4) {
      faults.push(`Line ${index + 1}, "${line.trim().slice(0, 60)}": give tag, x, y and, if known, z`)
      continue
    }
    rows.push({ tag, xMm, yMm, zMm })
    lines.push(index + 1)
  }
  return { rows, lines, faults }
}

function cellsOf(line: string): string[] {
  const mark = ['\t', ';'].find((candidate) => line.includes(candidate))
  const cells = mark ? line.split(mark) : /,\s/.test(line) ? line.split(/,\s+/) : line.split(/\s+/)
  return cells.map((cell) => cell.trim())
}

/** Points as a text that `measuredRows` reads again. */
export function measuredText(
  points: readonly {
    readonly tag: string
    readonly xMm: number
    readonly yMm: number
    readonly zMm: number | null
  }[],
): string {
  return points
    .map(({ tag, xMm, yMm, zMm }) => [tag, xMm, yMm, ...(zMm === null ? [] : [zMm])].join('; '))
    .join('\n')
}
