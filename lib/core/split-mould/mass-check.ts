/** What the masses of a split mould say of each other, kg. */
export interface MassCheck {
  readonly piecesKg: number
  /** Codes of pieces that nobody has weighed. */
  readonly notWeighed: readonly string[]
  /** The whole less its pieces: hardware and backing; null where the whole or a piece was not weighed. */
  readonly restKg: number | null
  /** In words, where the figures do not go together or something is not weighed; else null. */
  readonly note: string | null
}

/** Two weighings of the same thing differ by so much: crane scales read to half a kilogram (from memory). */
const scaleKg = 1

/** The whole, closed and bolted, weighs at least what its pieces weigh. Null: no mass is known at all. */
export function massCheck(
  wholeKg: number | null,
  pieces: readonly { readonly code: string; readonly massKg: number | null }[],
): MassCheck | null {
  const piecesKg = pieces.reduce((sum, piece) => sum + (piece.massKg ?? 0), 0)
  if (wholeKg === null && piecesKg === 0) return null
  const notWeighed = pieces.filter((piece) => piece.massKg === null).map((piece) => piece.code)
  const restKg = wholeKg === null || notWeighed.length > 0 ? null : wholeKg - piecesKg
  return { piecesKg, notWeighed, restKg, note: noteOf(wholeKg, piecesKg, notWeighed) }
}

function noteOf(wholeKg: number | null, piecesKg: number, notWeighed: readonly string[]): string | null {
  const round = (kg: number) => String(Math.round(kg * 10) / 10)
  if (wholeKg === null)
    return 'The whole was not weighed: the crane needs its mass, not the sum of its pieces'
  if (wholeKg < piecesKg - scaleKg) {
    return `The whole is put down as ${round(wholeKg)} kg, its pieces as ${round(piecesKg)} kg together: weigh again`
  }
  if (notWeighed.length > 0) return `Not weighed: ${notWeighed.join(', ')}`
  if (Math.abs(wholeKg - piecesKg) > scaleKg) {
    return `Its pieces weigh ${round(piecesKg)} kg together; ${round(wholeKg - piecesKg)} kg are hardware and frame`
  }
  return null
}
