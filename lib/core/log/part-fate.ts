import type { LogData } from './kinds'

export type PartFate = LogData['pull']['partFate']

const fates = ['good', 'rework', 'scrapped'] as const satisfies readonly PartFate[]

/** What became of a part that came off several pieces: the worst that any of its pulls says. Null without a pull. */
export function worstFate(pulls: readonly { readonly partFate: PartFate }[]): PartFate | null {
  return fates[Math.max(...pulls.map((pull) => fates.indexOf(pull.partFate)))] ?? null
}
