import 'server-only'
import type { LogEntry, LogKind } from '#lib/core/log/index'
import { fold } from '#lib/core/search/index'
import { db, type Sql } from './db'
import { withPlaces } from './face-places'
import { likeText } from './search/match'

/** Of whom the history is: a mould or a pattern. */
export type LogSubject = { readonly mouldId: string } | { readonly patternId: string }

/** A stored entry with the mould or the pattern that it belongs to. */
export type StoredEntry = LogEntry & { readonly mouldId: string | null; readonly patternId: string | null }

/** The columns of an entry with the names of its area and patch, as the core speaks of it. */
function entryColumns(sql: Sql) {
  return sql`
    e.id, e.kind, e.done_on as "doneOn", to_json(e.done_at) #>> '{}' as "doneAt", e.precision,
    to_json(e.written_at) #>> '{}' as "writtenAt", e.by_name as "byName",
    e.area_id as "areaId", a.name as "areaName", e.patch_id as "patchId", p.number as "patchNumber",
    e.note, e.data, e.group_id as "groupId", e.corrects_id as "correctsId", c.id as "correctedById",
    coalesce((
      select json_agg(json_build_object('lotId', l.id, 'lot', l.lot, 'name', coalesce(m.name, d.name), 'amount', u.amount,
        'unit', coalesce(d.unit, 'm2')) order by coalesce(m.name, d.name), l.lot)
      from lot_move u join stock_lot l on l.id = u.lot_id left join material m on m.id = l.material_id
        left join product d on d.id = l.product_id
      where u.entry_id = e.id and u.kind = 'used'), '[]') as uses`
}

function entryJoins(sql: Sql) {
  return sql`
    from log_entry e
    left join face_area a on a.id = e.area_id
    left join patch p on p.id = e.patch_id
    left join log_entry c on c.corrects_id = e.id`
}

function ofSubject(sql: Sql, subject: LogSubject) {
  return 'mouldId' in subject
    ? sql`e.mould_id = ${subject.mouldId}`
    : sql`e.pattern_id = ${subject.patternId}`
}

export interface HistoryFilter {
  readonly kinds?: readonly LogKind[]
  /** Words that all stand in the entry, its area or the name of who wrote it, in any case of letters, with or without accents. */
  readonly find?: string
  /** Only what stands before this entry. */
  readonly olderThan?: string
  /** How many of the newest are passed over. */
  readonly skip?: number
  readonly limit?: number
}

/** What a filter lets through, without regard to the page. */
function fits(sql: Sql, subject: LogSubject, { kinds = [], find = '' }: HistoryFilter) {
  const words = fold(find)
    .split(/\s+/)
    .filter((word) => word !== '')
    .slice(0, 8)
  const told = words.map((word) => {
    const like = `%${likeText(word)}%`
    return sql`and (entry_words(e.note, e.data) like ${like} or plain_words(coalesce(a.name, '')) like ${like}
      or plain_words(e.by_name) like ${like})`
  })
  return sql`${ofSubject(sql, subject)} ${kinds.length > 0 ? sql`and e.kind in ${sql([...kinds])}` : sql``}
    ${told.reduce((all, each) => sql`${all} ${each}`, sql``)}`
}

/** The history of a mould or a pattern, newest first, corrected entries and their corrections included. */
export async function listEntries(subject: LogSubject, filter: HistoryFilter = {}): Promise<LogEntry[]> {
  const { sql } = db()
  const older = filter.olderThan
    ? sql`and (e.done_on, e.day_order, coalesce(e.stands_at, e.written_at), e.written_at, e.id) < (
        select o.done_on, o.day_order, coalesce(o.stands_at, o.written_at), o.written_at, o.id from log_entry o where o.id = ${filter.olderThan})`
    : sql``
  const rows = await sql`
    select ${entryColumns(sql)} ${entryJoins(sql)}
    where ${fits(sql, subject, filter)} ${older}
    order by e.done_on desc, e.day_order desc, coalesce(e.stands_at, e.written_at) desc, e.written_at desc, e.id desc
    limit ${filter.limit ?? 500} offset ${filter.skip ?? 0}`
  const mouldId = 'mouldId' in subject ? subject.mouldId : null
  return withPlaces(rows as unknown as LogEntry[], () => mouldId)
}

