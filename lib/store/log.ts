import 'server-only'
import type postgres from 'postgres'
import { entryWords, type LogEntry, type LogKind } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import type { NewLogEntry } from '#lib/schema/log'
import { db, type Sql } from './db'
import { Refusal, violatedConstraint } from './errors'
import { contentHash } from './once'

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
    order by e.done_on desc, e.day_order desc, coalesce(e.stands_at, e.written_at) desc, e.written_at desc, e.id desc
    limit ${filter.limit ?? 500}`
  return rows as unknown as LogEntry[]
}

export async function readEntry(
  id: string,
  sql: Sql = db().sql,
): Promise<(LogEntry & { readonly mouldId: string }) | null> {
  const rows =
    await sql`select ${entryColumns(sql)}, e.mould_id as "mouldId" ${entryJoins(sql)} where e.id = ${id}`
  return (rows[0] as unknown as (LogEntry & { readonly mouldId: string }) | undefined) ?? null
}

/** Newest entries over all moulds, for the Bench. */
export async function latestEntries(
  limit: number,
): Promise<(LogEntry & { mouldCode: string; mouldName: string })[]> {
  const { sql } = db()
  const rows = await sql`
    select ${entryColumns(sql)}, m.code as "mouldCode", m.name as "mouldName" ${entryJoins(sql)}
    join mould m on m.id = e.mould_id
    order by e.written_at desc, e.id desc limit ${limit}`
  return rows as unknown as (LogEntry & { mouldCode: string; mouldName: string })[]
}

/** How the products that were last used are called, newest first, to be offered again. */
export async function lastProducts(): Promise<
  { kind: 'strip' | 'clean' | 'seal' | 'coat'; product: string; lot: string | null }[]
> {
  const { sql } = db()
  const rows = await sql`
    select distinct on (kind, product) kind, data ->> 'product' as product, data ->> 'lot' as lot, done_on
    from (select *, data ->> 'product' as product from effective_entry where kind in ('strip', 'clean', 'seal', 'coat')) e
    order by kind, product, done_on desc, day_order desc, written_at desc`
  return (rows as unknown as { kind: 'coat'; product: string; lot: string | null; done_on: string }[]).sort(
    (x, y) => (x.done_on < y.done_on ? 1 : -1),
  )
}

/** Whether a pull of this mould stands in the log later than a place in a day's order. */
export async function pullAfter(
  mouldId: string,
  doneOn: string,
  dayOrder: number,
  sql: Sql = db().sql,
): Promise<boolean> {
  const rows = await sql`
    select 1 from effective_entry where mould_id = ${mouldId} and kind = 'pull' and (done_on, day_order) > (${doneOn}, ${dayOrder}::int)
    limit 1`
  return rows.length > 0
}

/** An entry with its order within its day. */
export interface EntryToWrite {
  readonly entry: NewLogEntry
  readonly dayOrder: number
  /**
   * Judges the entry under the mould's lock, on the connection that holds it, and answers the data to be stored;
   * throws what must not be written.
   */
  readonly judge?: (sql: Sql) => Promise<LogEntry['data']>
}

/**
 * Appends entries, all or none, and answers how many were written now. An id that is there with the same content is
 * answered as written; with other content it is refused. Entries that move the mould or set its state name the
 * version they saw.
 */
export async function appendEntries(actor: Actor, entries: readonly EntryToWrite[]): Promise<number> {
  return db().sql.begin(async (sql) => {
    let written = 0
    for (const each of entries) if (await appendEntry(sql, actor, each)) written += 1
    return written
  })
}

/** Appends one entry within a transaction; false when it was there already. */
export async function appendEntry(
  sql: postgres.TransactionSql,
  actor: Actor,
  { entry, dayOrder, judge }: EntryToWrite,
): Promise<boolean> {
  const hash = contentHash(entry)
  // Held until the end: state is judged and changed by one writer at a time.
  const moulds = await sql`select version, code from mould where id = ${entry.mouldId} for update`
  const mould = moulds[0]
  if (!mould) throw new Refusal('There is no such mould', { status: 404 })
  const stored = (await sql`select content_hash from log_entry where id = ${entry.id}`)[0]
  if (stored) {
    if (stored.content_hash === hash) return false
    throw alreadySent(await readEntry(entry.id, sql))
  }
  if (entry.sawVersion !== null && entry.sawVersion !== mould.version) {
    const place = (await sql`select place from mould_place where mould_id = ${entry.mouldId}`)[0]?.place ?? ''
    const flags = await sql`select state, reason from mould_flag where mould_id = ${entry.mouldId} and is_on`
    throw new Refusal(
      `Somebody else changed ${mould.code} meanwhile. Look at it as it is now, then decide.`,
      {
        status: 409,
        current: {
          version: mould.version as number,
          values: { place, states: flags.map((flag) => `${flag.state}: ${flag.reason}`).join('; ') },
        },
      },
    )
  }
  const data = judge ? await judge(sql) : entry.data
  const wrong = entry.correctsId === null ? null : await placeOfWrong(sql, entry.correctsId)
  const sameDay = wrong !== null && wrong.doneOn === entry.doneOn
  // What puts an entry right stands where that one stood, unless it says another day or time.
  const order = sameDay && entry.doneAt === null ? wrong.dayOrder : dayOrder
  const standsAt = sameDay && order === wrong.dayOrder ? wrong.standsAt : null
  try {
    // Written-at rises with every entry of a mould, also where two are written within the same millisecond.
    await sql`
      insert into log_entry (id, mould_id, kind, done_on, done_at, precision, day_order, written_at, stands_at, by_id, by_name,
        area_id, patch_id, corrects_id, data, note, content_hash)
      values (${entry.id}, ${entry.mouldId}, ${entry.kind}, ${entry.doneOn}, ${entry.doneAt}, ${entry.precision}, ${order},
        greatest(clock_timestamp(), (select max(written_at) from log_entry where mould_id = ${entry.mouldId}) + interval '1 millisecond'),
        ${standsAt}, ${actor.id}, ${actor.name}, ${entry.areaId}, ${entry.patchId}, ${entry.correctsId}, ${sql.json(data as never)},
        ${entry.note}, ${hash})`
  } catch (error) {
    throw refusalOf(error) ?? error
  }
  const moves = (kind: LogKind | undefined) => kind === 'moved' || kind === 'state'
  if (moves(entry.kind) || moves(wrong?.kind)) {
    await sql`update mould set version = version + 1 where id = ${entry.mouldId}`
  }
  await sql`
    insert into audit (by_id, by_name, act, record_kind, record_id, after)
    values (${actor.id}, ${actor.name}, 'made', 'log-entry', ${entry.id}, ${sql.json({ ...entry, hash } as never)})`
  return true
}

/** Where an entry that is to be put right stands among the others. */
async function placeOfWrong(sql: Sql, id: string) {
  const [wrong] = await sql<{ kind: LogKind; doneOn: string; dayOrder: number; standsAt: string }[]>`
    select kind, done_on as "doneOn", day_order as "dayOrder", coalesce(stands_at, written_at)::text as "standsAt"
    from log_entry where id = ${id}`
  return wrong ?? null
}

function alreadySent(entry: LogEntry | null): Refusal {
  const words = entry ? entryWords(entry) : null
  const stored =
    words && entry
      ? `: ${words.what}${words.detail ? `, ${words.detail}` : ''}, on ${entry.doneOn} by ${entry.byName}`
      : ''
  return new Refusal(
    `This entry was already sent with other content. Stored is what came first${stored}. Correct it there.`,
    {
      status: 409,
      ...(entry ? { stored: { ...entry } } : {}),
    },
  )
}

function refusalOf(error: unknown): Refusal | null {
  switch (violatedConstraint(error)) {
    case 'log_entry_pkey':
      return new Refusal('This id was just used for an entry of another mould; make a new id', {
        status: 409,
      })
    case 'log_entry_corrects_id_key':
      return new Refusal('Somebody has already put this entry right; correct the newer one', { status: 409 })
    case 'log_entry_area_of_mould':
      return new Refusal('That area belongs to another mould', {
        fields: { areaId: 'Choose an area of this mould' },
      })
    case 'log_entry_patch_of_mould':
      return new Refusal('That patch belongs to another mould', {
        fields: { patchId: 'Choose a patch of this mould' },
      })
    case 'log_entry_correction_of_mould':
      return new Refusal('The entry to be put right belongs to another mould', {
        fields: { correctsId: 'Not of this mould' },
      })
    default:
      return null
  }
}
