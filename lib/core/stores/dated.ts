import type { IsoDate } from '../dates'

/** A line that holds from a day on and is never changed: a price, a rate. */
export interface DatedLine {
  readonly id: string
  readonly fromOn: IsoDate
  /** ISO moment: of two lines from the same day the later written one puts the other right. */
  readonly writtenAt: string
}

/** The line in force on a day: the latest that began on it or before; null before the first. */
export function inForceOn<Line extends DatedLine>(lines: readonly Line[], day: IsoDate): Line | null {
  return lines.filter((line) => line.fromOn <= day).sort(latestFirst)[0] ?? null
}

/** Newest first. */
export function latestFirst(a: DatedLine, b: DatedLine): number {
  return (
    compare(b.fromOn, a.fromOn) || Date.parse(b.writtenAt) - Date.parse(a.writtenAt) || compare(b.id, a.id)
  )
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

/** Whether another line of the same day was written later and stands in its place. */
export function isPutRight(line: DatedLine, lines: readonly DatedLine[]): boolean {
  return lines.some((other) => other.fromOn === line.fromOn && latestFirst(other, line) < 0)
}

/** Sums of money by currency, never across: lines are rounded half up first, totals sum lines. */
export function sumByCurrency(
  lines: readonly { readonly minor: number; readonly currency: string }[],
): { readonly currency: string; readonly minor: number }[] {
  const sums = new Map<string, number>()
  for (const { minor, currency } of lines) {
    sums.set(currency, (sums.get(currency) ?? 0) + Math.floor(minor + 0.5))
  }
  return [...sums]
    .map(([currency, minor]) => ({ currency, minor }))
    .sort((a, b) => compare(a.currency, b.currency))
}
