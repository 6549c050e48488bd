import 'server-only'
import type { Asked } from '#lib/core/search/index'
import type { Role } from '#lib/schema/shop'
import type { Sql } from '../db'
import { asFound, type Found, fitOf, hasWords, likeText, nothing } from './match'

/** Built parts, lots, pictures and people. Each answers the best first, at most `limit`. */

export async function findBuiltParts(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const byCode = asked.code === '' ? sql`` : sql`or squeezed(b.serial) like ${`${likeText(asked.code)}%`}`
  const rows = await sql`
    select b.id, b.serial as title, coalesce(p.name, '') as name, '' as state, b.where_now as place, b.note as detail,
      ${fitOf(sql, sql`b.serial`, sql`b.serial`, asked)} as fit
    from built_part b left join part p on p.id = b.part_id
    where (${hasWords(sql, sql`plain_words(' ' || b.serial || ' ' || b.where_now || ' ' || b.note)`, asked.words)}) ${byCode}
    order by fit, b.serial limit ${limit + 1}`
  return asFound('built-part', rows, limit)
}

/** A lot also by its material or product with the lot: "sealcoat T00012". */
export async function findLots(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const ofSubject = (word: string) => sql`
    (plain_words(' ' || l.lot || ' ' || l.place || ' ' || l.note) like ${`%${likeText(word)}%`}
      or l.material_id in (select id from material where plain_words(' ' || code || ' ' || name) like ${`%${likeText(word)}%`})
      or l.product_id in (select id from product where plain_words(' ' || name) like ${`%${likeText(word)}%`}))`
  if (asked.words.some((word) => word.length < 2)) return nothing
  const all = asked.words.map(ofSubject).reduce((left, right) => sql`${left} and ${right}`)
  const rows = await sql`
    select l.id, l.lot as title, coalesce(m.name, d.name) as name,
      case when l.closed_on is not null then l.closed_why when l.expires_on < current_date then 'late' else '' end as state, l.place,
      l.container as detail, ${fitOf(sql, sql`l.lot`, sql`l.lot`, asked)} as fit
    from stock_lot l left join material m on m.id = l.material_id left join product d on d.id = l.product_id
    where ${all}
    order by fit, l.closed_on desc nulls first, l.received_on desc, l.lot limit ${limit + 1}`
  return asFound('lot', rows, limit)
}

export async function findPictures(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const rows = await sql`
    select x.id, case when x.caption = '' then x.view else x.caption end as title, '' as name, '' as state, x.view as place,
      x.kind as detail, x.taken_on as "on", 2 as fit,
      case when m.id is not null then 'mould' when n.id is not null then 'pattern' when s.id is not null then 'set' else 'built-part' end as "ofKind",
      coalesce(m.code, n.code, s.code, b.serial) as "ofCode"
    from picture x left join mould m on m.id = x.mould_id left join pattern n on n.id = x.pattern_id left join mould_set s on s.id = x.set_id
      left join built_part b on b.id = x.built_part_id
    where x.put_away_at is null and (${hasWords(sql, sql`plain_words(' ' || x.caption || ' ' || x.view)`, asked.words)})
    order by x.taken_on desc, x.id limit ${limit + 1}`
  return asFound('picture', rows, limit)
}

/** People by name or initials; the lead also by e-mail address. Who has left is found as well: the name stays on the entries. */
export async function findPeople(sql: Sql, asked: Asked, limit: number, role: Role): Promise<Found> {
  const text =
    role === 'lead'
      ? sql`' ' || x.name || ' ' || x.initials || ' ' || x.email`
      : sql`' ' || x.name || ' ' || x.initials`
  const rows = await sql`
    select x.id, x.name as title, x.initials as name, case when x.ended_at is null then '' else 'has left' end as state, '' as place,
      ${role === 'lead' ? sql`x.role || ', ' || x.email` : sql`x.role`} as detail, ${fitOf(sql, sql`x.initials`, sql`x.name`, asked)} as fit
    from person x where (${hasWords(sql, sql`plain_words(${text})`, asked.words)}) or squeezed(x.initials) = ${asked.code}
    order by fit, x.ended_at desc nulls first, x.name limit ${limit + 1}`
  return asFound('person', rows, limit)
}
