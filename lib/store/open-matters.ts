import 'server-only'
import type { OpenMatter } from '#lib/core/log/index'
import { db } from './db'

/** An open matter with the mould or the pattern that it is about. */
export interface NamedMatter extends OpenMatter {
  readonly of: 'mould' | 'pattern'
  readonly code: string
  readonly name: string
}

/** Open matters of some moulds, of one pattern, or of all: those with a day first, the most overdue on top. */
export async function listOpenMatters(
  of: { readonly mouldIds: readonly string[] } | { readonly patternId: string } | null,
): Promise<NamedMatter[]> {
  const { sql } = db()
  const about =
    of === null
      ? sql`true`
      : 'mouldIds' in of
        ? sql`o.mould_id = any(${[...of.mouldIds]}::uuid[])`
        : sql`o.pattern_id = ${of.patternId}`
  const rows = await sql`
    select o.entry_id as "entryId", o.kind, o.what, o.who, o.until_on as "untilOn", o.done_on as "doneOn", o.by_name as "byName",
      a.name as "areaName", o.carried, case when o.mould_id is null then 'pattern' else 'mould' end as "of",
      coalesce(m.code, t.code) as code, coalesce(m.name, t.name) as name
    from open_matter o left join face_area a on a.id = o.area_id left join mould m on m.id = o.mould_id
      left join pattern t on t.id = o.pattern_id
    where ${about} order by o.until_on nulls last, o.done_on, o.entry_id`
  return rows as unknown as NamedMatter[]
}
