import * as z from 'zod'
import { type LogKind, logKinds, type SetKind } from '#lib/core/log/index'
import { choice, freeText, isoDate, isoMoment, text, uuid } from './fields'
import { LotUse, logData } from './log'

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
  uses: z
    .array(LotUse)
    .max(20)
    .optional()
    .meta({ description: 'Taken from stock for it, each amount in the unit of its lot' }),
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

const setHead = {
  id: requestHead.id,
  doneOn: requestHead.doneOn,
  doneAt: requestHead.doneAt,
  precision: requestHead.precision,
  note: requestHead.note,
  uses: requestHead.uses,
} as const

const asSent = z.object({ because: logData.cleared.shape.because.prefault(null) }).prefault({})

/** A pull or a clearance of every piece of a split mould, as a script sends it; `more` stands beside it. */
export function setLogRequest<const More extends z.ZodRawShape>(more: More) {
  return z.discriminatedUnion('kind', [
    z.object({ ...more, ...setHead, kind: z.literal('cleared'), data: asSent }),
    z.object({ ...more, ...setHead, kind: z.literal('pull'), data: lenient(logData.pull.shape) }),
  ]) as unknown as z.ZodType<SetLogRequest & z.output<z.ZodObject<More>>>
}

export type SetLogRequest = Pick<Head, keyof typeof setHead> & {
  readonly kind: SetKind
  readonly data: Readonly<Record<string, unknown>>
}

function requestOf(kind: WritableKind, data: z.ZodType, more: z.ZodRawShape) {
  return z.object({ ...more, ...requestHead, kind: z.literal(kind), data })
}

/** The request with `more` beside it, such as the code of the mould. */
export function logRequest<const More extends z.ZodRawShape>(more: More) {
  const plain = (kind: WritableKind) => requestOf(kind, lenient(logData[kind].shape), more)
  const noted = requestOf('note', logData.note.prefault({}), more).extend({ note: text('the note', 2000) })
  return z.discriminatedUnion(
    'kind',
    [
      requestOf('cleared', asSent, more),
      plain('pull'),
      plain('strip'),
      plain('clean'),
      plain('seal'),
      plain('coat'),
      plain('tape-test'),
      plain('test-patch'),
      plain('leak-check'),
      plain('inspection'),
      plain('damage'),
      plain('repair'),
      plain('dowel-changed'),
      plain('re-machined'),
      plain('heat'),
      plain('pins'),
      plain('measured'),
      plain('moved'),
      plain('state'),
      plain('before-book'),
      plain('matter'),
      plain('settled'),
      noted,
      requestOf('correction', logData.correction.prefault({}), more),
    ],
    {
      error: () =>
        `A kind of entry that can be sent: ${logKinds.filter((kind) => kind !== 'patch-laid' && kind !== 'proved').join(', ')}`,
    },
  ) as unknown as z.ZodType<LogRequest & z.output<z.ZodObject<More>>>
}