/** How many entries that a filter lets through stand above an entry of the same history; null where it has no such entry. */
export async function entriesAbove(
  subject: LogSubject,
  filter: HistoryFilter,
  id: string,
): Promise<number | null> {
  const { sql } = db()
  const [row] = await sql<{ above: number }[]>`
    select (select count(*)::int from log_entry e left join face_area a on a.id = e.area_id
      where ${fits(sql, subject, filter)} and (e.done_on, e.day_order, coalesce(e.stands_at, e.written_at), e.written_at, e.id)
        > (o.done_on, o.day_order, coalesce(o.stands_at, o.written_at), o.written_at, o.id)) as above
    from log_entry o where o.id = ${id}
      and ${'mouldId' in subject ? sql`o.mould_id = ${subject.mouldId}` : sql`o.pattern_id = ${subject.patternId}`}`
  return row?.above ?? null
}

export interface EntryCount {
  /** How many entries a filter lets through, and how many there are in all. */
  readonly fitting: number
  readonly total: number
  /** Day of the oldest. */
  readonly beginsOn: string | null
}

export async function countEntries(subject: LogSubject, filter: HistoryFilter): Promise<EntryCount> {
  const { sql } = db()
  const [row] = await sql<EntryCount[]>`
    select count(*) filter (where ${fits(sql, subject, filter)})::int as fitting, count(*)::int as total, min(e.done_on) as "beginsOn"
    from log_entry e left join face_area a on a.id = e.area_id where ${ofSubject(sql, subject)}`
  return row ?? { fitting: 0, total: 0, beginsOn: null }
}

export async function readEntry(id: string, sql: Sql = db().sql): Promise<StoredEntry | null> {
  const rows = await sql`
    select ${entryColumns(sql)}, e.mould_id as "mouldId", e.pattern_id as "patternId" ${entryJoins(sql)} where e.id = ${id}`
  const [entry] = await withPlaces(rows as unknown as StoredEntry[], ({ mouldId }) => mouldId, sql)
  return entry ?? null
}

/** An entry with the code and name of its mould or pattern. */
export type NamedEntry = LogEntry & {
  readonly of: 'mould' | 'pattern'
  readonly code: string
  readonly name: string
}

/** Newest entries over all moulds and patterns, for the Bench. */
export async function latestEntries(limit: number): Promise<NamedEntry[]> {
  const { sql } = db()
  const rows = await sql`
    select ${entryColumns(sql)}, case when e.mould_id is null then 'pattern' else 'mould' end as "of",
      coalesce(m.code, t.code) as code, coalesce(m.name, t.name) as name, e.mould_id as "mouldId" ${entryJoins(sql)}
    left join mould m on m.id = e.mould_id
    left join pattern t on t.id = e.pattern_id
    order by e.written_at desc, e.id desc limit ${limit}`
  return withPlaces(rows as unknown as (NamedEntry & { mouldId: string | null })[], ({ mouldId }) => mouldId)
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

/** The latest entry of each pattern that counts, by the pattern's id. */
export async function lastOfPatterns(): Promise<ReadonlyMap<string, LogEntry>> {
  const { sql } = db()
  const rows = await sql<(LogEntry & { patternId: string })[]>`
    select distinct on (e.pattern_id) ${entryColumns(sql)}, e.pattern_id as "patternId" ${entryJoins(sql)}
    where e.pattern_id is not null and e.kind <> 'correction' and c.id is null
    order by e.pattern_id, e.done_on desc, e.day_order desc, coalesce(e.stands_at, e.written_at) desc, e.written_at desc, e.id desc`
  return new Map(rows.map(({ patternId, ...entry }) => [patternId, entry as LogEntry]))
}
