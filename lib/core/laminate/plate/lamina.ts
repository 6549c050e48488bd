/**
 * What plate theory must know of one layer, in the layer's own directions: 1 along the fibre (of a weave: the warp), 2 across
 * it in the plane. A weave is entered as measured, or as two crossed layers of half the thickness (`crossedLayers`).
 */
export interface Lamina {
  readonly e1MPa: number
  readonly e2MPa: number
  readonly g12MPa: number
  /** Strain across over strain along, under load along 1; the other ratio follows: nu21 = nu12 E2 / E1. */
  readonly nu12: number
  /** Expansion along and across, 1/K. */
  readonly alpha1PerK: number
  readonly alpha2PerK: number
}

/** In-plane stiffness of a layer in the axes of the plate, MPa; 6 is the shear. */
export interface PlaneStiffness {
  readonly q11: number
  readonly q12: number
  readonly q16: number
  readonly q22: number
  readonly q26: number
  readonly q66: number
}

/** @throws RangeError on moduli that aren't positive, or a ratio that no material can have (nu12 nu21 must stay below 1) */
export function checkLamina(lamina: Lamina): void {
  for (const [name, value] of [
    ['E1', lamina.e1MPa],
    ['E2', lamina.e2MPa],
    ['G12', lamina.g12MPa],
  ] as const) {
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${name} must be above 0 MPa, got ${value}`)
  }
  if (!(lamina.nu12 ** 2 < lamina.e1MPa / lamina.e2MPa)) {
    throw new RangeError(
      `nu12 must lie within ± the root of E1/E2 (${Math.sqrt(lamina.e1MPa / lamina.e2MPa)}), got ${lamina.nu12}`,
    )
  }
  for (const value of [lamina.alpha1PerK, lamina.alpha2PerK]) {
    if (!Number.isFinite(value)) throw new RangeError(`expansion must be a number per kelvin, got ${value}`)
  }
}

/** Reduced stiffness in the layer's own directions, plane stress, MPa. Kaw, chapter 2. */
export function reducedStiffness(lamina: Lamina): PlaneStiffness {
  checkLamina(lamina)
  const nu21 = (lamina.nu12 * lamina.e2MPa) / lamina.e1MPa
  const below = 1 - lamina.nu12 * nu21
  return {
    q11: lamina.e1MPa / below,
    q12: (lamina.nu12 * lamina.e2MPa) / below,
    q16: 0,
    q22: lamina.e2MPa / below,
    q26: 0,
    q66: lamina.g12MPa,
  }
}

/** Stiffness of a layer whose direction 1 lies at an angle to u, degrees from u towards v. Kaw, chapter 2. */
export function turnedStiffness(lamina: Lamina, directionDeg: number): PlaneStiffness {
  const { q11, q12, q22, q66 } = reducedStiffness(lamina)
  const { c, s } = turn(directionDeg)
  const [c2, s2, cs] = [c * c, s * s, c * s]
  const [along, across] = [q11 - q12 - 2 * q66, q12 - q22 + 2 * q66]
  return {
    q11: q11 * c2 * c2 + 2 * (q12 + 2 * q66) * s2 * c2 + q22 * s2 * s2,
    q12: (q11 + q22 - 4 * q66) * s2 * c2 + q12 * (s2 * s2 + c2 * c2),
    q16: along * cs * c2 + across * cs * s2,
    q22: q11 * s2 * s2 + 2 * (q12 + 2 * q66) * s2 * c2 + q22 * c2 * c2,
    q26: along * cs * s2 + across * cs * c2,
    q66: (q11 + q22 - 2 * q12 - 2 * q66) * s2 * c2 + q66 * (s2 * s2 + c2 * c2),
  }
}

/** Expansion of a turned layer along u, along v and in shear (engineering), 1/K. Kaw, chapter 2. */
export function turnedExpansion(lamina: Lamina, directionDeg: number): readonly [number, number, number] {
  const { c, s } = turn(directionDeg)
  const { alpha1PerK: a1, alpha2PerK: a2 } = lamina
  return [a1 * c * c + a2 * s * s, a1 * s * s + a2 * c * c, 2 * s * c * (a1 - a2)]
}

function turn(directionDeg: number): { readonly c: number; readonly s: number } {
  if (!Number.isFinite(directionDeg))
    throw new RangeError(`direction must be a number of degrees, got ${directionDeg}`)
  const radians = (directionDeg * Math.PI) / 180
  return { c: Math.cos(radians), s: Math.sin(radians) }
}
