import * as z from 'zod'
import { handStates, type LogData, type LogKind, pullGrades } from '#lib/core/log/index'
import {
  choice,
  count,
  durationMin,
  freeText,
  isoDate,
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
  'test-patch': z.object({
    surface: text('what it was laid on', 120),
    sealer: blankable('the sealer'),
    agent: text('the release agent', 80),
    result: choice(['releases', 'grips']),
  }),
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
  repair: z
    .object({
      method: choice(['fill', 'surface ply', 'other']),
      what: text('what was repaired and with what', 500),
      interim: z.boolean(),
      untilPulls: count({ min: 1, max: 10_000 }).nullable(),
      untilOn: isoDate().nullable(),
      maxC: temperatureC({ min: 10, max: 400 }).nullable(),
      uMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
      vMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
    })
    .superRefine((repair, context) => {
      const limited = repair.untilPulls !== null || repair.untilOn !== null
      if (repair.interim && !limited) {
        context.addIssue({
          code: 'custom',
          path: ['untilPulls'],
          message: 'A repair for the time being needs a limit: so many pulls, or a day',
        })
      }
      if (!repair.interim && limited) {
        context.addIssue({
          code: 'custom',
          path: ['interim'],
          message: 'With a limit in pulls or a day it is a repair for the time being: say so',
        })
      }
    }),
  'dowel-changed': z.object({
    tag: text('the tag of the dowel', 40),
    what: choice(['re-bushed', 'plugged', 'set new', 'removed']),
    uMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
    vMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
    diameterMm: lengthMm({ min: 0.1, max: 500 }).nullable(),
  }),
  're-machined': z.object({
    what: text('what was re-machined', 500),
    depthMm: lengthMm({ min: 0, max: 500 }).nullable(),
    by: text('who machined it', 120),
  }),
  heat: z.object({
    what: choice(['cure', 'post-cure', 'other']),
    toC: temperatureC({ min: 10, max: 500 }),
    holdMin: durationMin({ min: 0, max: 10_080 }).nullable(),
    withPart: z.boolean(),
  }),
  pins: z.object({ tag: text('a tag', 40).nullable(), insertions: count({ min: 1, max: 10_000 }) }),
  measured: z.object({
    instrument: text('what it was measured with', 120),
    temperatureC: temperatureC({ min: -20, max: 300 }).nullable(),
    frame: choice(['area', 'datum']),
    points: z
      .array(
        z.object({
          tag: text('a tag', 40),
          xMm: lengthMm({ min: -1e5, max: 1e5 }),
          yMm: lengthMm({ min: -1e5, max: 1e5 }),
          zMm: lengthMm({ min: -1e5, max: 1e5 }).nullable(),
        }),
      )
      .min(1, { error: () => 'Give at least one point' })
      .max(500, { error: () => 'At most 500 points in one entry' }),
  }),
  moved: z.object({ place: text('the new place', 120) }),
  state: z.object({
    state: choice(handStates),
    on: z.boolean(),
    reason: text('a reason', 300),
    untilOn: isoDate().nullable().optional(),
  }),
  'patch-laid': z.object({
    planId: uuid(),
    number: z.int(),
    lots: z.array(z.object({ material: text('a material', 80), lot: text('the lot', 80) })).max(20),
  }),
  proved: z.object({ planId: uuid().nullable(), number: z.int() }),
  'before-book': z
    .object({
      pullsLow: count(),
      pullsBest: count(),
      pullsHigh: count(),
      heatLow: count().nullable(),
      heatBest: count().nullable(),
      heatHigh: count().nullable(),
      what: text('what it is known from', 500),
    })
    .superRefine((before, context) => {
      const heat = [before.heatLow, before.heatBest, before.heatHigh]
      const wrong = (path: string, message: string) =>
        context.addIssue({ code: 'custom', path: [path], message })
      if (before.pullsLow > before.pullsBest) wrong('pullsLow', 'The least is not above the best guess')
      if (before.pullsBest > before.pullsHigh) wrong('pullsHigh', 'The most is not below the best guess')
      const [low, best, high] = heat
      if (low === null && best === null && high === null) return
      if (low === null || low === undefined)
        return wrong('heatLow', 'Give all three figures of the heats, or none')
      if (best === null || best === undefined) {
        return wrong('heatBest', 'Give all three figures of the heats, or none')
      }
      if (high === null || high === undefined) {
        return wrong('heatHigh', 'Give all three figures of the heats, or none')
      }
      if (low > best) wrong('heatLow', 'The least is not above the best guess')
      if (best > high) wrong('heatHigh', 'The most is not below the best guess')
    }),
  matter: z.object({
    what: text('what is to be seen to', 500),
    who: text('who sees to it', 120),
    untilOn: isoDate().nullable(),
  }),
  settled: z
    .object({
      entryId: uuid('Choose the open matter'),
      outcome: choice(['closed', 'carried']),
      who: text('who sees to it', 120).nullable(),
      untilOn: isoDate().nullable(),
      how: freeText(500),
    })
    .refine((word) => word.outcome === 'closed' || word.untilOn !== null, {
      path: ['untilOn'],
      error: () => 'Until when is it carried on?',
    }),
  note: z.object({}),
  correction: z.object({}),
} satisfies { [Kind in LogKind]: z.ZodType<LogData[Kind]> }
