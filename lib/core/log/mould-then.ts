import type { LogKind } from './kinds'
import type { LogEntry } from './types'

type Of<Kind extends LogKind> = Extract<LogEntry, { kind: Kind }>

/** A repair or patch that lay in the mould, and whether it was trusted by then. */
export interface RepairThen {
  readonly entry: Of<'patch-laid'> | Of<'repair'>
  /** Pulls that it had seen before this one. */
  readonly pullsBefore: number
  /** A patch that was not yet proved, or a repair for the time being that nobody had closed. */
  readonly open: 'not yet proved' | 'interim' | null
}

/** What a mould was when a part came off it, as the log tells it. Latest first in every list. */
export interface MouldThen {
  readonly pull: Of<'pull'>
  readonly pullNo: number
  /** The clearance that this pull answers; null: nobody cleared it. */
  readonly clearance: Of<'cleared'> | null
  /** Last strip of the whole face, and coats and sealer since, each by the place it was put on. */
  readonly strip: Of<'strip'> | null
  readonly release: readonly (Of<'seal'> | Of<'coat'>)[]
  /** Pulls since any coat went on; null: no coat in the book. */
  readonly pullsSinceCoat: number | null
  readonly repairs: readonly RepairThen[]
  readonly dowels: readonly Of<'dowel-changed'>[]
  readonly reMachined: readonly Of<'re-machined'>[]
  readonly leak: Of<'leak-check'> | null
  /** Heat with a part in it since the pull before: the cures of this part that were written as such. */
  readonly heats: readonly Of<'heat'>[]
}

/** What `mouldThen` looks at; others need not be read. */
export const kindsOfThen = [
  'pull',
  'cleared',
  'strip',
  'seal',
  'coat',
  'patch-laid',
  'proved',
  'repair',
  'settled',
  'dowel-changed',
  're-machined',
  'leak-check',
  'heat',
] as const satisfies readonly LogKind[]

/**
 * What a mould was at one of its pulls. `history` is the mould's log, newest first; entries that were put right or
 * struck out don't count. Null where the pull is not among what counts.
 */
export function mouldThen(history: readonly LogEntry[], pullId: string): MouldThen | null {
  const counting = history.filter((entry) => entry.correctedById === null && entry.kind !== 'correction')
  const at = counting.findIndex((entry) => entry.id === pullId)
  const pull = counting[at]
  if (pull?.kind !== 'pull') return null
  const before = counting.slice(at + 1)
  const all = <Kind extends LogKind>(kind: Kind) =>
    before.filter((entry): entry is Of<Kind> => entry.kind === kind)
  const pullsSince = (index: number) => before.slice(0, index).filter(({ kind }) => kind === 'pull').length
  const lastPull = before.findIndex(({ kind }) => kind === 'pull')
  const sincePull = lastPull === -1 ? before : before.slice(0, lastPull)
  const stripped = before.findIndex((entry) => entry.kind === 'strip' && wholeFace(entry))
  const sinceStrip = stripped === -1 ? before : before.slice(0, stripped)
  const coated = before.findIndex(({ kind }) => kind === 'coat')
  const strip = before[stripped]
  return {
    pull,
    pullNo: all('pull').length + 1,
    clearance: sincePull.find((entry): entry is Of<'cleared'> => entry.kind === 'cleared') ?? null,
    strip: strip?.kind === 'strip' ? strip : null,
    release: sinceStrip.filter(
      (entry): entry is Of<'seal'> | Of<'coat'> => entry.kind === 'seal' || entry.kind === 'coat',
    ),
    pullsSinceCoat: coated === -1 ? null : pullsSince(coated),
    repairs: before.flatMap((entry, index): RepairThen[] =>
      entry.kind === 'patch-laid' || entry.kind === 'repair'
        ? [
            {
              entry,
              pullsBefore: pullsSince(index),
              open: openThen(entry, before.slice(0, index), wordingOf(entry, history)),
            },
          ]
        : [],
    ),
    dowels: all('dowel-changed'),
    reMachined: all('re-machined'),
    leak: all('leak-check')[0] ?? null,
    heats: sincePull.filter((entry): entry is Of<'heat'> => entry.kind === 'heat' && entry.data.withPart),
  }
}

function wholeFace(entry: LogEntry): boolean {
  return entry.areaId === null && entry.patchId === null
}

/** `since`: what was written between the repair and the pull; `wording`: the ids under which the repair was known. */
function openThen(
  entry: Of<'patch-laid'> | Of<'repair'>,
  since: readonly LogEntry[],
  wording: ReadonlySet<string>,
): RepairThen['open'] {
  if (entry.kind === 'patch-laid') {
    const proved = since.some((later) => later.kind === 'proved' && later.data.number === entry.data.number)
    return proved ? null : 'not yet proved'
  }
  if (!entry.data.interim) return null
  const closed = since.some(
    (later) => later.kind === 'settled' && wording.has(later.data.entryId) && later.data.outcome === 'closed',
  )
  return closed ? null : 'interim'
}

/** The ids of an entry and of those that it put right: a word on its matter may name any of them. */
function wordingOf(entry: LogEntry, history: readonly LogEntry[]): ReadonlySet<string> {
  const ids = new Set<string>()
  for (let at: LogEntry | undefined = entry; at && !ids.has(at.id); ) {
    ids.add(at.id)
    const before: string | null = at.correctsId
    at = history.find(({ id }) => id === before)
  }
  return ids
}
