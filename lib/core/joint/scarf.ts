/** Stresses on the plane of a scarf, MPa. */
export interface ScarfStress {
  readonly normalMPa: number
  readonly shearMPa: number
}

/** Angle of a taper of R to 1 from the face of the laminate, degrees. */
export function scarfAngleDeg(ratio: number): number {
  if (!(ratio > 0 && Number.isFinite(ratio))) throw new RangeError(`the ratio must be above 0, got ${ratio}`)
  return degrees(Math.atan(1 / ratio))
}

/**
 * Stresses on a plane that lies at an angle to the pull, by statics: sigma sin² and sigma sin cos. Uniform along the scarf, which
 * holds for adherends that are alike in all directions; in laminates the shear peaks where plies along the pull end.
 */
export function scarfStress(pullMPa: number, angleDeg: number): ScarfStress {
  const angle = radians(angleDeg)
  return {
    normalMPa: pullMPa * Math.sin(angle) ** 2,
    shearMPa: pullMPa * Math.sin(angle) * Math.cos(angle),
  }
}

/**
 * Least ratio R to 1 at which the mean shear keeps to an allowable: angle = asin(2 tau / sigma) / 2. Null where every
 * angle does: no plane has more shear than half the pull.
 */
export function neededRatio(pullMPa: number, allowedShearMPa: number): number | null {
  if (!(pullMPa > 0 && allowedShearMPa > 0))
    throw new RangeError(
      `pull and allowable shear must be above 0 MPa, got ${pullMPa} and ${allowedShearMPa}`,
    )
  const sine = (2 * allowedShearMPa) / pullMPa
  return sine >= 1 ? null : 1 / Math.tan(Math.asin(sine) / 2)
}

/** Mean shear over the land of one ply that hands its own load across its own step: sigma t / step, MPa. */
export function stepShearMPa(plyPullMPa: number, plyThicknessMm: number, stepMm: number): number {
  if (!(stepMm > 0)) throw new RangeError(`the step must be above 0 mm, got ${stepMm}`)
  return (plyPullMPa * plyThicknessMm) / stepMm
}

function radians(deg: number): number {
  return (deg * Math.PI) / 180
}

function degrees(rad: number): number {
  return (rad * 180) / Math.PI
}
