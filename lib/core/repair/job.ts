import type { CureCycle } from '../laminate/types'
import { figure } from '../units'
import type { Recess } from './recess'
import type { TakeOff } from './take-off'
import type { TaperPlan } from './taper'
import type { JobLine, PatchInput, PlannedPly } from './types'
import { sum } from './working-line'

/** What the job lines must know of a plan. */
export interface Job {
  readonly input: PatchInput
  readonly recess: Recess
  readonly taper: TaperPlan
  readonly plies: readonly PlannedPly[]
  readonly place: string
  /** Plies that are cut in pieces because the roll is too narrow. */
  readonly spliced: TakeOff['spliced']
  /** Tags of locating points that stand in the opening and go with it. */
  readonly dowelsInOpening: readonly string[]
  /** Tags of those outside it that plies run over: they are taken out first. */
  readonly dowelsUnderPlies: readonly string[]
  /** Those of both that are datums. */
  readonly datumsSetAnew: readonly string[]
}

interface More {
  readonly cautions?: readonly string[]
  /** Ticked by a second person; one person and no cautions unless told. */
  readonly secondPerson?: boolean
}

export function jobLine(code: string, title: string, detail: string, more: More = {}): JobLine {
  return { code, title, detail, cautions: more.cautions ?? [], secondPerson: more.secondPerson ?? false }
}

/** The face that is worked on: where lines are marked and depths are measured from. */
export function workedFace(job: Job): 'back' | 'tool face' {
  return job.input.side === 'place-face' ? 'tool face' : 'back'
}

/** What the tool face is cut by. */
export function faceCut(job: Job): 'the opening' | 'the largest ply' {
  return workedFace(job) === 'back' ? 'the opening' : 'the largest ply'
}

/** Tags of the locating points that are set anew when the patch is in. */
export function setAnew(job: Job): readonly string[] {
  return [...job.dowelsInOpening, ...job.dowelsUnderPlies]
}

/** Real depth of the recess at the edge of the opening, mm. */
export function depthMm(job: Job): number {
  return sum(job.recess.plies.map((ply) => ply.thicknessMm)) * job.recess.scale
}

/** What the mould is laid against when it is worked against the pattern. */
export function patternWord(job: Job): 'pattern' | 'splash' {
  return job.input.patternAvailable ? 'pattern' : 'splash'
}

/** "ramp 0.5 °C/min to 60 °C, hold 8 h; ramp 0.2 °C/min to 180 °C, hold 4 h". */
export function cycleText(cycle: CureCycle): string {
  let before = Number.NEGATIVE_INFINITY
  const parts = cycle.segments.map(({ rampCPerMin, toC, holdMin }) => {
    const way = toC < before ? 'cool at' : 'ramp'
    before = toC
    const hold = holdMin > 0 ? `, hold ${durationText(holdMin)}` : ''
    return `${way} ${figure(Math.abs(rampCPerMin), 3)} °C/min to ${figure(toC, 1)} °C${hold}`
  })
  return parts.join('; ')
}

function durationText(minutes: number): string {
  const hours = Math.floor(minutes / 60)
  const rest = figure(minutes - hours * 60, 0)
  if (hours === 0) return `${rest} min`
  return rest === '0' ? `${hours} h` : `${hours} h ${rest} min`
}
