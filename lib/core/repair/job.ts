import type { CureCycle } from '../laminate/types'
import { figure } from '../units'
import type { Recess } from './recess'
import type { TaperPlan } from './taper'
import type { JobLine, PatchInput, PlannedPly } from './types'

/** What the job lines must know of a plan. */
export interface Job {
  readonly input: PatchInput
  readonly recess: Recess
  readonly taper: TaperPlan
  readonly plies: readonly PlannedPly[]
  readonly place: string
  /** Tags of locating points that stand in the opening and are set anew. */
  readonly dowelsInOpening: readonly string[]
  /** Those of them that are datums. */
  readonly datumsInOpening: readonly string[]
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

/** What the mould is laid against when it is worked against the pattern. */
export function patternWord(job: Job): 'pattern' | 'splash' {
  return job.input.patternAvailable ? 'pattern' : 'splash'
}

/** "0.5 degC/min to 60 degC, hold 8 h; 0.2 degC/min to 180 degC, hold 4 h". */
export function cycleText(cycle: CureCycle): string {
  let before = Number.NEGATIVE_INFINITY
  const parts = cycle.segments.map(({ rampCPerMin, toC, holdMin }) => {
    const way = toC < before ? 'cool at' : 'ramp'
    before = toC
    const hold = holdMin > 0 ? `, hold ${durationText(holdMin)}` : ''
    return `${way} ${figure(Math.abs(rampCPerMin), 3)} degC/min to ${figure(toC, 1)} degC${hold}`
  })
  return parts.join('; ')
}

function durationText(minutes: number): string {
  const hours = Math.floor(minutes / 60)
  const rest = figure(minutes - hours * 60, 0)
  if (hours === 0) return `${rest} min`
  return rest === '0' ? `${hours} h` : `${hours} h ${rest} min`
}
