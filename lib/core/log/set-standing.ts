import { type MouldState, mouldStates } from './kinds'
import type { MouldStanding } from './state'

/** How a split mould stands: never better than any of its pieces. */
export interface SetStanding {
  readonly state: MouldState
  /** Which pieces make it so, and why: "LH-P: Patch 7, floor B5". Empty when every piece is alike and says no more. */
  readonly reason: string
  /** Codes of the pieces that stand at that state. */
  readonly pieces: readonly string[]
  /** States of the other pieces, told beside it. */
  readonly also: readonly MouldState[]
}

/**
 * The state of a split mould: that of its worst piece, in the order of `mouldStates`, with the piece's code and
 * reason. Null for a split mould that has no piece yet.
 */
export function setStanding(
  pieces: readonly { readonly code: string; readonly standing: MouldStanding }[],
): SetStanding | null {
  const rank = (state: MouldState) => mouldStates.indexOf(state)
  const state = mouldStates[Math.min(...pieces.map((piece) => rank(piece.standing.state)))]
  if (!state) return null
  const worst = pieces.filter((piece) => piece.standing.state === state)
  const alike = worst.length === pieces.length
  const told = alike && worst.every((piece) => piece.standing.reason === worst[0]?.standing.reason)
  const also = pieces
    .flatMap((piece) => [piece.standing.state, ...piece.standing.also])
    .filter((other) => other !== state)
  return {
    state,
    reason: told ? (worst[0]?.standing.reason ?? '') : reasonsOf(worst),
    pieces: worst.map((piece) => piece.code),
    also: [...new Set(also)].sort((a, b) => rank(a) - rank(b)),
  }
}

/** "LH-P, LH-S; LH-B: cracked rib": pieces with the same reason together. */
function reasonsOf(pieces: readonly { readonly code: string; readonly standing: MouldStanding }[]): string {
  const codesOf = new Map<string, string[]>()
  for (const { code, standing } of pieces) {
    codesOf.set(standing.reason, [...(codesOf.get(standing.reason) ?? []), code])
  }
  return [...codesOf]
    .map(([reason, codes]) => (reason ? `${codes.join(', ')}: ${reason}` : codes.join(', ')))
    .join('; ')
}
