import 'server-only'
import type { OpenMatter } from '#lib/core/log/index'
import { db, type Sql } from './db'

/** An open matter with the mould or the pattern that it is about. */
export interface NamedMatter extends OpenMatter {
  readonly of: 'mould' | 'pattern'
  readonly code: string
  readonly name: string
}

export type MattersOf = { readonly mouldIds: readonly string[] } | { readonly patternId: string } | null

function about(sql: Sql, of: MattersOf) {
  if (of === null) return sql`true`
  return 'mouldIds' in of
    ? sql`o.mould_id = any(${[...of.mouldIds]}::uuid[])`
    : sql`o.pattern_id = ${of.patternId}`
}

/** Open matters of some moulds, of one pattern, or of all: those with a day first, the most overdue on top. */
export async function listOpenMatters(
  of: MattersOf,
  { limit = null, offset = 0 }: { readonly limit?: number | null; readonly offset?: number } = {},
): Promise<NamedMatter[]> {
  const { sql } = db()
  const rows = await sql`
    with o as (select o.* from open_matter o where ${about(sql, of)}
      order by o.until_on nulls last, o.done_on, o.entry_id limit ${limit} offset ${offset})
    select o.entry_id as "entryId", o.kind, o.what, o.who, o.until_on as "untilOn", o.done_on as "doneOn", o.by_name as "byName",
      a.name as "areaName", o.carried, case when o.mould_id is null then 'pattern' else 'mould' end as "of",
      coalesce(m.code, t.code) as code, coalesce(m.name, t.name) as name
    from o left join face_area a on a.id = o.area_id left join mould m on m.id = o.mould_id
      left join pattern t on t.id = o.pattern_id
    order by o.until_on nulls last, o.done_on, o.entry_id`
  return rows as unknown as NamedMatter[]
}

/** How many matters are open in the whole shop. */
export async function countOpenMatters(): Promise<number> {
  const [row] = await db().sql<{ count: number }[]>`select count(*)::int as count from open_matter`
  return row?.count ?? 0
}
