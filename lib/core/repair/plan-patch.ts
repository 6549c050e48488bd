import { area, areaOutside } from '../geometry/index'
import type { Region } from '../geometry/types'
import { curedPly } from '../laminate'
import type { Finding, Outcome, WorkingStep } from '../result'
import { figure } from '../units'
import { checkBack } from './check-back'
import { checkDowels } from './check-dowels'
import { checkEdge } from './check-edge'
import { checkFace } from './check-face'
import { checkHeat } from './check-heat'
import { checkMaterial } from './check-material'
import { checkSide } from './check-side'
import { checkTaper } from './check-taper'
import { checkThickness } from './check-thickness'
import { planCut } from './cut'
import { dowelsInOpening, dowelsUnderPlies, type Ground, surveyGround } from './ground'
import { jobLinesOf } from './job-lines'
import { outlinesOf, outlineWorking } from './outlines'
import { type Recess, recessOf } from './recess'
import { sectionOf } from './section'
import { type TakeOff, takeOff } from './take-off'
import { planTaper } from './taper'
import type { Dowel, PatchInput, PatchPlan, PlannedPly } from './types'
import { assertPlannable } from './valid'
import { line, sum } from './working-line'

/**
 * Plans a patch from the cut outwards: which plies, how far each goes, what they weigh off the roll, in which order
 * the work is done, and what there is to say about it. No plan, with the reason in words, when the plies can't be
 * reached from the chosen side or the opening has no area. RangeError on numbers that no shop means.
 */
export function planPatch(input: PatchInput): Outcome<PatchPlan> {
  assertPlannable(input)
  const removed = recessOf(input)
  if (!removed.ok) return noPlan(removed.reason)
  const drawn = planCut(input)
  if (!drawn.ok) return noPlan(drawn.reason)
  const narrow = narrowRoll(input)
  if (narrow !== null) return noPlan(narrow)
  const { recess } = removed
  const { cut } = drawn
  const taper = planTaper(input, recess)
  const ground = surveyGround(input, recess, taper, cut.opening)
  const plies = outlinesOf(ground)
  const off = takeOff(plies, input.rules.cuttingAllowanceMm)
  const thickness = thicknessAsBuilt(recess)
  const plan = composePlan(ground, {
    plies,
    off,
    openingAreaMm2: cut.areaMm2,
    builtThicknessMm: thickness.value,
  })
  return {
    ok: true,
    result: {
      value: plan,
      method: methodName(input, taper.lengths.governs),
      working: [
        ...recess.parent.working,
        ...coverWorking(input),
        ...taper.working,
        thickness,
        ...planWorking(plan),
        ...off.working,
      ],
      findings: sorted([...cut.findings, ...findingsOf(ground, plan, off)]),
    },
  }
}

interface Parts {
  readonly plies: readonly PlannedPly[]
  readonly off: TakeOff
  readonly openingAreaMm2: number
  readonly builtThicknessMm: number
}

function composePlan(ground: Ground, { plies, off, openingAreaMm2, builtThicknessMm }: Parts): PatchPlan {
  const { input, recess, taper, opening, place } = ground
  const footprint = footprintOf(ground, plies)
  const inOpening = dowelsInOpening(ground)
  const underPlies = dowelsUnderPlies(ground)
  return {
    lengths: taper.lengths,
    plies,
    opening,
    openingAreaMm2,
    face: faceOf(ground, plies),
    footprint,
    footprintAreaMm2: area(footprint),
    builtThicknessMm,
    takeOff: off.materials,
    jobLines: jobLinesOf({
      input,
      recess,
      taper,
      plies,
      place,
      spliced: off.spliced,
      dowelsInOpening: tagsOf(inOpening),
      dowelsUnderPlies: tagsOf(underPlies),
      datumsSetAnew: tagsOf([...inOpening, ...underPlies].filter((dowel) => dowel.isDatum)),
    }),
    section: sectionOf(input, recess, plies),
    place,
  }
}

function tagsOf(dowels: readonly Dowel[]): string[] {
  return dowels.map((dowel) => dowel.tag)
}

