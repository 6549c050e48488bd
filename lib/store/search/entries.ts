import 'server-only'
import { entryWords, type LogEntry } from '#lib/core/log/index'
import { type Asked, kindsNamed, squeeze } from '#lib/core/search/index'
import type { Sql } from '../db'
import { withPlaces } from '../face-places'
import { asFound, type Found, wordPattern } from './match'

/** What words stand for in the log beside themselves. */
interface Names {
  readonly moulds: ReadonlyMap<string, readonly string[]>
  readonly patterns: ReadonlyMap<string, readonly string[]>
  readonly people: ReadonlyMap<string, readonly string[]>
}

/**
 * Entries of the log, last written first. Every word stands in the entry, or is the code of its mould or pattern, or part of
 * the name of who wrote it, or of the name of its kind: "HU-0012 leak", "Tove crack".
 */
export async function findEntries(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const names = await namesOf(sql, asked.words)
  const means = asked.words.map((word) => {
    const moulds = names.moulds.get(squeeze(word)) ?? []
    const patterns = names.patterns.get(squeeze(word)) ?? []
    const people = names.people.get(word) ?? []
    const kinds = kindsNamed(word)
    return sql`(entry_words(e.note, e.data) like ${wordPattern(word)}
      ${moulds.length > 0 ? sql`or e.mould_id = any(${[...moulds]}::uuid[])` : sql``}
      ${patterns.length > 0 ? sql`or e.pattern_id = any(${[...patterns]}::uuid[])` : sql``}
      ${people.length > 0 ? sql`or e.by_id = any(${[...people]}::uuid[])` : sql``}
      ${kinds.length > 0 ? sql`or e.kind = any(${[...kinds]}::text[])` : sql``})`
  })
  const all = means.reduce((left, right) => sql`${left} and ${right}`)
  const rows = await sql`
    with found as (select e.* from log_entry e where ${all} order by e.written_at desc, e.id desc limit ${limit + 1})
    select e.id, e.kind, e.data, e.note, e.done_on as "doneOn", e.by_name as "byName", e.mould_id as "mouldId", e.area_id as "areaId", a.name as "areaName", p.number as "patchNumber",
      (case when m.id is null then 'pattern' else 'mould' end) as "ofKind", coalesce(m.code, n.code) as "ofCode", c.id is not null as struck
    from found e left join mould m on m.id = e.mould_id left join pattern n on n.id = e.pattern_id left join face_area a on a.id = e.area_id
      left join patch p on p.id = e.patch_id left join log_entry c on c.corrects_id = e.id
    order by e.written_at desc, e.id desc`
  const placed = await withPlaces(rows as unknown as FoundEntry[], ({ mouldId }) => mouldId, sql)
  return asFound('entry', placed.map(told), limit)
}

type FoundEntry = LogEntry & { readonly mouldId: string | null; readonly struck: boolean }

function told(row: FoundEntry) {
  const { what, detail } = entryWords(row)
  return {
    ...row,
    title: what,
    name: [detail, row.note].filter(Boolean).join('. '),
    state: row.struck ? 'put right' : '',
    place: '',
    on: row.doneOn,
    detail: row.byName,
    fit: 2,
  }
}

async function namesOf(sql: Sql, words: readonly string[]): Promise<Names> {
  const codes = words.map(squeeze).filter((code) => code !== '')
  const rows = await sql<{ what: keyof Names; word: string; id: string }[]>`
    select 'moulds' as what, squeezed(code) as word, id from mould where squeezed(code) = any(${codes}::text[])
    union all select 'moulds', squeezed(s.code), m.id from mould_set s join mould m on m.set_id = s.id where squeezed(s.code) = any(${codes}::text[])
    union all select 'patterns', squeezed(code), id from pattern where squeezed(code) = any(${codes}::text[])
    union all select 'people', w.word, p.id from person p join unnest(${[...words]}::text[]) w (word)
      on plain_words(p.initials) = w.word or (length(w.word) > 2 and w.word = any(string_to_array(plain_words(p.name), ' ')))`
  const names = { moulds: new Map(), patterns: new Map(), people: new Map() } as Record<
    keyof Names,
    Map<string, string[]>
  >
  for (const { what, word, id } of rows) names[what].set(word, [...(names[what].get(word) ?? []), id])
  return names
}
