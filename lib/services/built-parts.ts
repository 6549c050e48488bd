import * as z from 'zod'
import { shortDate } from '#lib/core/dates'
import {
  entryWords,
  kindsOfThen,
  type MouldThen,
  mouldThen,
  type PartFate,
  worstFate,
} from '#lib/core/log/index'
import { BuiltPartInput, Serial } from '#lib/schema/built-part'
import { asked } from '#lib/schema/fields'
import {
  type BuiltPartRow,
  laidEntryOf,
  lotName,
  lotNames,
  type PullOfPart,
  listBuiltParts as readBuiltParts,
  readBuiltPart as readPart,
  removeBuiltPart as removePart,
  type StoredBuiltPart,
  changeBuiltPart as updateBuiltPart,
} from '#lib/store/built-parts'
import { Refusal } from '#lib/store/errors'
import { type PointIssue, pointsOn } from '#lib/store/face'
import { listEntries, readEntry } from '#lib/store/history'
import { readMould, readMouldByCode } from '#lib/store/moulds'
import { partByCode } from '#lib/store/parts'
import { initialsByName } from '#lib/store/people'
import { type ShopContext, shopContext, told } from './shop'
import { asking, everyone, hands, leads, verb } from './verb'

/** A built part in a list, with what became of it: the worst that its pulls say; null where no pull names it. */
export type BuiltPartLine = BuiltPartRow & { readonly fate: PartFate | null }

export interface BuiltPartList {
  readonly rows: readonly BuiltPartLine[]
  /** All that fit, also those that the list leaves out. */
  readonly total: number
}

/** How many a list shows at most. */
export const mostParts = 200

const listOf = async (
  filter: Parameters<typeof readBuiltParts>[0],
  limit = mostParts,
): Promise<BuiltPartList> => {
  const { rows, total } = await readBuiltParts(filter, limit)
  return { rows: rows.map((row) => ({ ...row, fate: worstFate(row.pulls) })), total }
}

/** Built parts, latest first; all that is given must hold. Codes and ids that are not in the book find nothing. */
export const listBuiltParts = asking(
  'built-parts.list',
  everyone,
  z.object({
    /** Codes of a part and of a mould. */
    part: asked(80).optional(),
    mould: asked(80).optional(),
    lot: z.uuid().optional(),
    /** Off the mould of this entry, after it: since that repair, those coats, that bush. */
    since: z.uuid().optional(),
    find: asked(80).optional(),
  }),
  async (_actor, asked): Promise<BuiltPartList & { readonly told: readonly string[] }> => {
    const { today } = await shopContext()
    const [part, mould, lot, entry] = await Promise.all([
      asked.part ? partByCode(asked.part) : null,
      asked.mould ? readMouldByCode(asked.mould) : null,
      asked.lot ? lotName(asked.lot) : null,
      asked.since ? readEntry(asked.since) : null,
    ])
    const missing = [
      asked.part && !part ? `There is no part ${asked.part}` : null,
      asked.mould && !mould ? `There is no mould ${asked.mould}` : null,
      asked.lot && !lot ? 'There is no such lot' : null,
      asked.since && !entry?.mouldId ? 'There is no such entry of a mould' : null,
    ].filter((line): line is string => line !== null)
    if (missing.length > 0) return { rows: [], total: 0, told: missing }
    const of = entry?.mouldId ? await readMould(entry.mouldId) : null
    const list = await listOf({
      ...(part ? { partId: part.id } : {}),
      ...(mould ? { mouldId: mould.id } : {}),
      ...(lot ? { lotId: lot.id } : {}),
      ...(entry ? { sinceEntryId: entry.id } : {}),
      ...(asked.find ? { find: asked.find } : {}),
    })
    const told = [
      part ? `${part.code}, ${part.name}` : null,
      mould ? `off ${mould.code}` : null,
      lot ? `laid from ${lot.material}, lot ${lot.lot}` : null,
      entry ? `off ${of?.code} after ${shortDate(entry.doneOn, today)}: ${entryWords(entry).what}` : null,
    ].filter((line): line is string => line !== null)
    return { ...list, told }
  },
)

/** The latest parts off a mould, and how many there are. */
export const partsOfMould = verb(
  'built-parts.of-mould',
  everyone,
  z.object({ mouldId: z.uuid(), limit: z.int().min(1).max(mostParts) }),
  (_actor, { mouldId, limit }) => listOf({ mouldId }, limit),
)

/** Parts that were laid from a stock lot. */
export const partsOfLot = verb(
  'built-parts.of-lot',
  everyone,
  z.object({ lotId: z.uuid() }),
  (_actor, { lotId }) => listOf({ lotId }),
)

/** Parts that came off the mould after a patch was laid; none while it isn't laid. */
export const partsSincePatch = verb(
  'built-parts.since-patch',
  everyone,
  z.object({ patchId: z.uuid() }),
  async (_actor, { patchId }): Promise<BuiltPartList> => {
    const sinceEntryId = await laidEntryOf(patchId)
    return sinceEntryId === null ? { rows: [], total: 0 } : listOf({ sinceEntryId })
  },
)

/** A piece at the moment at which the part came off it. */
export interface PieceThen {
  readonly pull: PullOfPart
  /** Null where the log was changed between two reads. */
  readonly was: MouldThen | null
  /** The issue of locating points that was in force on that day. */
  readonly points: PointIssue | null
}

export interface BuiltPartPage {
  readonly part: StoredBuiltPart
  readonly fate: PartFate | null
  readonly pieces: readonly PieceThen[]
  readonly initials: ReadonlyMap<string, string>
  readonly context: ShopContext
}

/** How far back a mould's log is read for one of its pulls. */
const mostEntries = 20_000

async function pieceThen(pull: PullOfPart): Promise<PieceThen> {
  const [history, points] = await Promise.all([
    listEntries({ mouldId: pull.mouldId }, { kinds: kindsOfThen, limit: mostEntries }),
    pointsOn(pull.mouldId, pull.doneOn),
  ])
  return { pull, was: mouldThen(history, pull.id), points }
}

/** A part and everything that it leads back to. */
export const readBuiltPart = asking(
  'built-parts.read',
  everyone,
  Serial,
  async (_actor, { serial }): Promise<BuiltPartPage> => {
    const part = await readPart(serial)
    if (!part) throw new Refusal(`There is no part ${serial}`, { status: 404 })
    const [pieces, initials, context] = await Promise.all([
      Promise.all(part.pulls.map(pieceThen)),
      initialsByName(),
      shopContext(),
    ])
    return { part, fate: worstFate(part.pulls), pieces, initials, context }
  },
)

/** Lots of Stores to choose from. */
export const listLotNames = verb('built-parts.lots', everyone, z.object({}), () => lotNames())

export const changeBuiltPart = verb(
  'built-parts.change',
  hands,
  BuiltPartInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updateBuiltPart(actor, version, input), {}),
)

export const removeBuiltPart = verb(
  'built-parts.remove',
  leads,
  z.object({ id: z.uuid() }),
  (actor, { id }) => removePart(actor, id),
)
