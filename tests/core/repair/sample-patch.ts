import type { Loop, Point } from '#lib/core/geometry/types'
import type { CureCycle, Ply, PlyMaterial } from '#lib/core/laminate/types'
import {
  type Dowel,
  defaultRepairRules,
  type PatchArea,
  type PatchInput,
  type PatchPlan,
  planPatch,
} from '#lib/core/repair/index'
import type { Finding, Result } from '#lib/core/result'

/** Invented materials, openings and areas for tests of the planner. */

export const surfaceTwill: PlyMaterial = {
  name: '200 twill',
  role: 'surface',
  fibreArealWeightGsm: 200,
  fibreDensityGcm3: 1.78,
  fibreContent: { kind: 'resin-mass', resinMassFraction: 0.42, resinDensityGcm3: 1.22 },
  rollWidthMm: 1250,
  thickestCureMm: 12,
}

export const bulkTwill: PlyMaterial = {
  ...surfaceTwill,
  name: '650 twill',
  role: 'bulk',
  fibreArealWeightGsm: 650,
  fibreContent: { kind: 'resin-mass', resinMassFraction: 0.38, resinDensityGcm3: 1.22 },
}

/** A material that cures to exactly this thickness. */
export function plyOf(thicknessMm: number, directionDeg = 0): Ply {
  const fibreVolumeFraction = 0.55
  const material: PlyMaterial = {
    ...bulkTwill,
    name: `${thicknessMm} mm ply`,
    fibreArealWeightGsm: thicknessMm * 1000 * 1.78 * fibreVolumeFraction,
    fibreContent: { kind: 'fibre-volume', fibreVolumeFraction },
  }
  return { material, directionDeg }
}

/** 1-4-1: a surface ply, four bulk plies, a surface ply; mirrored. */
export const sixPlies: readonly Ply[] = [0, 0, 45, 45, 0, 0].map((directionDeg, index) => ({
  material: index === 0 || index === 5 ? surfaceTwill : bulkTwill,
  directionDeg,
}))

export function roundLoop(centre: Point, radiusMm: number, points = 180): Loop {
  return Array.from({ length: points }, (_, index) => {
    const turn = (2 * Math.PI * index) / points
    return [centre[0] + radiusMm * Math.cos(turn), centre[1] + radiusMm * Math.sin(turn)] as const
  })
}

export function boxLoop(u0: number, v0: number, u1: number, v1: number): Loop {
  return [
    [u0, v0],
    [u1, v0],
    [u1, v1],
    [u0, v1],
  ]
}

/** A 2 m square round the origin, with nothing on it; cell A1 begins at its top left corner. */
export const bareArea: PatchArea = {
  name: 'floor',
  boundary: boxLoop(-1000, -1000, 1000, 1000),
  lines: [],
  keepOuts: [],
  dowels: [],
  oldPatches: [],
  grid: { originMm: [-1000, 1000], cellMm: 100 },
}

export function dowel(tag: string, at: Point, changes: Partial<Dowel> = {}): Dowel {
  return { tag, at, diameterMm: 8, bushDiameterMm: 20, through: true, isDatum: false, ...changes }
}

export function cycle(name: string, hottestC: number, tgAfterC: number | null): CureCycle {
  return {
    name,
    segments: [
      { rampCPerMin: 0.5, toC: 60, holdMin: 120 },
      { rampCPerMin: 0.2, toC: hottestC, holdMin: 480 },
    ],
    tgAfterC,
  }
}

/** A plan without anything to say: round opening of 40 mm radius far from everything, measured as nominal. */
export function quietPatch(changes: Partial<PatchInput> = {}): PatchInput {
  return {
    side: 'pattern-back',
    edge: 'scarf',
    opening: { outer: roundLoop([0, 0], 40), holes: [] },
    stack: sixPlies,
    removedPlies: [1, 2, 3, 4, 5, 6],
    measuredThicknessMm: [3.2, 3.25, 3.24],
    taper: { ratio: 20, mmPerPly: 12.7, use: 'ratio' },
    coverPlies: [],
    area: bareArea,
    rules: { ...defaultRepairRules, leastSurfaceStepMm: 0 },
    heat: { inUseC: 140, freeStandingC: 200, bondedC: 160 },
    cure: cycle('first cure', 65, 70),
    postCure: cycle('post-cure', 130, 165),
    nextPartCureC: 120,
    patternAvailable: true,
    ...changes,
  }
}

export function planned(input: PatchInput): Result<PatchPlan> {
  const outcome = planPatch(input)
  if (!outcome.ok) throw new Error(outcome.reason)
  return outcome.result
}

export function found(input: PatchInput, code: string): Finding | undefined {
  return planned(input).findings.find((finding) => finding.code === code)
}

export function codes(input: PatchInput): string[] {
  return planned(input).findings.map((finding) => finding.code)
}
