import 'server-only'
import type { Asked } from '#lib/core/search/index'
import type { Sql } from '../db'
import { asFound, type Found, fitOf, hasWords, likeText, type Piece, wordPattern } from './match'

/** Things that are known by a code and a name. Each answers the best first, at most `limit`. */

export const mouldText = (sql: Sql) =>
  sql`plain_words(' ' || m.code || ' ' || m.name || ' ' || m.owner || ' ' || m.note || ' ' || m.demoulding || ' ' || m.do_nots)`
export const partText = (sql: Sql) => sql`plain_words(' ' || p.code || ' ' || p.name || ' ' || p.note)`
export const patternText = (sql: Sql) =>
  sql`plain_words(' ' || n.code || ' ' || n.name || ' ' || n.owner || ' ' || n.place || ' ' || n.note)`
export const setText = (sql: Sql) => sql`plain_words(' ' || s.code || ' ' || s.name || ' ' || s.note)`

/** Moulds whose tally is not up to date are looked at one by one, but not thousands of them. */
const mostStale = 500

/**
 * Moulds in which a word stands: in their own words and notes, in the names of part, pattern and split mould, or where they
 * are. (The offset has the places of stale moulds looked up mould by mould.)
 */
function mouldsWith(sql: Sql, word: string): Piece {
  const like = wordPattern(word)
  return sql`(
    select m.id from mould m where ${mouldText(sql)} like ${like}
    union select t.mould_id from mould_tally t where t.dirty = t.clean and t.words like ${like}
    union select m.id from (select mould_id from mould_tally where dirty <> clean limit ${mostStale}) t join mould m on m.id = t.mould_id
      left join part p on p.id = m.part_id left join pattern n on n.id = m.pattern_id left join mould_set s on s.id = m.set_id
      left join lateral (select place from mould_place w where w.mould_id = m.id offset 0) w on true
      where plain_words(' ' || concat_ws(' ', p.code, p.name, n.code, n.name, s.code, s.name, w.place)) like ${like})`
}

export async function findMoulds(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const all = asked.words
    .map((word) => mouldsWith(sql, word))
    .reduce((left, right) => sql`${left} intersect ${right}`)
  const byCode =
    asked.code === ''
      ? sql``
      : sql`union select id from mould where squeezed(code) like ${`${likeText(asked.code)}%`}`
  const rows = await sql`
    with found as (${all} ${byCode})
    select m.id, m.code as title, m.name, '' as state, '' as place, coalesce(s.code || ', piece ' || m.piece_no, p.name, '') as detail,
      ${fitOf(sql, sql`m.code`, sql`m.name`, asked)} as fit
    from found join mould m using (id) left join part p on p.id = m.part_id left join mould_set s on s.id = m.set_id
    order by fit, m.code limit ${limit + 1}`
  return asFound('mould', rows, limit)
}

export async function findSets(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const rows = await sql`
    select s.id, s.code as title, s.name, '' as state, '' as place,
      (select count(*) || case when count(*) = 1 then ' piece' else ' pieces' end from mould m where m.set_id = s.id) as detail,
      ${fitOf(sql, sql`s.code`, sql`s.name`, asked)} as fit
    from mould_set s where (${hasWords(sql, setText(sql), asked.words)}) or squeezed(s.code) = ${asked.code}
    order by fit, s.code limit ${limit + 1}`
  return asFound('set', rows, limit)
}

export async function findPatterns(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const rows = await sql`
    with found as (
      select n.id from pattern n where ${hasWords(sql, patternText(sql), asked.words)}
      union select id from pattern where squeezed(code) = ${asked.code}
      union select w.pattern_id from pattern_place w where ${hasWords(sql, sql`plain_words(' ' || w.place)`, asked.words)})
    select n.id, n.code as title, n.name, case when n.available then '' else 'gone or unfit' end as state, coalesce(w.place, n.place) as place,
      case when n.can_be_made_again then n.condition else 'can''t be made again' end as detail, n.fit
    from (select n.*, ${fitOf(sql, sql`n.code`, sql`n.name`, asked)} as fit from found join pattern n using (id)
      order by fit, n.code limit ${limit + 1}) n
    left join lateral (select place from pattern_place w where w.pattern_id = n.id) w on true
    order by n.fit, n.code`
  return asFound('pattern', rows, limit)
}

export async function findParts(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const rows = await sql`
    select p.id, p.code as title, p.name, '' as state, '' as place,
      (select string_agg(code, ', ' order by code) from (select code from mould m where m.part_id = p.id order by code limit 4) m) as detail,
      ${fitOf(sql, sql`p.code`, sql`p.name`, asked)} as fit
    from part p where (${hasWords(sql, partText(sql), asked.words)}) or squeezed(p.code) = ${asked.code}
    order by fit, p.code limit ${limit + 1}`
  return asFound('part', rows, limit)
}

export async function findMaterials(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const rows = await sql`
    select x.id, x.code as title, x.name, case when x.retired_at is null then '' else 'no longer used' end as state, '' as place,
      x.role || ', ' || x.fibre_areal_weight_gsm || ' g/m2' as detail, ${fitOf(sql, sql`x.code`, sql`x.name`, asked)} as fit
    from material x where (${hasWords(sql, sql`plain_words(' ' || x.code || ' ' || x.name)`, asked.words)}) or squeezed(x.code) = ${asked.code}
    order by fit, x.retired_at nulls first, x.code limit ${limit + 1}`
  return asFound('material', rows, limit)
}

export async function findStacks(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const rows = await sql`
    select x.id, x.code as title, x.name, '' as state, '' as place,
      (select count(*) from stack_ply y where y.stack_id = x.id) || ' plies' as detail, ${fitOf(sql, sql`x.code`, sql`x.name`, asked)} as fit
    from stack x where (${hasWords(sql, sql`plain_words(' ' || x.code || ' ' || x.name || ' ' || x.note)`, asked.words)}) or squeezed(x.code) = ${asked.code}
    order by fit, x.code limit ${limit + 1}`
  return asFound('stack', rows, limit)
}

export async function findProducts(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const rows = await sql`
    select x.id, x.name as title, '' as name, case when x.retired_at is null then '' else 'no longer used' end as state, x.store_at as place,
      x.use as detail, ${fitOf(sql, sql`x.name`, sql`x.name`, asked)} as fit
    from product x where (${hasWords(sql, sql`plain_words(' ' || x.name || ' ' || x.use || ' ' || x.note)`, asked.words)})
    order by fit, x.retired_at nulls first, x.name limit ${limit + 1}`
  return asFound('product', rows, limit)
}
