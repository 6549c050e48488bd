import 'server-only'
import type postgres from 'postgres'
import type { LogEntry, LogKind } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import type { NewLogEntry } from '#lib/schema/log'
import { db } from './db'
import { Refusal, violatedConstraint } from './errors'
import { contentHash } from './once'


type Sql = postgres.Sql | postgres.TransactionSql

/** The columns of an entry with the names of its area and patch, as the core speaks of it. */
function entryColumns(sql: Sql) {
  return sql`
    e.id, e.kind, e.done_on as "doneOn", to_json(e.done_at) #>> '{}' as "doneAt", e.precision,
    to_json(e.written_at) #>> '{}' as "writtenAt", e.by_name as "byName",
    e.area_id as "areaId", a.name as "areaName", e.patch_id as "patchId", p.number as "patchNumber",
    e.note, e.data, e.corrects_id as "correctsId", c.id as "correctedById"`
}

function entryJoins(sql: Sql) {
  return sql`
    from log_entry e
    left join face_area a on a.id = e.area_id
    left join patch p on p.id = e.patch_id
    left join log_entry c on c.corrects_id = e.id`
}

export interface HistoryFilter {
  readonly kinds?: readonly LogKind[]
  readonly limit?: number
}

/** The history of a mould, newest first, corrected entries and their corrections included. */
export async function listEntries(mouldId: string, filter: HistoryFilter = {}): Promise<LogEntry[]> {
  const { sql } = db()
  const kinds = filter.kinds && filter.kinds.length > 0 ? [...filter.kinds] : null
  const rows = await sql`
    select ${entryColumns(sql)} ${entryJoins(sql)}
    where e.mould_id = ${mouldId} ${kinds ? sql`and e.kind in ${sql(kinds)}` : sql``}
    order by e.done_on desc, e.day_order desc, e.written_at desc, e.id desc
    limit ${filter.limit ?? 500}`
  return rows as unknown as LogEntry[]
}

export async function readEntry(id: string): Promise<(LogEntry & { readonly mouldId: string }) | null> {
  const { sql } = db()
  const rows = await sql`select ${entryColumns(sql)}, e.mould_id as "mouldId" ${entryJoins(sql)} where e.id = ${id}`
  return (rows[0] as unknown as (LogEntry & { readonly mouldId: string }) | undefined) ?? null
}

/** Newest entries over all moulds, for the Bench. */
export async function latestEntries(limit: number): Promise<(LogEntry & { mouldCode: string; mouldName: string })[]> {
  const { sql } = db()
  const rows = await sql`
    select ${entryColumns(sql)}, m.code as "mouldCode", m.name as "mouldName" ${entryJoins(sql)}
    join mould m on m.id = e.mould_id
    order by e.written_at desc, e.id desc limit ${limit}`
  return rows as unknown as (LogEntry & { mouldCode: string; mouldName: string })[]
}

/** How the products that were last used are called, newest first, to be offered again. */
export async function lastProducts(): Promise<{ kind: 'strip' | 'clean' | 'seal' | 'coat'; product: string; lot: string | null }[]> {
  const { sql } = db()
  const rows = await sql`
    select distinct on (kind, product) kind, data ->> 'product' as product, data ->> 'lot' as lot, done_on
    from (select *, data ->> 'product' as product from effective_entry where kind in ('strip', 'clean', 'seal', 'coat')) e
    order by kind, product, done_on desc, day_order desc, written_at desc`
  return (rows as unknown as { kind: 'coat'; product: string; lot: string | null; done_on: string }[]).sort((x, y) =>
    x.done_on < y.done_on ? 1 : -1,
  )
}

/** Sends an entry's moment in the log: the day it was done, its order within the day. */
export interface EntryToWrite {
  readonly entry: NewLogEntry
  readonly dayOrder: number
  /** Judges the entry under the mould's lock and answers the data to be stored; throws what must not be written. */
  readonly judge?: () => Promise<LogEntry['data']>
}

/**
 * Appends entries, all or none. An id that is there with the same content is answered as written; with other
 * content it is refused. Entries that move the mould or set its state name the version they saw.
 */
export async function appendEntries(actor: Actor, entries: readonly EntryToWrite[]): Promise<void> {
  await db().sql.begin(async (sql) => {
    for (const each of entries) await appendEntry(sql, actor, each)
  })
}

export async function appendEntry(sql: postgres.TransactionSql, actor: Actor, { entry, dayOrder, judge }: EntryToWrite) {
  const hash = contentHash(entry)
  // Held until the end: state is judged and changed by one writer at a time.
  const moulds = await sql`select version, code from mould where id = ${entry.mouldId} for update`
  const mould = moulds[0]
  if (!mould) throw new Refusal('There is no such mould', { status: 404 })
  const stored = (await sql`select content_hash from log_entry where id = ${entry.id}`)[0]
  if (stored) {
    if (stored.content_hash === hash) return
    throw new Refusal('This entry was already sent with other content. It is stored as it was sent first; correct it there.', {
      status: 409,
      current: { version: mould.version as number, values: { entryId: entry.id } },
    })
  }
  if (entry.sawVersion !== null && entry.sawVersion !== mould.version) {
    const place = (await sql`select place from mould_place where mould_id = ${entry.mouldId}`)[0]?.place ?? ''
    const flags = await sql`select state, reason from mould_flag where mould_id = ${entry.mouldId} and is_on`
    throw new Refusal(`Somebody else changed ${mould.code} meanwhile. Look at it as it is now, then decide.`, {
      status: 409,
      current: {
        version: mould.version as number,
        values: { place, states: flags.map((flag) => `${flag.state}: ${flag.reason}`).join('; ') },
      },
    })
  }
  const data = judge ? await judge() : entry.data
  try {
    await sql`
      insert into log_entry (id, mould_id, kind, done_on, done_at, precision, day_order, by_id, by_name, area_id, patch_id,
        corrects_id, data, note, content_hash)
      values (${entry.id}, ${entry.mouldId}, ${entry.kind}, ${entry.doneOn}, ${entry.doneAt}, ${entry.precision}, ${dayOrder},
        ${actor.id}, ${actor.name}, ${entry.areaId}, ${entry.patchId}, ${entry.correctsId}, ${sql.json(data as never)},
        ${entry.note}, ${hash})`
  } catch (error) {
    throw refusalOf(error) ?? error
  }
  if (entry.kind === 'moved' || entry.kind === 'state') {
    await sql`update mould set version = version + 1 where id = ${entry.mouldId}`
  }
  await sql`
    insert into audit (by_id, by_name, act, record_kind, record_id, after)
    values (${actor.id}, ${actor.name}, 'made', 'log-entry', ${entry.id}, ${sql.json({ ...entry, hash } as never)})`
}

function refusalOf(error: unknown): Refusal | null {
  switch (violatedConstraint(error)) {
    case 'log_entry_corrects_id_key':
      return new Refusal('Somebody has already put this entry right; correct the newer one', { status: 409 })
    case 'log_entry_area_of_mould':
      return new Refusal('That area belongs to another mould', { fields: { areaId: 'Choose an area of this mould' } })
    case 'log_entry_patch_of_mould':
      return new Refusal('That patch belongs to another mould', { fields: { patchId: 'Choose a patch of this mould' } })
    case 'log_entry_correction_of_mould':
      return new Refusal('The entry to be put right belongs to another mould', { fields: { correctsId: 'Not of this mould' } })
    default:
      return null
  }
}
