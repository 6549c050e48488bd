import * as z from 'zod'
import type { LogKind } from '#lib/core/log/index'
import { choice, freeText, isoDate, isoMoment, text, uuid } from './fields'
import { logData } from './log'

/** Kinds that are written by hand or by a script; the others are written by the acts of a plan. */
export type WritableKind = Exclude<LogKind, 'patch-laid' | 'proved'>

/** What may be blank may as well be left out. */
function lenient(shape: z.ZodRawShape): z.ZodObject {
  return z.object(
    Object.fromEntries(
      Object.entries(shape).map(([key, field]) => [
        key,
        field instanceof z.ZodNullable ? field.prefault(null) : field,
      ]),
    ),
  )
}

const requestHead = {
  /** Made by whoever sends: sent twice, stored once. */
  id: uuid(),
  doneOn: isoDate()
    .nullable()
    .prefault(null)
    .meta({ description: 'Left out: the day of doneAt in the shop' }),
  doneAt: isoMoment().nullable().prefault(null),
  precision: choice(['minute', 'day', 'month', 'year', 'before'])
    .nullable()
    .prefault(null)
    .meta({ description: 'Left out: minute where doneAt is given, else day' }),
  area: text('the name of an area', 60)
    .nullable()
    .prefault(null)
    .meta({ description: 'The name of an area of the mould, instead of its id; neither: the whole face' }),
  areaId: uuid().nullable().prefault(null),
  patchId: uuid().nullable().prefault(null),
  correctsId: uuid().nullable().prefault(null).meta({ description: 'The entry that this one puts right' }),
  note: freeText(2000).prefault(''),
  sawVersion: z
    .int()
    .nullable()
    .prefault(null)
    .meta({ description: 'The version of the mould that was seen; needed for moved and state' }),
}

type Head = { [Name in keyof typeof requestHead]: z.output<(typeof requestHead)[Name]> }

/** An entry as a script sends it; what it leaves out is filled in by `writeLogOf`. */
export type LogRequest = Head & {
  readonly kind: WritableKind
  readonly data: Readonly<Record<string, unknown>>
}

function requestOf(kind: WritableKind, data: z.ZodType, more: z.ZodRawShape) {
  return z.object({ ...more, ...requestHead, kind: z.literal(kind), data })
}

/** The request with `more` beside it, such as the code of the mould. */
export function logRequest<const More extends z.ZodRawShape>(more: More) {
  const plain = (kind: WritableKind) => requestOf(kind, lenient(logData[kind].shape), more)
  const empty = (kind: 'note' | 'correction') => requestOf(kind, logData[kind].prefault({}), more)
  const because = z.object({ because: logData.cleared.shape.because.prefault(null) })
  return z.discriminatedUnion(
    'kind',
    [
      requestOf('cleared', because.prefault({}), more),
      plain('pull'),
      plain('strip'),
      plain('clean'),
      plain('seal'),
      plain('coat'),
      plain('tape-test'),
      plain('leak-check'),
      plain('inspection'),
      plain('damage'),
      plain('dowel-changed'),
      plain('moved'),
      plain('state'),
      empty('note'),
      empty('correction'),
    ],
    {
      error: () =>
        'A kind of entry that can be sent: cleared, pull, strip, clean, seal, coat, tape-test, leak-check, inspection, damage, dowel-changed, moved, state, note, correction',
    },
  ) as unknown as z.ZodType<LogRequest & z.output<z.ZodObject<More>>>
}
