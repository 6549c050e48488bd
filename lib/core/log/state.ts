import type { MouldState } from './kinds'
import { overheatReasons } from './overheat'
import type { MouldCounts } from './types'

export interface MouldStanding {
  readonly state: MouldState
  /** Why, in a few words; empty when the state says it all. */
  readonly reason: string
  /** States that hold as well, told beside the first. */
  readonly also: readonly MouldState[]
}

/** Every state that holds and why, in the order of `mouldStates`; a state may hold for several reasons. */
export function holdingStates(
  counts: MouldCounts,
): readonly { readonly state: MouldState; readonly reason: string }[] {
  const holding: { state: MouldState; reason: string }[] = []
  const byHand = (state: MouldState) => {
    const flag = counts.flags.find((candidate) => candidate.state === state)
    if (flag) holding.push({ state, reason: flag.reason })
  }
  byHand('retired')
  byHand('away')
  byHand('being built')
  if (counts.clearedOn) {
    holding.push({ state: 'part in it', reason: counts.clearedForProof ? 'proof pull' : '' })
  }
  byHand('under repair')
  if (counts.planOnBench) {
    holding.push({
      state: 'under repair',
      reason: `Patch ${counts.planOnBench.number}, ${counts.planOnBench.place}`,
    })
  }
  byHand('held')
  for (const damage of counts.openDamage) {
    holding.push({
      state: 'held',
      reason: damage.areaName ? `${damage.what} (${damage.areaName})` : damage.what,
    })
  }
  for (const reason of overheatReasons(counts)) holding.push({ state: 'held', reason })
  for (const patch of counts.unprovedPatches) {
    holding.push({ state: 'proof pull only', reason: `Patch ${patch.number}, ${patch.place}` })
  }
  byHand('racked')
  return holding
}

/** The state of a mould: the first that holds, in the order of `mouldStates`; the others show beside it. */
export function mouldStanding(counts: MouldCounts): MouldStanding {
  const holding = holdingStates(counts)
  const first = holding[0]
  if (!first) return { state: 'fit for use', reason: '', also: [] }
  const also = holding.map((entry) => entry.state).filter((state) => state !== first.state)
  return { ...first, also: [...new Set(also)] }
}
