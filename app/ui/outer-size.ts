import { figure } from '#lib/core/units'

interface Size {
  readonly lengthMm: number | null
  readonly widthMm: number | null
  readonly heightMm: number | null
}

/** "2760 × 1420 × 640 mm"; a side that nobody knows is a question mark. Null when none is known. */
export function sizeWords({ lengthMm, widthMm, heightMm }: Size): string | null {
  const sides = [lengthMm, widthMm, heightMm]
  if (sides.every((side) => side === null)) return null
  return `${sides.map((side) => (side === null ? '?' : figure(side, 0))).join(' × ')} mm`
}

export function massWords(massKg: number | null): string | null {
  return massKg === null ? null : `${figure(massKg, 1)} kg`
}
