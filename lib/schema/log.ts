import * as z from 'zod'
import { handStates, type LogData, type LogKind, pullGrades } from '#lib/core/log/index'
import {
  choice,
  count,
  durationMin,
  freeText,
  isoDate,
  isoMoment,
  lengthMm,
  plainNumber,
  quantity,
  temperatureC,
  text,
  uuid,
} from './fields'

const blankable = (what: string) => text(what, 80).nullable()

/** What each kind of entry carries. */
export const logData = {
  cleared: z.object({
    open: z.array(freeText(300)).max(50),
    because: freeText(500).nullable(),
    proof: z.boolean(),
  }),
  pull: z.object({
    went: choice(pullGrades),
    serial: blankable('a serial'),
    partFate: choice(['good', 'rework', 'scrapped']),
    mouldFate: choice(['unharmed', 'marked', 'damaged']),
    cureC: temperatureC({ min: 10, max: 400 }).nullable(),
  }),
  strip: z.object({ product: text('what it was stripped with', 80) }),
  clean: z.object({ product: text('what it was cleaned with', 80) }),
  seal: z.object({
    product: text('the sealer', 80),
    lot: blankable('a lot'),
    coats: count({ min: 0, max: 50 }),
  }),
  coat: z.object({
    product: text('the release agent', 80),
    lot: blankable('a lot'),
    coats: count({ min: 0, max: 50 }),
    minutesBetween: durationMin({ min: 0, max: 2880 }).nullable(),
  }),
  'tape-test': z.object({ result: choice(['slips', 'grips']) }),
  'leak-check': z
    .object({
      bagging: text('what was bagged and how', 120),
      heat: choice(['cold', 'hot']),
      temperatureC: temperatureC({ min: -20, max: 300 }).nullable(),
      pins: choice(['in', 'out', 'none']),
      volumeL: plainNumber({ min: 0, max: 100_000 }).nullable(),
      startMbar: quantity('pressure', { min: 0, max: 1100 }),
      endMbar: quantity('pressure', { min: 0, max: 1100 }),
      minutes: durationMin({ min: 0.1, max: 2880 }),
    })
    .refine((check) => check.endMbar >= check.startMbar, {
      path: ['endMbar'],
      error: () => 'Absolute pressure under a bag rises when it leaks: the end is not below the start',
    }),
  inspection: z.object({
    verdict: choice(['sound', 'look', 'not sound']),
    what: text('what was found', 500),
  }),
  damage: z.object({
    weight: choice(['mark', 'open matter', 'stop']),
    uMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
    vMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
    what: text('what is damaged and how', 500),
  }),
  'dowel-changed': z.object({
    tag: text('the tag of the dowel', 40),
    what: choice(['re-bushed', 'plugged', 'set new', 'removed']),
    uMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
    vMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
    diameterMm: lengthMm({ min: 0.1, max: 500 }).nullable(),
  }),
  moved: z.object({ place: text('the new place', 120) }),
  state: z.object({
    state: choice(handStates),
    on: z.boolean(),
    reason: text('a reason', 300),
  }),
  'patch-laid': z.object({
    planId: uuid(),
    number: z.int(),
    lots: z.array(z.object({ material: text('a material', 80), lot: text('the lot', 80) })).max(20),
  }),
  proved: z.object({ planId: uuid().nullable(), number: z.int() }),
  note: z.object({}),
  correction: z.object({}),
} satisfies { [Kind in LogKind]: z.ZodType<LogData[Kind]> }

const head = {
  /** Made by whoever writes; sent twice, stored once. */
  id: uuid(),
  mouldId: uuid(),
  areaId: uuid().nullable(),
  patchId: uuid().nullable(),
  doneOn: isoDate(),
  /** With it the entry is precise to the minute. */
  doneAt: isoMoment().nullable(),
  precision: choice(['minute', 'day', 'month', 'year', 'before']),
  correctsId: uuid().nullable(),
  note: freeText(2000),
  /** The version of the mould that the writer saw; asked of entries that move it or set its state. */
  sawVersion: z.int().nullable(),
}

function entryOf<const Kind extends LogKind>(kind: Kind) {
  return z.object({ ...head, kind: z.literal(kind), data: logData[kind] })
}

/** What is sent to write one entry. Patch entries are written by the acts of a plan, not here. */
export const NewLogEntry = z
  .discriminatedUnion('kind', [
    entryOf('cleared'),
    entryOf('pull'),
    entryOf('strip'),
    entryOf('clean'),
    entryOf('seal'),
    entryOf('coat'),
    entryOf('tape-test'),
    entryOf('leak-check'),
    entryOf('inspection'),
    entryOf('damage'),
    entryOf('dowel-changed'),
    entryOf('moved'),
    entryOf('state'),
    entryOf('patch-laid'),
    entryOf('proved'),
    entryOf('note'),
    entryOf('correction'),
  ])
  .superRefine((entry, context) => {
    if ((entry.precision === 'minute') !== (entry.doneAt !== null)) {
      context.addIssue({
        code: 'custom',
        path: ['doneAt'],
        message: 'Give the time, or say that only the day is known',
      })
    }
    if (entry.kind === 'correction' && entry.correctsId === null) {
      context.addIssue({ code: 'custom', path: ['correctsId'], message: 'Say which entry is struck out' })
    }
    if ((entry.kind === 'moved' || entry.kind === 'state') && entry.sawVersion === null) {
      context.addIssue({
        code: 'custom',
        path: ['sawVersion'],
        message: 'Say which version of the mould was seen',
      })
    }
  })
export type NewLogEntry = z.output<typeof NewLogEntry>
