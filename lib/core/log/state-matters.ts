import { type IsoDate, shortDate } from '../dates'
import type { MouldState } from './kinds'
import { type Matter, matter } from './matter'
import { untilWords } from './over-day'
import { holdingStates } from './state'
import type { MouldCounts } from './types'

/** One line for each state that holds, so that whoever overrides one has seen them all. */
export function stateMatters(counts: MouldCounts, today: IsoDate): Matter[] {
  const states = holdingStates(counts).flatMap((holding) => stateMatter(holding, counts, today))
  const patches = counts.unprovedPatches.map((patch) =>
    matter({
      code: 'patch-unproved',
      severity: 'look',
      text: `Patch ${patch.number}, ${patch.place}: not yet proved`,
      word: 'proof pull',
      cure: 'Clear for a proof pull: a low-risk part, careful demoulding; then write it down as proved',
      settledBy: 'proved',
      patchId: patch.patchId,
    }),
  )
  const over = counts.flags.flatMap(({ state, reason, untilOn }) =>
    untilOn === null || untilOn >= today
      ? []
      : [
          matter({
            code: 'state-over',
            severity: 'look',
            text: `${state.charAt(0).toUpperCase()}${state.slice(1)} ${untilWords(untilOn, today)}: ${reason}`,
            word: 'over its day',
            cure: 'Say that it is no longer so, or until when it is',
            settledBy: 'state',
          }),
        ],
  )
  return [...states, ...over, ...patches]
}

function stateMatter(
  { state, reason }: { readonly state: MouldState; readonly reason: string },
  counts: MouldCounts,
  today: IsoDate,
): Matter[] {
  switch (state) {
    case 'retired':
    case 'away':
    case 'being built':
    case 'held':
    case 'under repair':
      return [
        matter({
          code: 'not-fit',
          severity: 'stop',
          text: reason ? `The mould is ${state}: ${reason}` : `The mould is ${state}`,
          word: state,
          cure:
            state === 'held' ? 'Inspect it and write down what was found' : 'Change its state with a reason',
          settledBy: state === 'held' ? 'inspection' : 'state',
        }),
      ]
    case 'part in it':
      return [
        matter({
          code: 'part-in-it',
          severity: 'stop',
          text: `Cleared on ${shortDate(counts.clearedOn ?? today, today)} and no pull since`,
          word: 'part in it',
          cure: 'Log the pull',
          settledBy: 'pull',
        }),
      ]
    case 'proof pull only':
    case 'racked':
    case 'fit for use':
      return []
  }
}
