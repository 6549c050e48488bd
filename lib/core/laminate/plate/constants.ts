import { type PlateStiffness, plateCompliance } from './stiffness'

/** Constants of a plate as if it were one material, along u and v. */
export interface PlateConstants {
  readonly exMPa: number
  readonly eyMPa: number
  readonly gxyMPa: number
  readonly nuXy: number
  readonly nuYx: number
  /** Under bending alone. */
  readonly exBendingMPa: number
  readonly eyBendingMPa: number
  readonly gxyBendingMPa: number
}

/**
 * In-plane constants 1/(h a), bending constants 12/(h³ d). Of a plate that isn't mirrored they hold where it may bend
 * freely while it is pulled: softer than if it is held flat. Kaw, chapter 4.
 */
export function plateConstants(plate: PlateStiffness): PlateConstants {
  const { a, d } = plateCompliance(plate)
  const h = plate.thicknessMm
  const bending = 12 / h ** 3
  return {
    exMPa: 1 / (h * a[0][0]),
    eyMPa: 1 / (h * a[1][1]),
    gxyMPa: 1 / (h * a[2][2]),
    nuXy: -a[0][1] / a[0][0],
    nuYx: -a[0][1] / a[1][1],
    exBendingMPa: bending / d[0][0],
    eyBendingMPa: bending / d[1][1],
    gxyBendingMPa: bending / d[2][2],
  }
}
