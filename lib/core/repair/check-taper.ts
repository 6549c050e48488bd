import type { Finding } from '../result'
import { figure } from '../units'
import type { Ground } from './ground'
import { clearNow, reachedAt } from './reach'
import type { Recess } from './recess'
import type { TaperPlan } from './taper'
import type { PatchInput } from './types'

/** Least ratio that the repair guides give: source netcomposites-scarfing. */
const leastUsualRatio = 20

/** The two rules for the taper against each other and against what is built. */
export function checkTaper(ground: Ground): Finding[] {
  const { input, recess, taper, place } = ground
  return [
    ...belowRatio(ground),
    ...rulesDisagree(input, recess, taper, place),
    ...steepRatio(input, place),
    ...leastStep(input, taper, place),
    ...(input.edge === 'steps' ? stepNotes(input, recess, place) : []),
  ]
}

function belowRatio(ground: Ground): Finding[] {
  const { input, taper, place } = ground
  const { lengthMm, shortByMm, ratioReached } = taper.lengths
  if (shortByMm === 0) return []
  const asked = figure(input.taper.ratio)
  const neededMm = lengthMm + shortByMm
  return [
    {
      code: 'taper-below-ratio',
      severity: 'look',
      text:
        `The taper built is ${figure(lengthMm)} mm, which is ${figure(ratioReached, 1)}:1; ` +
        `${asked}:1 needs ${figure(neededMm)} mm, so it is short by ${figure(shortByMm)} mm.`,
      place,
      cure: longerTaper(ground, neededMm),
      figures: { lengthMm, neededMm, ratioReached, shortByMm },
    },
  ]
}

/** The longer taper is only a cure where it reaches nothing that the shorter one keeps off. */
function longerTaper(ground: Ground, neededMm: number): string {
  const asked = figure(ground.input.taper.ratio)
  const reached = reachedAt(ground, neededMm - ground.taper.lengths.lengthMm)
  if (reached.length === 0) {
    const room = clearNow(ground) ? 'fits here' : 'reaches nothing that this one does not reach already'
    return `Build by ratio: ${figure(neededMm)} mm ${room} and is ${asked}:1.`
  }
  return `Choose which rule gives way: ${asked}:1 would come nearer than the rules allow to ${reached.join(', ')}.`
}

/** The rules agree for one ply thickness only, so on a stack of fine and heavy plies they never do. */
function rulesDisagree(input: PatchInput, recess: Recess, { lengths }: TaperPlan, place: string): Finding[] {
  const { ratio, mmPerPly } = input.taper
  if (Math.abs(lengths.byRatioMm - lengths.byMmPerPlyMm) < 0.05) return []
  const out = recess.plies.map((ply) => ({ ply, ratio: lengths.ratioOfMmPerPly[ply.number - 1]! }))
  const thickest = out.reduce((worst, each) => (each.ratio < worst.ratio ? each : worst))
  const thinnest = out.reduce((best, each) => (each.ratio > best.ratio ? each : best))
  const onPly = (each: typeof thickest) =>
    `${figure(each.ratio, 1)}:1 on ply ${each.ply.number} (${figure(each.ply.thicknessMm * recess.scale, 3)} mm)`
  const spread = thickest === thinnest ? onPly(thickest) : `${onPly(thickest)} and ${onPly(thinnest)}`
  return [
    {
      code: 'taper-rules-disagree',
      severity: 'note',
      text:
        `${figure(ratio)}:1 gives ${figure(lengths.byRatioMm, 1)} mm, ${figure(mmPerPly)} mm a ply gives ` +
        `${figure(lengths.byMmPerPlyMm, 1)} mm; ${governsWords(input, lengths.governs)}. ` +
        `${figure(mmPerPly)} mm a ply is ${spread}.`,
      place,
      cure: null,
      figures: {
        byRatioMm: lengths.byRatioMm,
        byMmPerPlyMm: lengths.byMmPerPlyMm,
        ratioOfMmPerPly: lengths.ratioOfMmPerPly,
      },
    },
  ]
}

function governsWords({ taper }: PatchInput, governs: 'ratio' | 'mm-per-ply'): string {
  const rule = governs === 'ratio' ? 'the ratio governs' : 'the rule of millimetres a ply governs'
  return `${rule}, ${taper.use === 'longer' ? 'being the longer' : 'as asked for'}`
}

/** The guides begin at 20:1 for light loads. */
function steepRatio({ taper }: PatchInput, place: string): Finding[] {
  if (taper.ratio >= leastUsualRatio) return []
  return [
    {
      code: 'ratio-below-usual',
      severity: 'note',
      text: `${figure(taper.ratio)}:1 is asked for; repair guides begin at ${leastUsualRatio}:1.`,
      place,
      cure: `Ask for ${leastUsualRatio}:1 or more where there is room.`,
      figures: { ratio: taper.ratio },
    },
  ]
}

function leastStep(input: PatchInput, taper: TaperPlan, place: string): Finding[] {
  if (!taper.leastStepBites) return []
  return [
    {
      code: 'surface-step-lengthened',
      severity: 'note',
      text: `The surface ply's step was lengthened to ${figure(input.rules.leastSurfaceStepMm)} mm: a feathered surface ply chips.`,
      place: `${place}, ply 1`,
      cure: null,
      figures: { leastSurfaceStepMm: input.rules.leastSurfaceStepMm },
    },
  ]
}

function stepNotes(input: PatchInput, recess: Recess, place: string): Finding[] {
  const last = recess.plies[recess.plies.length - 1]!
  const single = recess.plies.length === 1
  const notes: Finding[] = [
    {
      code: 'steps-land-off',
      severity: 'note',
      text: 'Steps cut by hand land one to three plies off, and take three to four times as long as a scarf.',
      place,
      cure: 'Router with a depth stop; check every land by its measured depth before the next.',
    },
  ]
  if (input.coverPlies.length === 0 || single) {
    notes.push({
      code: single ? 'ply-without-land' : 'last-ply-butted',
      severity: single ? 'look' : 'note',
      text: single
        ? `One ply with machined steps is butted all round: ply ${last.number} has no overlap.`
        : `With machined steps ply ${last.number}, laid last, is butted: no land and no cover ply laps it.`,
      place: `${place}, ply ${last.number}`,
      cure: single ? 'A sanded scarf gives it an overlap.' : 'A cover ply laps it.',
    })
  }
  return notes
}
