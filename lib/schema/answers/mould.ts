import * as z from 'zod'
import { type LogEntry, logKinds, mouldStates, pullGrades, type ReleaseCount } from '#lib/core/log/index'
import { logData } from '../log'
import { FaceAreaInput, LocatingPointInput, MouldInput, PartInput, PatternInput } from '../mould'
import { FindingAnswer } from './shared'

const day = () => z.string().meta({ description: 'Calendar date in the shop, as 2026-10-21' })
const dayOrNull = () => day().nullable()
const version = () => z.int().meta({ description: 'To be named by who changes it' })

export const ReleaseAnswer = z.object({
  target: z.enum(['face', 'area', 'patch']),
  areaId: z.string().nullable(),
  patchId: z.string().nullable(),
  name: z.string(),
  laidOn: dayOrNull(),
  stripOn: dayOrNull(),
  sealOn: dayOrNull(),
  coatOn: dayOrNull(),
  coatAt: z.string().nullable(),
  tapeOn: dayOrNull(),
  tapeResult: z.enum(['slips', 'grips']).nullable(),
  sealedSinceStrip: z.boolean(),
  tapeSinceCoat: z.boolean(),
  sealProduct: z.string().nullable(),
  sealLot: z.string().nullable(),
  coatProduct: z.string().nullable(),
  coatLot: z.string().nullable(),
  coatsSinceStrip: z.int(),
  pulls: z.int(),
  pullsSinceStrip: z.int(),
  pullsSinceSeal: z.int(),
  pullsSinceCoat: z.int(),
}) satisfies z.ZodType<ReleaseCount>

export const CountsAnswer = z.object({
  pulls: z.int(),
  pullsThisSeason: z.int(),
  pullsNotCleared: z.int(),
  lastPullOn: dayOrNull(),
  lastPullWent: z.enum(pullGrades).nullable(),
  clearedOn: dayOrNull().meta({ description: 'Cleared to lay up, and no pull since' }),
  clearedForProof: z.boolean(),
  lastRepairOn: dayOrNull(),
})

export const MatterAnswer = FindingAnswer.extend({
  word: z.string(),
  settledBy: z.enum(logKinds).nullable().meta({ description: 'The kind of entry that settles it' }),
  areaId: z.string().nullable(),
  patchId: z.string().nullable(),
  entryId: z.string().nullable().meta({ description: 'The open matter or the repair that it is about' }),
})

/** A mould in the rack. */
export const MouldRowAnswer = z.object({
  id: z.string(),
  code: z.string(),
  name: z.string(),
  version: version(),
  partCode: z.string().nullable(),
  patternCode: z.string().nullable(),
  state: z.enum(mouldStates),
  reason: z.string(),
  also: z.array(z.enum(mouldStates)).meta({ description: 'States that hold as well' }),
  place: z.string().nullable(),
  counts: CountsAnswer,
  release: z
    .array(ReleaseAnswer)
    .meta({ description: 'Of the whole face, each area, and each patch that is not yet proved' }),
  matters: z
    .array(MatterAnswer)
    .meta({ description: 'What must be settled before the next lay-up, worst first' }),
})

export const MouldListAnswer = z.object({
  today: day(),
  matching: z.int().meta({ description: 'Moulds that fit what was asked' }),
  total: z.int().meta({ description: 'All moulds of the shop' }),
  page: z.int(),
  pages: z.int(),
  moulds: z.array(MouldRowAnswer),
})

const AreaAnswer = FaceAreaInput.omit({ mouldId: true }).extend({
  version: version(),
  readings: z.array(
    z.object({
      id: z.string(),
      uMm: z.number(),
      vMm: z.number(),
      thicknessMm: z.number(),
      measuredOn: day(),
      byName: z.string(),
    }),
  ),
})

const PointIssueAnswer = z.object({
  id: z.string(),
  number: z.int(),
  name: z.string(),
  issuedOn: day(),
  byName: z.string(),
  points: z.array(
    z
      .object({ ...LocatingPointInput.shape, id: z.string(), areaId: z.string().nullable() })
      .omit({ areaName: true }),
  ),
})

/** A mould with its face, its points, its patches. */
export const MouldAnswer = z.object({
  ...MouldRowAnswer.shape,
  today: day(),
  mould: z.object({ ...MouldInput.shape, version: version() }),
  part: z.object({ ...PartInput.shape, version: version() }).nullable(),
  pattern: z.object({ ...PatternInput.shape, version: version() }).nullable(),
  stackCode: z.string().nullable(),
  areas: z.array(AreaAnswer),
  points: PointIssueAnswer.nullable().meta({ description: 'The issue of locating points in force' }),
  patches: z.array(
    z.object({
      id: z.string(),
      number: z.int(),
      title: z.string(),
      areaName: z.string(),
      place: z.string(),
      state: z.string(),
      planId: z.string(),
      versionNo: z.int(),
    }),
  ),
})

const entryHead = {
  id: z.string(),
  doneOn: day(),
  doneAt: z.string().nullable(),
  precision: z.enum(['minute', 'day', 'month', 'year', 'before']),
  writtenAt: z.string(),
  byName: z.string(),
  areaId: z.string().nullable(),
  areaName: z.string().nullable(),
  place: z.string().nullable().meta({
    description: 'Where on the area: "floor B5, 40 mm from D03", by its grid and its points of today',
  }),
  patchId: z.string().nullable(),
  patchNumber: z.int().nullable(),
  note: z.string(),
  groupId: z
    .string()
    .nullable()
    .meta({ description: 'Shared by the entries of several pieces that were entered as one' }),
  uses: z
    .array(
      z.object({
        lotId: z.string(),
        lot: z.string(),
        name: z.string(),
        amount: z.number(),
        unit: z.string(),
      }),
    )
    .meta({ description: 'Taken from stock for it' }),
  correctsId: z.string().nullable(),
  correctedById: z
    .string()
    .nullable()
    .meta({ description: 'The entry that put this one right: it no longer counts' }),
}

const entryOf = <const Kind extends keyof typeof logData>(kind: Kind) =>
  z.object({ ...entryHead, kind: z.literal(kind), data: logData[kind] })

export const EntryAnswer = z.discriminatedUnion('kind', [
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
]) satisfies z.ZodType<LogEntry>

export const SetLogAnswer = z.object({
  id: z.string().meta({ description: 'As it was sent: the group of its entries' }),
  entries: z.array(z.object({ id: z.string(), mouldId: z.string(), mould: z.string() })),
})

export const LogAnswer = z.object({ entries: z.array(EntryAnswer) })

export const HealthAnswer = z.object({ ok: z.boolean(), database: z.enum(['answers', 'does not answer']) })
