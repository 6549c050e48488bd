/**
 * Slips between two words: letters left out, put in, mistaken, or two neighbours changed round (optimal string alignment).
 * Counted up to `most`; anything beyond is `most + 1`.
 */
export function slipsBetween(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1
  let before: readonly number[] = []
  let row: readonly number[] = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i]
    for (let j = 1; j <= b.length; j += 1) {
      const mistaken = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1)
      const turned =
        a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (before[j - 2] ?? Infinity) + 1 : Infinity
      next.push(Math.min(mistaken, turned, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1))
    }
    before = row
    row = next
  }
  return Math.min(row[b.length] ?? 0, most + 1)
}

/** Slips that a word of this length may hold and still be meant: none in two letters, one in five, two in more. */
export function slipsAllowed(length: number): number {
  return length <= 2 ? 0 : length <= 5 ? 1 : 2
}

/**
 * The word that was probably meant: the one with fewest slips; among those the one with the same first letter, then the
 * one that stands more often. Null when every word is too far off.
 */
export function nearestWord(typed: string, words: ReadonlyMap<string, number>): string | null {
  const most = slipsAllowed(typed.length)
  let best: { word: string; slips: number; often: number } | null = null
  for (const [word, often] of words) {
    const slips = slipsBetween(typed, word, most) + (word[0] === typed[0] ? 0 : 0.5)
    if (slips > most + 0.5 || word === typed) continue
    if (best === null || slips < best.slips || (slips === best.slips && often > best.often)) {
      best = { word, slips, often }
    }
  }
  return best?.word ?? null
}
