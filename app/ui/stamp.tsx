/** What a state weighs: fit, due, held, or nothing yet. */
export type Weight = 'good' | 'due' | 'held' | 'soft'

const weights: Readonly<Record<string, Weight>> = {
  'fit for use': 'good',
  racked: 'good',
  proved: 'good',
  'proof pull only': 'due',
  'part in it': 'due',
  'under repair': 'due',
  'on the bench': 'due',
  laid: 'due',
  signed: 'good',
  held: 'held',
  away: 'soft',
  'being built': 'soft',
  retired: 'soft',
  sketched: 'soft',
  'put by': 'soft',
  good: 'good',
  'to rework': 'due',
  scrapped: 'held',
  'no pull names it': 'due',
  'can be used': 'good',
  'gone or unfit': 'held',
  fit: 'good',
  'use first': 'due',
  low: 'due',
  late: 'held',
  'out life gone': 'held',
  empty: 'held',
  closed: 'soft',
}

export function weightOf(state: string): Weight {
  return weights[state] ?? 'soft'
}

/** The state as a stamp: a word first, the reason below it. */
export function Stamp({ state, reason = '' }: { readonly state: string; readonly reason?: string }) {
  const word = state.charAt(0).toUpperCase() + state.slice(1)
  return (
    <span className="stamp" style={{ color: `var(--${weightOf(state)})` }}>
      {word}
      {reason ? (
        <>
          <br />
          <small>{reason}</small>
        </>
      ) : null}
    </span>
  )
}
