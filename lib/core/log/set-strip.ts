import type { IsoDate } from '../dates'
import type { PullStrokes } from '../drawing/index'
import { type PullGrade, pullGrades } from './kinds'

/** A pull off one piece of a split mould. */
export interface PullOfPiece {
  readonly id: string
  readonly mouldId: string
  readonly doneOn: IsoDate
  readonly went: PullGrade
  readonly cleared: boolean
  /** The same for the pulls that gave one part: its serial, or the act that wrote them; null: not known. */
  readonly partKey: string | null
}

/** One part off a split mould. */
export interface PullOfSet {
  readonly doneOn: IsoDate
  /** As it went on the piece where it went hardest. */
  readonly went: PullGrade
  /** Every piece that gave it was cleared. */
  readonly cleared: boolean
}

/** Pulls of the pieces as parts of the whole, oldest first. A pull that names no part stands for itself. */
export function pullsOfSet(pulls: readonly PullOfPiece[]): readonly PullOfSet[] {
  const parts = new Map<string, PullOfSet>()
  for (const pull of pulls) {
    const key = pull.partKey ?? pull.id
    const known = parts.get(key)
    parts.set(key, known ? together(known, pull) : pull)
  }
  return [...parts.values()]
    .map(({ doneOn, went, cleared }) => ({ doneOn, went, cleared }))
    .sort((a, b) => (a.doneOn < b.doneOn ? -1 : a.doneOn > b.doneOn ? 1 : 0))
}

function together(a: PullOfSet, b: PullOfSet): PullOfSet {
  return {
    // biome-ignore lint/complexity/useMathMinMax: days are text
    doneOn: a.doneOn > b.doneOn ? a.doneOn : b.doneOn,
    went: pullGrades.indexOf(a.went) >= pullGrades.indexOf(b.went) ? a.went : b.went,
    cleared: a.cleared && b.cleared,
  }
}

/** The strokes of a split mould's strip: one for each part, with the patches of every piece and the seasons. */
export function setStrokes(
  pulls: readonly PullOfPiece[],
  patches: readonly { readonly code: string; readonly number: number; readonly doneOn: IsoDate }[],
  seasons: readonly { readonly name: string; readonly startsOn: IsoDate }[],
): PullStrokes {
  const parts = pullsOfSet(pulls)
  return {
    pulls: parts.map(({ doneOn, went, cleared }) => ({ day: doneOn, went, cleared })),
    coats: [],
    patches: patches.map(({ code, number, doneOn }) => ({
      fromPull: parts.filter((part) => part.doneOn <= doneOn).length + 1,
      toPull: null,
      label: `${code}, patch ${number}`,
    })),
    seasons: seasons.flatMap(({ name, startsOn }) => {
      const first = parts.findIndex((part) => part.doneOn >= startsOn)
      return first === -1 ? [] : [{ beforePull: first + 1, label: name }]
    }),
  }
}
