/** Mean of the thicknesses measured at several places, mm; null when nothing was measured. */
export function meanThicknessMm(placesMm: readonly number[]): number | null {
  if (placesMm.length === 0) return null
  return placesMm.reduce((sum, place) => sum + place, 0) / placesMm.length
}
