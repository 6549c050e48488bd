/** Angle of an even taper of `ratio` to 1, degrees from the laminate's face. */
export function scarfAngleDeg(ratio: number): number {
  return (Math.atan(1 / ratio) * 180) / Math.PI
}

/** Length of a taper, a lap or a tapered end of so much thickness: L = R t, mm. */
export function taperLengthMm(ratio: number, thicknessMm: number): number {
  return ratio * thicknessMm
}

/** Ratio that a fixed step gives on a ply of so much thickness. */
export function ratioOfStep(stepMm: number, thicknessMm: number): number {
  return stepMm / thicknessMm
}