function findingsOf(ground: Ground, plan: PatchPlan, off: TakeOff): Finding[] {
  const { input, recess, place } = ground
  return [
    ...checkSide(ground),
    ...checkEdge(ground, plan.plies, areaOutside([plan.opening], input.area.boundary)),
    ...checkDowels(ground),
    ...checkFace(ground),
    ...checkBack(ground),
    ...checkTaper(ground),
    ...checkThickness(input, recess, plan.builtThicknessMm, place),
    ...checkHeat(input, place),
    ...checkMaterial(plan.plies, off, place),
  ]
}

/** What stays of the parent as it was measured, and the new plies at their own thickness. */
function thicknessAsBuilt({ plies, parent, scale }: Recess): WorkingStep {
  const outMm = sum(plies.map((ply) => ply.thicknessMm))
  const keptMm = (parent.thicknessMm - outMm) * scale
  return line(
    't_built',
    'thickness as built, without cover plies',
    'kept x t_meas / t_nom + sum of t_i',
    `${figure(keptMm, 3)} + ${figure(outMm, 3)}`,
    keptMm + outMm,
    'mm',
  )
}

function narrowRoll({ stack, coverPlies, rules }: PatchInput): string | null {
  const narrow = [...stack, ...coverPlies].find(
    ({ material }) => material.rollWidthMm <= 2 * rules.cuttingAllowanceMm,
  )
  if (narrow === undefined) return null
  const { name, rollWidthMm } = narrow.material
  return `The cutting allowance leaves nothing of the roll of ${name}, ${figure(rollWidthMm)} mm wide. Correct one of them.`
}

/** Lines for materials that only cover plies bring in. */
function coverWorking({ stack, coverPlies }: PatchInput): WorkingStep[] {
  const inStack = new Set(stack.map((ply) => ply.material.name))
  const added = new Map(coverPlies.map((cover) => [cover.material.name, cover.material]))
  return [...added.values()]
    .filter(({ name }) => !inStack.has(name))
    .flatMap((material) => curedPly(material).working)
}

function noPlan(reason: string): Outcome<PatchPlan> {
  return { ok: false, reason, findings: [] }
}

function faceOf(ground: Ground, plies: readonly PlannedPly[]): readonly Region[] {
  if (!ground.recess.breaksFace) return []
  if (ground.input.side !== 'place-face') return [ground.opening]
  return plies.filter((ply) => ply.replaces !== null).at(-1)!.outline
}

/** Outlines grow in laying order, so the last one on the back holds all others. */
function footprintOf(ground: Ground, plies: readonly PlannedPly[]): readonly Region[] {
  if (ground.backMm === null) return []
  if (ground.input.side === 'place-face' && ground.input.coverPlies.length === 0) return [ground.opening]
  return plies.at(-1)!.outline
}

function planWorking(plan: PatchPlan): WorkingStep[] {
  const openingLine = line(
    'A_0',
    'area of the opening',
    'area inside the outline as cut',
    `outline of ${plan.opening.outer.length} points`,
    plan.openingAreaMm2,
    'mm²',
  )
  if (plan.footprint.length === 0) return [openingLine, ...outlineWorking(plan.plies)]
  const footprintLine = line(
    'A_back',
    'footprint on the back',
    'area of the largest outline there',
    'cover plies included',
    plan.footprintAreaMm2,
    'mm²',
  )
  return [openingLine, ...outlineWorking(plan.plies), footprintLine]
}

function methodName(input: PatchInput, governs: 'ratio' | 'mm-per-ply'): string {
  const edge = input.edge === 'scarf' ? 'sanded scarf' : 'machined steps'
  return `${edge}, ${governs === 'ratio' ? `${figure(input.taper.ratio)}:1` : `${figure(input.taper.mmPerPly)} mm a ply`}, true offsets with round corners`
}

/** Worst first; then by code and place, so that the order of the input says nothing. */
function sorted(findings: readonly Finding[]): Finding[] {
  const rank = { stop: 0, look: 1, note: 2 }
  const key = (finding: Finding) =>
    `${rank[finding.severity]} ${finding.code} ${finding.place ?? ''} ${finding.text}`
  const keyed = findings.map((finding) => [key(finding), finding] as const)
  return keyed.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, finding]) => finding)
}
