import type { IsoDate } from '../dates'
import { beforeLayUp } from './before-lay-up'
import { type MouldState, mouldStates } from './kinds'
import { nextChangeOn } from './next-change'
import { mouldStanding } from './state'
import type { MouldCounts, UpkeepRules } from './types'

/** What a rack keeps of a mould, and how long it holds when nothing more is written down. */
export interface Judgement {
  readonly state: MouldState
  /** Place among `mouldStates`, from 0. */
  readonly stateRank: number
  readonly stops: number
  readonly looks: number
  readonly notes: number
  /** The first shop day on which the passing of days alone may change it; null: never. */
  readonly changesOn: IsoDate | null
  /** The moment when the last coat that still dries is dry; null when none does. */
  readonly dryingUntil: string | null
}

/**
 * Raised whenever the shape of MouldCounts changes, or a view counts otherwise, or a judgement is made otherwise: what was
 * kept of an older edition is then counted and judged anew.
 */
export const countsEdition = 1

/** A mould's state and the number of its matters of each severity. `today` is the shop's day, `now` an ISO moment. */
export function judgement(counts: MouldCounts, rules: UpkeepRules, today: IsoDate, now: string): Judgement {
  const { state } = mouldStanding(counts)
  const matters = beforeLayUp(counts, rules, today, now)
  const of = (severity: 'stop' | 'look' | 'note') =>
    matters.filter((matter) => matter.severity === severity).length
  return {
    state,
    stateRank: mouldStates.indexOf(state),
    stops: of('stop'),
    looks: of('look'),
    notes: of('note'),
    changesOn: nextChangeOn(counts, rules, today),
    dryingUntil: dryingUntil(counts, rules, now),
  }
}

function dryingUntil(counts: MouldCounts, rules: UpkeepRules, now: string): string | null {
  const ends = counts.release
    .flatMap(({ coatAt }) => (coatAt === null ? [] : [Date.parse(coatAt) + rules.coatDryMin * 60_000]))
    .filter((end) => end > Date.parse(now))
  return ends.length === 0 ? null : new Date(Math.min(...ends)).toISOString()
}
