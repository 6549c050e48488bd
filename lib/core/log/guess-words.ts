import type { Guess, MouldCounts } from './types'

/** "about 40 (30-50)"; where nothing is left open, "40". */
export function guessWords({ low, best, high }: Guess): string {
  return low === best && high === best ? String(best) : `about ${best} (${low}-${high})`
}

/** "61 in the book and about 40 before it (30-50)"; without a guess nothing is made up. */
export function pullsWords({ pulls, beforeBook }: Pick<MouldCounts, 'pulls' | 'beforeBook'>): string {
  if (!beforeBook) return `${pulls} in the book`
  const { low, best, high } = beforeBook
  const before =
    low === best && high === best ? `${best} before it` : `about ${best} before it (${low}-${high})`
  return `${pulls} in the book and ${before}`
}
