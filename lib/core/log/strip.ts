import type { IsoDate } from '../dates'
import type { PullStrokes } from '../drawing/index'
import type { PullGrade } from './kinds'

/** A mould's pulls, coats and patches in the order of the log. */
export interface StripMarks {
  readonly pulls: readonly { readonly doneOn: IsoDate; readonly went: PullGrade; readonly cleared: boolean }[]
  readonly coats: readonly { readonly afterPull: number }[]
  readonly patches: readonly { readonly number: number; readonly afterPull: number }[]
}

/** The strokes of a pull strip; a season's mark stands before its first pull. */
export function pullStrokes(
  marks: StripMarks,
  seasons: readonly { readonly name: string; readonly startsOn: IsoDate }[],
): PullStrokes {
  return {
    pulls: marks.pulls.map(({ doneOn, went, cleared }) => ({ day: doneOn, went, cleared })),
    coats: marks.coats.map(({ afterPull }) => ({ afterPull })),
    patches: marks.patches.map(({ number, afterPull }) => ({
      fromPull: afterPull + 1,
      toPull: null,
      label: `Patch ${number}`,
    })),
    seasons: seasons.flatMap(({ name, startsOn }) => {
      const first = marks.pulls.findIndex((pull) => pull.doneOn >= startsOn)
      return first === -1 ? [] : [{ beforePull: first + 1, label: name }]
    }),
  }
}
