/** Bonded sheets: E in MPa, thickness in mm, expansion in 1/K. Any other system of units does if all agree. */
export interface Adherend {
  readonly eMPa: number
  readonly thicknessMm: number
  readonly alphaPerK: number
}

export interface BondLine {
  readonly gMPa: number
  readonly thicknessMm: number
}

/** Elastic shear along a lap, x from -l/2 to +l/2 about its middle. */
export interface LapShear {
  /** Shear lag, 1/mm: the shear falls by e within 1/w of an end. */
  readonly wPerMm: number
  readonly meanMPa: number
  /** Highest absolute value, at one of the ends. */
  readonly highestMPa: number
  readonly atMPa: (xMm: number) => number
}

/**
 * Single lap by shear lag, bending left out (Volkersen): sheet 1 is pulled at -l/2, sheet 2 at +l/2 by a load a width, N/mm.
 */
export function singleLap(
  loadNPerMm: number,
  lengthMm: number,
  sheet1: Adherend,
  sheet2: Adherend,
  bond: BondLine,
): LapShear {
  checkLap(lengthMm, [sheet1, sheet2], bond)
  const [k1, k2] = [stiffness(sheet1), stiffness(sheet2)]
  const w = Math.sqrt((bond.gMPa / bond.thicknessMm) * (1 / k1 + 1 / k2))
  const half = (w * lengthMm) / 2
  const even = (loadNPerMm * w) / 2 / Math.sinh(half)
  const odd = (((loadNPerMm * w) / 2) * ((k2 - k1) / (k1 + k2))) / Math.cosh(half)
  return lapShear(w, lengthMm, loadNPerMm / lengthMm, even, odd)
}

/** The two parts of the shear of a double lap: from the load, and from what the sheets would grow apart. */
export interface DoubleLap {
  readonly all: LapShear
  readonly byLoad: LapShear
  readonly byHeat: LapShear
}

/**
 * Double lap by shear lag with the mismatch of expansion: one inner sheet between two outer ones (Shigley, section 9-9). The inner
 * sheet is pulled at +l/2; `changeK` from where the bond is free of stress.
 */
export function doubleLap(
  loadNPerMm: number,
  lengthMm: number,
  outer: Adherend,
  inner: Adherend,
  bond: BondLine,
  changeK: number,
): DoubleLap {
  checkLap(lengthMm, [outer, inner], bond)
  const [ko, ki] = [stiffness(outer), stiffness(inner)]
  const soft = 1 / ko + 2 / ki
  const w = Math.sqrt((bond.gMPa / bond.thicknessMm) * soft)
  const half = (w * lengthMm) / 2
  const even = (loadNPerMm * w) / 4 / Math.sinh(half)
  const odd = (((loadNPerMm * w) / 4) * ((2 * ko - ki) / (2 * ko + ki))) / Math.cosh(half)
  const heat = ((inner.alphaPerK - outer.alphaPerK) * changeK * w) / (soft * Math.cosh(half))
  const mean = loadNPerMm / (2 * lengthMm)
  return {
    all: lapShear(w, lengthMm, mean, even, odd + heat),
    byLoad: lapShear(w, lengthMm, mean, even, odd),
    byHeat: lapShear(w, lengthMm, 0, 0, heat),
  }
}

/** An adhesive that yields: shear strength, elastic strain up to it, plastic strain beyond. */
export interface YieldingBond {
  readonly yieldMPa: number
  readonly elasticStrain: number
  readonly plasticStrain: number
  readonly thicknessMm: number
}

export interface LongLap {
  /** Strain energy of the bond a surface, N/mm. */
  readonly energyNPerMm: number
  /** What a long double lap carries a width, N/mm, and at which sheet's end it gives way. */
  readonly loadNPerMm: number
  readonly endsAt: 'inner sheet' | 'outer sheet'
  readonly lambdaPerMm: number
  /** Plastic zones alone; with 2/lambda to reach the even trough; with 6/lambda for one that is lightly loaded and does not creep. */
  readonly plasticMm: number
  readonly reachingMm: number
  readonly restingMm: number
}

/** What a long double lap carries by elastic and plastic shear (Hart-Smith), equal sheets or not; no heat. */
export function longDoubleLap(outer: Adherend, inner: Adherend, bond: YieldingBond): LongLap {
  checkLap(1, [outer, inner], { gMPa: bond.yieldMPa, thicknessMm: bond.thicknessMm })
  if (!(bond.elasticStrain > 0 && bond.plasticStrain >= 0))
    throw new RangeError('strains of the adhesive must be above 0, the plastic one not below')
  const [ko, ki] = [stiffness(outer), stiffness(inner)]
  const energy = bond.thicknessMm * bond.yieldMPa * (bond.elasticStrain / 2 + bond.plasticStrain)
  const atInner = Math.sqrt(4 * energy * ki * (1 + ki / (2 * ko)))
  const atOuter = Math.sqrt(8 * energy * ko * (1 + (2 * ko) / ki))
  const load = Math.min(atInner, atOuter)
  const g = bond.yieldMPa / bond.elasticStrain
  const lambda = Math.sqrt((g / bond.thicknessMm) * (1 / ko + 2 / ki))
  const plasticMm = load / (2 * bond.yieldMPa)
  return {
    energyNPerMm: energy,
    loadNPerMm: load,
    endsAt: atInner <= atOuter ? 'inner sheet' : 'outer sheet',
    lambdaPerMm: lambda,
    plasticMm,
    reachingMm: plasticMm + 2 / lambda,
    restingMm: plasticMm + 6 / lambda,
  }
}

/** Shear that is even + odd about the middle: a cosh plus a sinh. */
function lapShear(w: number, lengthMm: number, meanMPa: number, even: number, odd: number): LapShear {
  const atMPa = (xMm: number) => even * Math.cosh(w * xMm) + odd * Math.sinh(w * xMm)
  const ends = [atMPa(-lengthMm / 2), atMPa(lengthMm / 2)].map(Math.abs)
  return { wPerMm: w, meanMPa, highestMPa: Math.max(...ends), atMPa }
}

const stiffness = ({ eMPa, thicknessMm }: Adherend) => eMPa * thicknessMm

function checkLap(lengthMm: number, sheets: readonly Adherend[], bond: BondLine): void {
  const above = [
    ['length of the lap', lengthMm],
    ['shear modulus of the bond', bond.gMPa],
    ['thickness of the bond', bond.thicknessMm],
    ...sheets.flatMap((sheet): [string, number][] => [
      ['modulus of a sheet', sheet.eMPa],
      ['thickness of a sheet', sheet.thicknessMm],
    ]),
  ] as const
  for (const [name, value] of above)
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`the ${name} must be above 0, got ${value}`)
}
