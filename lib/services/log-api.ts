import * as z from 'zod'
import { shopDay } from '#lib/core/dates'
import { type LogEntry, logKinds } from '#lib/core/log/index'
import { asked } from '#lib/schema/fields'
import { fieldErrors } from '#lib/schema/form'
import { NewLogEntry, NewSetEntry } from '#lib/schema/log'
import { type LogRequest, logRequest, setLogRequest } from '#lib/schema/log-request'
import { Refusal } from '#lib/store/errors'
import { listAreas } from '#lib/store/face'
import { listEntries, readEntry } from '#lib/store/history'
import { readMouldByCode, type StoredMould } from '#lib/store/moulds'
import { readSetByCode } from '#lib/store/sets'
import { writeEntry } from './log'
import { writeForSet } from './log-set'
import { shopContext } from './shop'
import { everyone, hands, verb } from './verb'

const code = asked()

/** The history of a mould by its code, newest first. */
export const listLogOf = verb(
  'log.list-of',
  everyone,
  z.object({
    code,
    kinds: z.array(z.enum(logKinds)).prefault([]),
    limit: z.int().min(1).max(5000).prefault(500),
  }),
  async (_actor, { code, kinds, limit }) =>
    listEntries({ mouldId: (await mouldOf(code)).id }, { kinds, limit }),
)

/** Writes an entry of a mould by its code, as a script sends it; what it leaves out gets the usual value. */
export const writeLogOf = verb(
  'log.write-of',
  hands,
  logRequest({ code }),
  async (actor, { code, ...request }): Promise<{ entry: LogEntry; written: boolean }> => {
    const { id, written } = await writeEntry(actor, await entryOf(await mouldOf(code), request))
    const stored = await readEntry(id)
    if (!stored) throw new Refusal('There is no such entry', { status: 404 })
    const { mouldId: _mould, patternId: _pattern, ...entry } = stored
    return { entry: entry as LogEntry, written }
  },
)

/** Writes a pull or a clearance on every piece of a split mould by its code, as a script sends it. */
export const writeSetLogOf = verb(
  'log.write-set-of',
  hands,
  setLogRequest({ code }),
  async (actor, { code, doneOn, precision, ...rest }) => {
    const set = await readSetByCode(code)
    if (!set) throw new Refusal(`There is no split mould ${code}`, { status: 404 })
    const parsed = NewSetEntry.safeParse({
      ...rest,
      ...(await dayAndPrecision({ doneOn, precision, doneAt: rest.doneAt })),
      setId: set.id,
      data: rest.kind === 'cleared' ? { open: [], proof: false, ...rest.data } : rest.data,
    })
    if (!parsed.success) {
      throw new Refusal('Some of what was sent is not right', { fields: fieldErrors(parsed.error) })
    }
    const { id, entries, written } = await writeForSet(actor, parsed.data)
    const codes = new Map(set.pieces.map((piece) => [piece.id, piece.code]))
    return {
      answer: { id, entries: entries.map((each) => ({ ...each, mould: codes.get(each.mouldId) ?? '' })) },
      written,
    }
  },
)

async function mouldOf(code: string): Promise<StoredMould> {
  const mould = await readMouldByCode(code)
  if (!mould) throw new Refusal(`There is no mould ${code}`, { status: 404 })
  return mould
}

async function entryOf(mould: StoredMould, request: LogRequest): Promise<NewLogEntry> {
  const { area, doneOn, precision, ...rest } = request
  const parsed = NewLogEntry.safeParse({
    ...rest,
    mouldId: mould.id,
    areaId: area === null ? request.areaId : await areaIdOf(mould, area, request.areaId),
    ...(await dayAndPrecision({ doneOn, precision, doneAt: request.doneAt })),
    // What is open is judged at the writing, not told.
    data: request.kind === 'cleared' ? { open: [], proof: false, ...request.data } : request.data,
  })
  if (parsed.success) return parsed.data
  throw new Refusal('Some of what was sent is not right', { fields: fieldErrors(parsed.error) })
}

/** What is left out follows from the moment. */
async function dayAndPrecision({
  doneOn,
  doneAt,
  precision,
}: Pick<LogRequest, 'doneOn' | 'doneAt' | 'precision'>) {
  return {
    doneOn: doneOn ?? (doneAt === null ? undefined : await dayOf(doneAt)),
    precision: precision ?? (doneAt === null ? 'day' : 'minute'),
  }
}

async function dayOf(moment: string): Promise<string> {
  const { shop } = await shopContext()
  return shopDay(moment, shop.timeZone).day
}

async function areaIdOf(mould: StoredMould, name: string, areaId: string | null): Promise<string> {
  const areas = await listAreas(mould.id)
  const found = areas.find((area) => area.name.trim().toLowerCase() === name.toLowerCase())
  if (found && (areaId === null || areaId === found.id)) return found.id
  const known = areas.map((area) => area.name).join(', ') || 'none yet'
  const says = found
    ? 'Name and id are of two areas; give one of them'
    : `${mould.code} has no area "${name}"; there is ${known}`
  throw new Refusal(says, { fields: { area: says } })
}
