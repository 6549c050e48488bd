import { bounds, circle } from '#lib/core/geometry/index'
import type { Point, Region } from '#lib/core/geometry/types'
import type { PlyMaterial } from '#lib/core/laminate/types'
import { defaultRepairRules, type PatchInput, type PatchPlan, planPatch } from '#lib/core/repair/index'
import type { Finding } from '#lib/core/result'
import { rectangle } from '../drawing/sample-face'

const surface: PlyMaterial = {
  name: 'surface 200 twill',
  role: 'surface',
  fibreArealWeightGsm: 200,
  fibreDensityGcm3: 1.78,
  fibreContent: { kind: 'fibre-volume', fibreVolumeFraction: 0.486 },
  rollWidthMm: 1250,
  thickestCureMm: null,
}
const bulk: PlyMaterial = { ...surface, name: 'bulk 650 twill', role: 'bulk', fibreArealWeightGsm: 650 }
const directions = [0, 0, 45, 0, 45, 45, 0, 45, 0, 0] as const
const centre: Point = [760, 670]
const openingRadiusMm = 46

/** A round opening in a ten-ply mould; invented, for looking at drawings and sheets. */
export function sampleInput(changes?: Partial<PatchInput>): PatchInput {
  return changes === undefined ? standard : { ...standard, ...changes }
}

function standardInput(): PatchInput {
  return {
    side: 'pattern-back',
    edge: 'scarf',
    opening: { outer: circle(centre, openingRadiusMm), holes: [] },
    stack: directions.map((directionDeg, i) => ({
      material: i === 0 || i === 9 ? surface : bulk,
      directionDeg,
    })),
    removedPlies: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
    measuredThicknessMm: [5.9, 5.85, 5.95],
    taper: { ratio: 20, mmPerPly: 12.7, use: 'ratio' },
    coverPlies: [{ material: bulk, directionDeg: 0 }],
    area: {
      name: 'floor',
      boundary: rectangle(540, 300, 1600, 900),
      lines: [{ name: 'trim', kind: 'trim', points: rectangle(560, 320, 1560, 860), closed: true }],
      keepOuts: [{ name: 'rim', kind: 'flange', outline: rectangle(540, 300, 30, 900) }],
      dowels: [
        { tag: 'D02', at: centre, diameterMm: 8, bushDiameterMm: 20, through: true, isDatum: false },
        { tag: 'D03', at: [960, 860], diameterMm: 8, bushDiameterMm: 20, through: true, isDatum: true },
      ],
      oldPatches: [
        { name: 'Patch 3', face: rectangle(1000, 480, 120, 90), footprint: rectangle(960, 440, 200, 170) },
      ],
      grid: { originMm: [540, 1200], cellMm: 50 },
    },
    rules: defaultRepairRules,
    heat: { inUseC: 135, freeStandingC: 180, bondedC: 150 },
    cure: null,
    postCure: null,
    nextPartCureC: 120,
    patternAvailable: true,
  }
}

const standard = standardInput()

/** Planning is the same for the same input, so each input is planned once for all tests of a file. */
const planned = new WeakMap<PatchInput, ReturnType<typeof planPatch>>()

function outcomeOf(input: PatchInput): ReturnType<typeof planPatch> {
  const outcome = planned.get(input) ?? planPatch(input)
  planned.set(input, outcome)
  return outcome
}

/** The plan for the input; `outline` puts one given outline on every ply instead of the computed ones. */
export function samplePlan(input: PatchInput = sampleInput(), outline?: readonly Region[]): PatchPlan {
  const outcome = outcomeOf(input)
  if (!outcome.ok) throw new Error(`the sample has no plan: ${outcome.reason}`)
  const plan = outcome.result.value
  if (outline === undefined) return plan
  const [uMin, vMin, uMax, vMax] = bounds(outline)
  const boundsMm = [uMin, vMin, uMax, vMax] as const
  const acrossMm = [uMax - uMin, vMax - vMin] as const
  return {
    ...plan,
    footprint: outline,
    plies: plan.plies.map((ply) => ({ ...ply, outline, boundsMm, acrossMm })),
  }
}

/** What the planning found on the sample. */
export function sampleFindings(input: PatchInput): readonly Finding[] {
  const outcome = outcomeOf(input)
  return outcome.ok ? outcome.result.findings : outcome.findings
}
