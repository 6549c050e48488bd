import type { StackedPly } from '../laminate'
import type { WorkingStep } from '../result'
import { figure } from '../units'
import type { Recess } from './recess'
import { scarfAngleDeg, taperLengthMm } from './scarf'
import type { PatchInput, ScarfLengths } from './types'
import { line, sum } from './working-line'

export interface TaperNumbers {
  readonly lengths: ScarfLengths
  readonly stepsMm: readonly number[]
  readonly growthsMm: readonly number[]
  readonly realMm: readonly number[]
  readonly lands: number
}

/** The lines of hand calculation behind a taper, each figure that is shown. */
export function taperWorking(input: PatchInput, recess: Recess, numbers: TaperNumbers): WorkingStep[] {
  return [
    ...measuredLines(input, recess, numbers.lengths),
    ...lengthLines(input, recess, numbers),
    ...stepLines(input, recess, numbers),
  ]
}

function measuredLines(input: PatchInput, recess: Recess, lengths: ScarfLengths): WorkingStep[] {
  const places = input.measuredThicknessMm
  if (recess.measuredMm === null) return []
  return [
    line(
      't_meas',
      'measured thickness, mean',
      'sum of places / number',
      `(${places.map((each) => figure(each)).join(' + ')}) / ${places.length}`,
      recess.measuredMm,
      'mm',
    ),
    line(
      'spread',
      'spread of the measured places',
      'highest - lowest',
      `${figure(Math.max(...places))} - ${figure(Math.min(...places))}`,
      lengths.measuredSpreadMm!,
      'mm',
    ),
    line(
      'diff',
      'measured against nominal',
      '(t_meas - t_nom) / t_nom x 100',
      `(${figure(recess.measuredMm, 3)} - ${figure(recess.parent.thicknessMm, 3)}) / ${figure(recess.parent.thicknessMm, 3)} x 100`,
      lengths.differencePercent!,
      '%',
    ),
  ]
}

function lengthLines(
  input: PatchInput,
  recess: Recess,
  { lengths, realMm, stepsMm, lands }: TaperNumbers,
): WorkingStep[] {
  const { ratio, mmPerPly } = input.taper
  const realOf = realThickness(recess)
  const nominalOutMm = sum(recess.plies.map((ply) => ply.thicknessMm))
  const judgedMm = sum(realMm.slice(0, lands))
  const lines = [
    line(
      't_out',
      'real thickness of what is taken out',
      recess.measuredMm === null ? 'sum of t_i' : 'sum of t_i x t_meas / t_nom',
      realOf(nominalOutMm, 3),
      sum(realMm),
      'mm',
    ),
    line(
      'L_nom',
      'length by ratio on the nominal thickness',
      'R x sum of t_i',
      `${figure(ratio)} x ${figure(nominalOutMm, 3)}`,
      lengths.byRatioNominalMm,
      'mm',
      'netcomposites-scarfing',
    ),
    line(
      'L_R',
      'length by ratio',
      'R x t_out',
      `${figure(ratio)} x ${figure(sum(realMm), 3)}`,
      lengths.byRatioMm,
      'mm',
      'netcomposites-scarfing',
    ),
    line(
      'L_mm',
      'length by millimetres a ply',
      's x n',
      `${figure(mmPerPly)} x ${realMm.length}`,
      lengths.byMmPerPlyMm,
      'mm',
      'netcomposites-scarfing',
    ),
    line(
      'L',
      input.edge === 'scarf' ? 'length built' : 'length built, lands of all plies but the last',
      'sum of s_i',
      lands === 0
        ? 'no land'
        : stepsMm
            .slice(0, lands)
            .map((step) => figure(step))
            .join(' + '),
      lengths.lengthMm,
      'mm',
    ),
  ]
  if (lands === 0) return lines
  lines.push(
    line(
      'R_built',
      'ratio reached',
      'L / t',
      `${figure(lengths.lengthMm)} / ${figure(judgedMm, 3)}`,
      lengths.ratioReached,
      '1',
    ),
    line(
      'angle',
      'angle of the taper',
      'atan(1 / R_built)',
      `atan(1 / ${figure(lengths.ratioReached)})`,
      scarfAngleDeg(lengths.ratioReached),
      '°',
    ),
    line(
      'short',
      'short of the ratio asked for',
      'R x t - L, not below 0',
      `${figure(ratio)} x ${figure(judgedMm, 3)} - ${figure(lengths.lengthMm)}`,
      lengths.shortByMm,
      'mm',
    ),
  )
  return lines
}

/** "0.6917 x 6.114 / 5.9959", or the bare thickness where nothing was measured. */
function realThickness({ measuredMm, parent }: Recess): (nominalMm: number, decimals: number) => string {
  return (nominalMm, decimals) =>
    measuredMm === null
      ? figure(nominalMm, decimals)
      : `${figure(nominalMm, decimals)} x ${figure(measuredMm, 4)} / ${figure(parent.thicknessMm, 4)}`
}

/** Machined steps: the ply that is laid last has no land, so no step of its own. */
function stepLines(input: PatchInput, recess: Recess, numbers: TaperNumbers): WorkingStep[] {
  const { lengths, stepsMm, growthsMm, lands } = numbers
  const own = recess.plies.slice(0, lands).map((ply, index) => stepLine(input, recess, numbers, ply, index))
  const growths = growthsMm.map((growth, index) => {
    const taken = stepsMm.slice(0, input.edge === 'scarf' ? index + 1 : index)
    return line(
      `g_${index + 1}`,
      `ply laid no. ${index + 1}: beyond the opening`,
      taken.length === 0 ? 'butted' : 'sum of s_i',
      taken.length === 0 ? '0' : taken.map((step) => figure(step)).join(' + '),
      growth,
      'mm',
    )
  })
  const realOf = realThickness(recess)
  const ratios = lengths.ratioOfMmPerPly.map((ratio, index) =>
    line(
      `R_mm${index + 1}`,
      `ratio of ${figure(input.taper.mmPerPly)} mm on ply ${index + 1}`,
      recess.measuredMm === null ? 's / t_i' : 's / (t_i x t_meas / t_nom)',
      `${figure(input.taper.mmPerPly)} / ${bracketed(realOf(recess.parent.plies[index]!.thicknessMm, 4))}`,
      ratio,
      '1',
    ),
  )
  return [...own, ...growths, ...ratios]
}

function bracketed(numbers: string): string {
  return numbers.includes(' ') ? `(${numbers})` : numbers
}

function stepLine(
  input: PatchInput,
  recess: Recess,
  { lengths, stepsMm, realMm }: TaperNumbers,
  ply: StackedPly,
  index: number,
): WorkingStep {
  const { ratio, mmPerPly } = input.taper
  const step = stepsMm[index]!
  const byRatio = lengths.governs === 'ratio'
  const least = step > (byRatio ? taperLengthMm(ratio, realMm[index]!) : mmPerPly)
  const numbers = byRatio
    ? `${figure(ratio)} x ${realThickness(recess)(ply.thicknessMm, 4)}`
    : figure(mmPerPly)
  const formula = byRatio ? (recess.measuredMm === null ? 'R x t_i' : 'R x t_i x t_meas / t_nom') : 's'
  return line(
    `s_${index + 1}`,
    `step of ply ${ply.number}, laid no. ${index + 1}`,
    least ? `${formula}, at least the surface ply's least step` : formula,
    least ? `${numbers}, at least ${figure(input.rules.leastSurfaceStepMm)}` : numbers,
    step,
    'mm',
    least ? 'shop-rule' : byRatio ? 'derived' : 'netcomposites-scarfing',
  )
}
