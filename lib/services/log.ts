import * as z from 'zod'
import { minutesIntoDay, momentOf, shopDay } from '#lib/core/dates'
import { beforeLayUp, type LogEntry, logKinds } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import { NewLogEntry } from '#lib/schema/log'
import { mouldCounts } from '#lib/store/counts'
import { Refusal } from '#lib/store/errors'
import {
  appendEntries,
  type EntryToWrite,
  pullAfter,
  listEntries as readEntries,
  readEntry,
  lastProducts as readLastProducts,
  latestEntries as readLatest,
} from '#lib/store/log'
import { type ShopContext, shopContext } from './shop'
import { everyone, hands, verb } from './verb'

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

export const listLog = verb(
  'log.list',
  everyone,
  z.object({
    mouldId: z.uuid(),
    kinds: z.array(z.enum(logKinds)).default([]),
    limit: z.int().min(1).max(5000).default(500),
  }),
  (_actor, { mouldId, kinds, limit }) => readEntries(mouldId, { kinds, limit }),
)

export const readLogEntry = verb('log.read', everyone, z.object({ id: z.uuid() }), async (_actor, { id }) => {
  const entry = await readEntry(id)
  if (!entry) throw new Refusal('There is no such entry', { status: 404 })
  return entry
})

export const latestEntries = verb(
  'log.latest',
  everyone,
  z.object({ limit: z.int().min(1).max(200) }),
  (_actor, { limit }) => readLatest(limit),
)

/** Products as they were last written, newest first, to be offered again. */
export const lastProducts = verb('log.products', everyone, z.object({}), () => readLastProducts())

async function prepared(actor: Actor, entry: NewLogEntry, context: ShopContext): Promise<EntryToWrite> {
  if (entry.kind === 'patch-laid' || entry.kind === 'proved') {
    throw new Refusal('This is written by the plan of the patch: open the plan and carry it out there')
  }
  if (entry.kind === 'state' && entry.data.state === 'retired' && actor.role !== 'lead') {
    throw new Refusal('Only a lead retires a mould', { status: 403 })
  }
  if (entry.correctsId !== null) await checkCorrection(entry, entry.correctsId)
  const dayOrder = orderInDay(entry, context)
  if (entry.kind !== 'cleared') return { entry, dayOrder }
  return { entry, dayOrder, judge: (sql) => judgeClearance(actor, entry, dayOrder, context, sql) }
}

async function checkCorrection(entry: NewLogEntry, correctsId: string): Promise<void> {
  const wrong = await readEntry(correctsId)
  if (!wrong) throw new Refusal('The entry to be put right is not there', { status: 404 })
  if (wrong.kind === 'correction' && entry.kind === 'correction') {
    throw new Refusal(
      'What was struck out is not brought back by striking out the strike: write the entry anew',
    )
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

/** The gate: what is open, whether it may be cleared, by whom. Judged under the mould's lock. */
async function judgeClearance(
  actor: Actor,
  entry: Extract<NewLogEntry, { kind: 'cleared' }>,
  dayOrder: number,
  context: ShopContext,
  sql: Parameters<NonNullable<EntryToWrite['judge']>>[0],
): Promise<LogEntry['data']> {
  if (await pullAfter(entry.mouldId, entry.doneOn, dayOrder, sql)) {
    throw new Refusal(
      'A later pull is written down already: a mould is cleared before the lay-up, not after the pull',
      {
        fields: { doneOn: 'A pull stands after it' },
      },
    )
  }
  const counts = (await mouldCounts([entry.mouldId], context.season?.startsOn ?? null, sql)).get(
    entry.mouldId,
  )
  if (!counts) throw new Refusal('There is no such mould', { status: 404 })
  const matters = beforeLayUp(counts, context.shop.rules.upkeep, context.today, context.now)
  const stops = matters.filter((matter) => matter.severity === 'stop')
  const because = entry.data.because
  if (stops.length > 0 && !(actor.role === 'lead' && because)) {
    const open = stops.map((matter) => matter.text).join('. ')
    throw new Refusal(
      actor.role === 'lead'
        ? `${open}. Give a because to clear it all the same.`
        : `${open}. Settle it first, or ask a lead.`,
      actor.role === 'lead' ? { fields: { 'data.because': 'Give a because' } } : {},
    )
  }
  return {
    open: matters.filter((matter) => matter.severity !== 'note').map((matter) => matter.text),
    because,
    proof: counts.unprovedPatches.length > 0,
  }
}
