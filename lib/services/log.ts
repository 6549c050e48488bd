import * as z from 'zod'
import { minutesIntoDay, momentOf, shopDay } from '#lib/core/dates'
import { type LogEntry, logKinds } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import { asked } from '#lib/schema/fields'
import { NewLogEntry, NewPatternEntry } from '#lib/schema/log'
import { Refusal } from '#lib/store/errors'
import {
  countEntries,
  entriesAbove,
  type LogSubject,
  listEntries,
  type NamedEntry,
  readEntry,
  lastProducts as readLastProducts,
  latestEntries as readLatest,
} from '#lib/store/history'
import { appendEntries, type EntryToWrite } from '#lib/store/log'
import { judgeClearance } from './clearance'
import { type ShopContext, shopContext } from './shop'
import { asking, everyone, hands, verb } from './verb'

/** How far a clock in a pocket may run ahead of the shop's before "in the future" is said. */
const clockSlackMin = 10

/**
 * Writes one entry: a pull, a coat, a check ... Sent twice with the same id, stored once; `written` tells whether it
 * was now.
 */
export const writeEntry = verb('log.write', hands, NewLogEntry, async (actor, entry) => {
  const context = await shopContext()
  const written = await appendEntries(actor, [await prepared(actor, entry, context)])
  return { id: entry.id, written: written > 0 }
})

/** Writes one entry of a pattern; sent twice with the same id, stored once. */
export const writePatternEntry = verb('log.write-pattern', hands, NewPatternEntry, async (actor, entry) => {
  const context = await shopContext()
  if (entry.correctsId !== null) await checkCorrection(actor, entry, entry.correctsId)
  const written = await appendEntries(actor, [{ entry, dayOrder: orderInDay(entry, context) }])
  return { id: entry.id, written: written > 0 }
})

/** Entries on one page of a history. */
export const historyPage = 200

export interface History {
  readonly entries: readonly LogEntry[]
  /** How many fit what was asked, and how many there are. */
  readonly fitting: number
  readonly total: number
  /** Day of the oldest. */
  readonly beginsOn: string | null
  /** How many newer ones stand above this page; null where nobody counted them, on a page that was asked for by `olderThan`. */
  readonly above: number | null
  /** The last entry of this page where older ones follow; to be named in `olderThan`. */
  readonly next: string | null
}

/**
 * A page of the history of a mould or a pattern, newest first. Left out: every kind, no words, the newest page.
 * `holding` asks for the page that holds an entry: the newest `limit` where it stands among them, else whole pages.
 */
export const readHistory = asking(
  'log.history',
  everyone,
  z.object({
    mouldId: z.uuid().optional(),
    patternId: z.uuid().optional(),
    kinds: z.array(z.enum(logKinds)).optional(),
    find: asked().optional(),
    olderThan: z.uuid().optional(),
    holding: z.uuid().optional(),
    limit: z.int().min(1).max(historyPage).optional(),
  }),
  async (_actor, { mouldId, patternId, kinds, find, olderThan, holding, ...asked }): Promise<History> => {
    const subject = subjectOf(mouldId, patternId)
    const filter = { ...(kinds ? { kinds } : {}), ...(find ? { find } : {}) }
    const above = holding ? ((await entriesAbove(subject, filter, holding)) ?? 0) : 0
    const newest = above < (asked.limit ?? historyPage)
    const limit = newest ? (asked.limit ?? historyPage) : historyPage
    const skip = newest ? 0 : above - (above % historyPage)
    const [entries, counted] = await Promise.all([
      listEntries(subject, { ...filter, ...(olderThan ? { olderThan } : { skip }), limit: limit + 1 }),
      countEntries(subject, filter),
    ])
    const shown = entries.slice(0, limit)
    return {
      entries: shown,
      ...counted,
      above: olderThan ? null : skip,
      next: entries.length > limit ? (shown.at(-1)?.id ?? null) : null,
    }
  },
)

function subjectOf(mouldId: string | undefined, patternId: string | undefined): LogSubject {
  if (mouldId) return { mouldId }
  if (patternId) return { patternId }
  throw new Refusal('Say whose history: of a mould or of a pattern')
}

