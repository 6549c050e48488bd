import type { Basis } from './words'

/** An operation with the hours that one of its basis takes. */
export interface UsualOperation {
  readonly operation: string
  readonly basis: Basis
  readonly hours: number | null
}

/**
 * Operations of the mould shop that rates are usually kept for. Hours are from memory: a place to begin, which each
 * shop puts right by its own timing. No money: what an hour costs, only the shop knows.
 */
export const usualOperations: readonly UsualOperation[] = [
  { operation: 'labour', basis: 'hour', hours: null },
  { operation: 'router', basis: 'hour', hours: null },
  { operation: 'oven', basis: 'hour', hours: null },
  { operation: 'autoclave', basis: 'run', hours: 2 },
  { operation: 'cut opening', basis: 'piece', hours: 1 },
  { operation: 'scarf', basis: 'm', hours: 1.5 },
  { operation: 'clean and dry', basis: 'piece', hours: 1 },
  { operation: 'lay', basis: 'ply m2', hours: 1.25 },
  { operation: 'debulk', basis: 'run', hours: 0.75 },
  { operation: 'bag', basis: 'run', hours: 2 },
  { operation: 'cure', basis: 'run', hours: 1 },
  { operation: 'post-cure', basis: 'run', hours: 1.5 },
  { operation: 'dress', basis: 'piece', hours: 2 },
  { operation: 'measure', basis: 'piece', hours: 1 },
  { operation: 'strip', basis: 'm2', hours: 0.75 },
  { operation: 'seal', basis: 'm2', hours: 0.5 },
  { operation: 'coat', basis: 'm2', hours: 0.25 },
  { operation: 'plug and bush', basis: 'piece', hours: 1.5 },
  { operation: 'leak check', basis: 'run', hours: 1 },
]
