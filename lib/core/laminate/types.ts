/** What the laminate and repair calculations must know of a material. */
export interface PlyMaterial {
  readonly name: string
  /** What it is for in a mould stack: fine surface ply or heavy bulk ply. */
  readonly role: 'surface' | 'bulk'
  /** Fibre areal weight, g/m², without resin. */
  readonly fibreArealWeightGsm: number
  readonly fibreDensityGcm3: number
  readonly fibreContent: FibreContent
  /** Width of the roll, mm. */
  readonly rollWidthMm: number
  /** Thickest stack that may be cured in one go by the shop's experience, mm; null when nobody has said. */
  readonly thickestCureMm: number | null
}

/** Fibre content as a volume fraction, or as resin mass fraction with the resin's density. */
export type FibreContent =
  | { readonly kind: 'fibre-volume'; readonly fibreVolumeFraction: number }
  | { readonly kind: 'resin-mass'; readonly resinMassFraction: number; readonly resinDensityGcm3: number }

/** One ply of a stack. Ply 1 of a stack is the surface ply. */
export interface Ply {
  readonly material: PlyMaterial
  /** Degrees from u, positive towards v, seen from n. */
  readonly directionDeg: number
}

/** Ramps and holds of a cure or post-cure. */
export interface CureSegment {
  readonly rampCPerMin: number
  readonly toC: number
  readonly holdMin: number
}

export interface CureCycle {
  readonly name: string
  readonly segments: readonly CureSegment[]
  /** Tg that the laminate has after this cycle, dry, degC; null when unknown. */
  readonly tgAfterC: number | null
}
