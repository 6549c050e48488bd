import type { WorkingStep } from '../result'
import type { Recess } from './recess'
import { ratioOfStep, taperLengthMm } from './scarf'
import { taperWorking } from './taper-working'
import type { PatchInput, ScarfLengths } from './types'
import { sum } from './working-line'

export interface TaperPlan {
  readonly lengths: ScarfLengths
  /** Step that belongs to each replaced ply, in laying order, mm. */
  readonly stepsMm: readonly number[]
  /** How far each ply's outline lies beyond the opening, in laying order, mm. */
  readonly growthsMm: readonly number[]
  /** The surface ply's step was lengthened to the least step. */
  readonly leastStepBites: boolean
  readonly working: readonly WorkingStep[]
}

/**
 * Taper steps of the replaced plies. By ratio: s_i = R t_i t_measured / t_nominal, so that the steps add up to R
 * times the measured thickness of what is taken out; or a fixed step a ply. Only the surface ply has a least step.
 * Sanded scarf: ply k lies beyond the opening by s_1 + ... + s_k. Machined steps: the first ply is butted into the
 * opening and ply k lies beyond it by s_1 + ... + s_(k-1), so the last ply has no land of its own.
 */
export function planTaper(input: PatchInput, recess: Recess): TaperPlan {
  const { taper, rules, edge } = input
  const realMm = recess.plies.map((ply) => ply.thicknessMm * recess.scale)
  const byRatio = realMm.map((thickness) => taperLengthMm(taper.ratio, thickness))
  const byRatioMm = sum(byRatio)
  const byMmPerPlyMm = taper.mmPerPly * realMm.length
  const governs = governing(taper.use, byRatioMm, byMmPerPlyMm)
  let leastStepBites = false
  const stepsMm = recess.plies.map((ply, index) => {
    const step = governs === 'ratio' ? byRatio[index]! : taper.mmPerPly
    if (ply.number !== 1 || step >= rules.leastSurfaceStepMm) return step
    leastStepBites = true
    return rules.leastSurfaceStepMm
  })
  const lands = edge === 'scarf' ? stepsMm.length : stepsMm.length - 1
  const growthsMm = stepsMm.map((_, index) => sum(stepsMm.slice(0, edge === 'scarf' ? index + 1 : index)))
  const lengthMm = sum(stepsMm.slice(0, lands))
  const judgedMm = sum(realMm.slice(0, lands))
  const short = taperLengthMm(taper.ratio, judgedMm) - lengthMm
  const places = input.measuredThicknessMm
  const nominalMm = recess.parent.thicknessMm
  const lengths: ScarfLengths = {
    nominalThicknessMm: nominalMm,
    measuredThicknessMm: recess.measuredMm,
    measuredSpreadMm: places.length === 0 ? null : Math.max(...places) - Math.min(...places),
    differencePercent:
      recess.measuredMm === null ? null : ((recess.measuredMm - nominalMm) / nominalMm) * 100,
    byRatioNominalMm: taperLengthMm(taper.ratio, sum(recess.plies.map((ply) => ply.thicknessMm))),
    byRatioMm,
    byMmPerPlyMm,
    lengthMm,
    governs,
    ratioReached: judgedMm === 0 ? 0 : lengthMm / judgedMm,
    shortByMm: short > 1e-9 ? short : 0,
    ratioOfMmPerPly: recess.parent.plies.map((ply) =>
      ratioOfStep(taper.mmPerPly, ply.thicknessMm * recess.scale),
    ),
  }
  return {
    lengths,
    stepsMm,
    growthsMm,
    leastStepBites: leastStepBites && (edge === 'scarf' || recess.plies[lands]?.number !== 1),
    working: taperWorking(input, recess, { lengths, stepsMm, growthsMm, realMm, lands }),
  }
}

function governing(
  use: 'ratio' | 'mm-per-ply' | 'longer',
  byRatioMm: number,
  byMmPerPlyMm: number,
): 'ratio' | 'mm-per-ply' {
  if (use !== 'longer') return use
  return byRatioMm >= byMmPerPlyMm ? 'ratio' : 'mm-per-ply'
}
