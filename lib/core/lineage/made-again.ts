import type { LogKind } from '../log/index'

/** A pattern, as far as it matters whether what comes off it can be made again. */
export interface PatternLeft {
  readonly code: string
  /** Moulds can be taken off it now. */
  readonly available: boolean
  readonly canBeMadeAgain: boolean
}

/** What is lost for good, and why. */
export interface Irreplaceable {
  readonly code: string
  readonly because: string
}

/**
 * Whether a mould is lost for good when it is lost. So it is when somebody has said so, and when its pattern is gone
 * and can't be made again. Null: another one can be made, as far as the book knows.
 */
export function mouldLost(
  mould: { readonly code: string; readonly canBeMadeAgain: boolean },
  pattern: PatternLeft | null,
): Irreplaceable | null {
  const gone = pattern !== null && !pattern.available && !pattern.canBeMadeAgain
  if (mould.canBeMadeAgain && !gone) return null
  return {
    code: mould.code,
    because: gone
      ? `its pattern ${pattern.code} is gone and can't be made again`
      : pattern
        ? `no other mould like it comes off ${pattern.code}`
        : 'no pattern of it is in the book',
  }
}

/** The same for a pattern: what it can't be replaced by. */
export function patternLost(pattern: PatternLeft): Irreplaceable | null {
  if (pattern.canBeMadeAgain) return null
  return {
    code: pattern.code,
    because: pattern.available
      ? 'moulds off it are all that could give its shape back'
      : 'it is gone; its moulds are the only record of the shape',
  }
}

/** Acts that can lose what can't be made again: they say so before they are done. */
export const riskyKinds = [
  'strip',
  'repair',
  'dowel-changed',
  're-machined',
  'heat',
  'moved',
  'state',
  'damage',
  'patch-laid',
] as const satisfies readonly LogKind[]

export const isRisky = (kind: LogKind): boolean => riskyKinds.some((risky) => risky === kind)

/** Job lines of a patch plan that take material off the mould: the opening, the taper, what is in their way. */
export const isCutting = (lineCode: string): boolean =>
  /^(cut|take-out|scarf|cover-ground|step-\d+)$/.test(lineCode)
