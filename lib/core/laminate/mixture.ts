/**
 * Rule of mixtures along the fibre: E = Vf Ef + (1 - Vf) Em, and density likewise. Any unit, the same for both.
 * Good along the fibre only; across it the rule is far too stiff. RangeError on a fraction outside 0 to 1.
 */
export function mixture(fibreVolumeFraction: number, ofFibre: number, ofMatrix: number): number {
  if (!(fibreVolumeFraction >= 0 && fibreVolumeFraction <= 1)) {
    throw new RangeError(`fibre volume fraction must lie between 0 and 1, got ${fibreVolumeFraction}`)
  }
  return fibreVolumeFraction * ofFibre + (1 - fibreVolumeFraction) * ofMatrix
}

export interface FibreShares {
  readonly byVolume: number
  readonly byMass: number
}

/**
 * Share of fibre from the density of a sound piece: the rule of mixtures for density turned round. Voids are taken
 * for missing fibre. RangeError unless the density lies between those of matrix and fibre. All in g/cm³.
 */
export function fibreSharesFromDensity(
  compositeGcm3: number,
  fibreGcm3: number,
  matrixGcm3: number,
): FibreShares {
  if (
    !(matrixGcm3 > 0 && fibreGcm3 > matrixGcm3 && compositeGcm3 >= matrixGcm3 && compositeGcm3 <= fibreGcm3)
  ) {
    throw new RangeError(
      `the density must lie between matrix ${matrixGcm3} and fibre ${fibreGcm3} g/cm³, got ${compositeGcm3}`,
    )
  }
  const byVolume = (compositeGcm3 - matrixGcm3) / (fibreGcm3 - matrixGcm3)
  return { byVolume, byMass: (byVolume * fibreGcm3) / compositeGcm3 }
}
