import * as z from 'zod'
import type { LogKind, PatternKind } from '#lib/core/log/index'
import { choice, freeText, isoDate, isoMoment, uuid } from './fields'
import { logData } from './log-data'

export { logData }

/** An amount taken from a stock lot, in the unit in which the lot is kept. */
export const LotUse = z.object({
  lotId: uuid('Choose the lot, or leave the amount out'),
  amount: z
    .number({ error: () => 'Give how much was taken' })
    .gt(0, { error: () => 'More than nothing, or leave the lot out' })
    .max(1e6, { error: () => 'At most 1000000' }),
})
export type LotUse = z.output<typeof LotUse>

const shared = {
  /** Made by whoever writes; sent twice, stored once. */
  id: uuid(),
  doneOn: isoDate(),
  /** With it the entry is precise to the minute. */
  doneAt: isoMoment().nullable(),
  precision: choice(['minute', 'day', 'month', 'year', 'before']),
  correctsId: uuid().nullable(),
  note: freeText(2000),
  /** The version of the mould or pattern that the writer saw; asked of entries that move it or set its state. */
  sawVersion: z.int().nullable(),
  /** Taken from stock for it. */
  uses: z.array(LotUse).max(20).optional(),
} as const

const head = {
  ...shared,
  mouldId: uuid(),
  areaId: uuid().nullable(),
  patchId: uuid().nullable(),
  /** Shared by the entries of several pieces that were entered as one. */
  groupId: uuid().nullable().optional(),
} as const

function entryOf<const Kind extends LogKind>(kind: Kind) {
  return z.object({ ...head, kind: z.literal(kind), data: logData[kind] })
}

function patternEntryOf<const Kind extends PatternKind>(kind: Kind) {
  return z.object({ ...shared, patternId: uuid(), kind: z.literal(kind), data: logData[kind] })
}

interface Told {
  readonly kind: LogKind
  readonly precision: string
  readonly doneAt: string | null
  readonly correctsId: string | null
  readonly sawVersion: number | null
  readonly note: string
  readonly uses?: readonly LotUse[] | undefined
}

/** What no kind of entry may lack or mix up. */
function checkTogether(entry: Told, context: z.RefinementCtx): void {
  const wrong = (path: string, message: string) => context.addIssue({ code: 'custom', path: [path], message })
  if ((entry.precision === 'minute') !== (entry.doneAt !== null)) {
    wrong('doneAt', 'Give the time, or say that only the day is known')
  }
  if (entry.kind === 'correction' && entry.correctsId === null) {
    wrong('correctsId', 'Say which entry is struck out')
  }
  if (entry.kind === 'note' && entry.note.trim() === '') wrong('note', 'Write what is worth knowing')
  if ((entry.kind === 'moved' || entry.kind === 'state') && entry.sawVersion === null) {
    wrong('sawVersion', 'Say which version of it was seen')
  }
  const lots = (entry.uses ?? []).map((use) => use.lotId)
  if (new Set(lots).size !== lots.length) wrong('uses', 'The same lot stands twice: give its amounts as one')
}

/** What is sent to write one entry of a mould. Patch entries are written by the acts of a plan, not here. */
export const NewLogEntry = z
  .discriminatedUnion('kind', [
    entryOf('cleared'),
    entryOf('pull'),
    entryOf('strip'),
    entryOf('clean'),
    entryOf('seal'),
    entryOf('coat'),
    entryOf('tape-test'),
    entryOf('test-patch'),
    entryOf('leak-check'),
    entryOf('inspection'),
    entryOf('damage'),
    entryOf('repair'),
    entryOf('dowel-changed'),
    entryOf('re-machined'),
    entryOf('heat'),
    entryOf('pins'),
    entryOf('measured'),
    entryOf('moved'),
    entryOf('state'),
    entryOf('patch-laid'),
    entryOf('proved'),
    entryOf('before-book'),
    entryOf('matter'),
    entryOf('settled'),
    entryOf('note'),
    entryOf('correction'),
  ])
  .superRefine((entry, context) => {
    checkTogether(entry, context)
    if (entry.kind === 'measured' && entry.data.frame === 'area' && entry.areaId === null) {
      context.addIssue({
        code: 'custom',
        path: ['areaId'],
        message: 'Name the area in whose frame the points are given, or give them in the datum axes',
      })
    }
  })
export type NewLogEntry = z.output<typeof NewLogEntry>

/** What is sent to write one entry of a pattern. It has no areas: points are measured in its datum axes. */
export const NewPatternEntry = z
  .discriminatedUnion('kind', [
    patternEntryOf('clean'),
    patternEntryOf('seal'),
    patternEntryOf('coat'),
    patternEntryOf('inspection'),
    patternEntryOf('damage'),
    patternEntryOf('repair'),
    patternEntryOf('re-machined'),
    patternEntryOf('measured'),
    patternEntryOf('moved'),
    patternEntryOf('before-book'),
    patternEntryOf('matter'),
    patternEntryOf('settled'),
    patternEntryOf('note'),
    patternEntryOf('correction'),
  ])
  .superRefine((entry, context) => {
    checkTogether(entry, context)
    if (entry.kind === 'measured' && entry.data.frame === 'area') {
      context.addIssue({
        code: 'custom',
        path: ['data', 'frame'],
        message: 'A pattern has no areas: give the points in its datum axes',
      })
    }
  })
export type NewPatternEntry = z.output<typeof NewPatternEntry>

const setShared = {
  /** Made by whoever writes; the ids of the pieces' entries follow from it. */
  id: uuid(),
  setId: uuid(),
  doneOn: isoDate(),
  doneAt: isoMoment().nullable(),
  precision: choice(['minute', 'day', 'month', 'year', 'before']),
  note: freeText(2000),
  uses: z.array(LotUse).max(20).optional(),
} as const

/** What is sent to write the same pull or clearance on every piece of a split mould. */
export const NewSetEntry = z
  .discriminatedUnion('kind', [
    z.object({ ...setShared, kind: z.literal('cleared'), data: logData.cleared }),
    z.object({ ...setShared, kind: z.literal('pull'), data: logData.pull }),
  ])
  .superRefine((entry, context) => checkTogether({ ...entry, correctsId: null, sawVersion: null }, context))
export type NewSetEntry = z.output<typeof NewSetEntry>