export const readLogEntry = asking(
  'log.read',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const entry = await readEntry(id)
    if (!entry) throw new Refusal('There is no such entry', { status: 404 })
    return entry
  },
)

/** An entry that a page's address names, or null where it names none or one that is not there. */
export const findLogEntry = verb(
  'log.find',
  everyone,
  z.object({ id: z.string().max(100).nullable() }),
  async (_actor, { id }) => (z.uuid().safeParse(id).success && id ? await readEntry(id) : null),
)

export type { NamedEntry }

/** Newest entries over all moulds and patterns. */
export const latestEntries = verb(
  'log.latest',
  everyone,
  z.object({ limit: z.int().min(1).max(200) }),
  (_actor, { limit }) => readLatest(limit),
)

/** Products as they were last written, newest first, to be offered again. */
export const lastProducts = verb('log.products', everyone, z.object({}), () => readLastProducts())

/** An entry of a mould with its place in the day and its judge; what must not be written is refused. */
export async function prepared(
  actor: Actor,
  entry: NewLogEntry,
  context: ShopContext,
): Promise<EntryToWrite> {
  if (entry.kind === 'patch-laid' || entry.kind === 'proved') {
    throw new Refusal('This is written by the plan of the patch: open the plan and carry it out there')
  }
  if (entry.kind === 'state' && entry.data.state === 'retired' && actor.role !== 'lead') {
    throw new Refusal('Only a lead retires a mould', { status: 403 })
  }
  if (entry.correctsId !== null) await checkCorrection(actor, entry, entry.correctsId)
  const dayOrder = orderInDay(entry, context)
  if (entry.kind !== 'cleared') return { entry, dayOrder }
  return { entry, dayOrder, judge: (sql) => judgeClearance(actor, entry, dayOrder, context, sql) }
}

async function checkCorrection(
  actor: Actor,
  entry: Pick<NewLogEntry | NewPatternEntry, 'kind'>,
  correctsId: string,
): Promise<void> {
  const wrong = await readEntry(correctsId)
  if (!wrong) throw new Refusal('The entry to be put right is not there', { status: 404 })
  if (wrong.kind === 'correction' && entry.kind === 'correction') {
    throw new Refusal(
      'What was struck out is not brought back by striking out the strike: write the entry anew',
    )
  }
  if (wrong.kind === 'state' && wrong.data.state === 'retired' && actor.role !== 'lead') {
    throw new Refusal('Only a lead retires a mould or brings it back', { status: 403 })
  }
  if (wrong.kind === 'patch-laid' || wrong.kind === 'proved') {
    throw new Refusal('What a plan wrote is put right by a new version of the plan, or told in a note')
  }
}

/** Minutes into the day that order an entry among others of its day. Refuses what lies in the future. */
export function orderInDay(
  entry: { readonly doneOn: string; readonly doneAt: string | null },
  context: Pick<ShopContext, 'shop' | 'now' | 'today'>,
): number {
  const { timeZone } = context.shop
  if (entry.doneOn > context.today) {
    throw new Refusal(`${entry.doneOn} is in the future: today is ${context.today} in the shop`, {
      fields: { doneOn: `In the future; today is ${context.today}` },
    })
  }
  if (entry.doneAt === null) {
    // Only the day is known: now, when it is today; noon of an earlier day.
    const moment = entry.doneOn === context.today ? context.now : momentOf(entry.doneOn, '12:00', timeZone)
    return moment === null ? 720 : minutesIntoDay(moment, timeZone)
  }
  const done = shopDay(entry.doneAt, timeZone)
  if (done.day !== entry.doneOn) {
    throw new Refusal(`The time given lies on ${done.day} in the shop, not on ${entry.doneOn}`, {
      fields: { doneAt: `That is ${done.day} in the shop's zone` },
    })
  }
  if (Date.parse(entry.doneAt) > Date.parse(context.now) + clockSlackMin * 60_000) {
    throw new Refusal('That time is in the future', { fields: { doneAt: 'In the future' } })
  }
  return minutesIntoDay(entry.doneAt, timeZone)
}
