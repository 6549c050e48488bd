import type { Finding } from '../result'
import type { JobLine } from './types'

/** The states of a patch plan, in the order in which a good one goes through them. */
export const planStates = ['sketched', 'signed', 'on the bench', 'laid', 'proved', 'put by'] as const
export type PlanState = (typeof planStates)[number]

interface Move {
  readonly to: PlanState
  /** What the move means in the shop. */
  readonly means: string
  /** A move back or away is only made with a reason. */
  readonly needsReason: boolean
}

const putBy: Move = { to: 'put by', means: 'not wanted now', needsReason: true }

/** A signed plan doesn't change: what was found not to fit is put by, and a new version is sketched. */
const moves: Readonly<Record<PlanState, readonly Move[]>> = {
  sketched: [{ to: 'signed', means: 'the plan is right and may be built', needsReason: false }, putBy],
  signed: [{ to: 'on the bench', means: 'the job lines are begun', needsReason: false }, putBy],
  'on the bench': [{ to: 'laid', means: 'laid, cured and post-cured', needsReason: false }, putBy],
  laid: [{ to: 'proved', means: 'a first pull came off well', needsReason: false }],
  proved: [],
  'put by': [],
}

const why: Readonly<Partial<Record<PlanState, string>>> = {
  'on the bench': 'The mould may be cut already: finish it, or put it by and sketch a new version.',
  laid: 'The patch is in the mould: prove it.',
  proved: 'A proved patch is part of the mould. Plan a new one for what comes next.',
  'put by': 'It was put by: sketch a new version.',
}

/** Where a plan may go from here. */
export function movesFrom(state: PlanState): readonly Move[] {
  return moves[state]
}

export interface MoveFacts {
  readonly findings: readonly Finding[]
  readonly becauses: Readonly<Record<string, string>>
  readonly jobLines: readonly Pick<JobLine, 'code' | 'title'>[]
  /** Codes of the job lines that are ticked. */
  readonly ticked: readonly string[]
  readonly reason: string | null
}

export type Allowed = { readonly ok: true } | { readonly ok: false; readonly reason: string }

/** May the plan make this move? The reason, in words with the cure, when not. */
export function mayMove(from: PlanState, to: PlanState, facts: MoveFacts): Allowed {
  const move = moves[from].find((each) => each.to === to)
  if (move === undefined) {
    const next = moves[from].map((each) => each.to).join(' or ')
    return no(`A plan that is ${from} can't become ${to}. ${why[from] ?? `From here it goes to ${next}.`}`)
  }
  if (move.needsReason && blank(facts.reason)) return no(`From ${from} to ${to}: say why.`)
  if (to === 'signed') return signable(facts.findings, facts.becauses)
  const open = neededFor(to, facts.jobLines).filter((line) => !facts.ticked.includes(line.code))
  if (open.length > 0) {
    const more = open.length > 1 ? ` and ${open.length - 1} more` : ''
    return no(`Not ${to} while job lines are open: ${open[0]!.title}${more}. Tick them first.`)
  }
  return { ok: true }
}

/** Laid: everything before dressing is done. Proved: everything is. */
function neededFor(to: PlanState, lines: MoveFacts['jobLines']): MoveFacts['jobLines'] {
  if (to === 'proved') return lines
  if (to !== 'laid') return []
  const dress = lines.findIndex((line) => line.code === 'dress')
  return dress === -1 ? lines : lines.slice(0, dress)
}

/** What a because is filed under: the finding's code and place. */
export function becauseKey(finding: Finding): string {
  return finding.place === null ? finding.code : `${finding.code} @ ${finding.place}`
}

/** A stop can't be signed; every look needs a because; notes need nothing. */
export function signable(findings: readonly Finding[], becauses: Readonly<Record<string, string>>): Allowed {
  const stop = findings.find((finding) => finding.severity === 'stop')
  if (stop !== undefined) {
    return no(`Can't be signed: ${stop.text} ${stop.cure ?? 'Change the plan.'}`)
  }
  const bare = findings.filter(
    (finding) => finding.severity === 'look' && blank(becauses[becauseKey(finding)] ?? null),
  )
  if (bare.length > 0) {
    const more = bare.length > 1 ? ` ${bare.length - 1} more need one too.` : ''
    return no(`Needs a because: ${bare[0]!.text}${more}`)
  }
  return { ok: true }
}

function blank(text: string | null): boolean {
  return text === null || text.trim() === ''
}

function no(reason: string): Allowed {
  return { ok: false, reason }
}
