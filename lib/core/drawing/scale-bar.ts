import type { DimensionItem, Xy } from './types'

/** The greatest of 1, 2, 5 times a power of ten that is not above the given length. */
export function roundLengthMm(mostMm: number): number {
  if (!(mostMm > 0)) throw new RangeError(`a scale bar needs a length, got ${mostMm} mm`)
  const power = 10 ** Math.floor(Math.log10(mostMm) + 1e-12)
  const digit = [5, 2, 1].find((step) => step * power <= mostMm * (1 + 1e-12)) ?? 1
  return digit * power
}

/** A scale bar of a round length that ends at `right`. */
export function scaleBar(right: Xy, mostMm: number, sizeMm: number): DimensionItem {
  const lengthMm = roundLengthMm(mostMm)
  return {
    kind: 'dimension',
    from: [right[0] - lengthMm, right[1]],
    to: right,
    label: `${lengthMm} mm`,
    sizeMm,
    ends: 'ticks',
    role: 'soft',
  }
}
