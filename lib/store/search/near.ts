import 'server-only'
import { type Asked, fold, nearestWord, squeeze } from '#lib/core/search/index'
import type { Sql } from '../db'
import { mouldText, partText, patternText, setText } from './named'

/** Codes of this many of the likest are weighed. */
const likest = 20

/**
 * What was probably meant when nothing was found: every word that stands nowhere is taken for the nearest one of the book's
 * own words and codes. Null when no word comes near.
 */
export async function nearestAsked(sql: Sql, asked: Asked): Promise<string | null> {
  const names = await nameWords(sql)
  const meant: string[] = []
  let changed = false
  for (const word of asked.words) {
    const known = [...names.keys()].some((name) => name.includes(word))
    const near = known ? word : await nearest(sql, word, names)
    if (near === null) return null
    changed ||= near !== word
    meant.push(near)
  }
  return changed ? meant.join(' ') : null
}

async function nearest(sql: Sql, word: string, names: ReadonlyMap<string, number>): Promise<string | null> {
  if (/\d/.test(word)) return (await nearestCode(sql, word)) ?? nearestWord(word, names)
  return nearestWord(word, names) ?? nearestWord(word, await logWords(sql, word))
}

/** What has a name that may be meant. Of the tables that grow there is an index of the names without their figures. */
const named = [
  ['mould', 'name'],
  ['part', 'name'],
  ['pattern', 'name'],
  ['mould_set', 'name'],
  ['patch', 'title'],
  ['face_area', 'name'],
  ['mould_tally', 'place'],
  ['material', 'name'],
  ['product', 'name'],
  ['stack', 'name'],
  ['person', 'name'],
] as const

/** How often each word of more than two letters stands in the names of things and people. */
async function nameWords(sql: Sql): Promise<ReadonlyMap<string, number>> {
  const names = named
    .map(
      ([table, column]) =>
        sql`select plain_words(translate(${sql(column)}, '0123456789', '')) as name, count(*) as often from ${sql(table)} group by 1`,
    )
    .reduce((all, each) => sql`${all} union all ${each}`)
  // The planner doesn't see that the index holds the names ready-made, and would make them anew from every row.
  await sql`select set_config('enable_seqscan', 'off', true)`
  const rows = await sql<{ word: string; often: number }[]>`
    select word, sum(often)::int as often from (${names}) n, regexp_split_to_table(n.name, '[^[:alnum:]]+') word
    where length(word) > 2 group by word`
  await sql`select set_config('enable_seqscan', 'on', true)`
  return new Map(rows.map(({ word, often }) => [word, often]))
}

/** Words of entries that hold something like this one. */
async function logWords(sql: Sql, word: string): Promise<ReadonlyMap<string, number>> {
  await sql`select set_config('pg_trgm.word_similarity_threshold', '0.4', true)`
  const rows = await sql<{ words: string }[]>`
    select entry_words(note, data) as words from log_entry where entry_words(note, data) %> ${word} limit 300`
  const words = new Map<string, number>()
  for (const each of rows.flatMap((row) => row.words.split(/[^a-z0-9]+/)))
    if (each.length > 2) words.set(each, (words.get(each) ?? 0) + 1)
  return words
}

/** The code, serial, tag or lot that is nearest to this one. */
async function nearestCode(sql: Sql, word: string): Promise<string | null> {
  const code = squeeze(word)
  await sql`select set_config('pg_trgm.word_similarity_threshold', '0.4', true)`
  const rows = await sql<{ code: string }[]>`
    select code from (
      (select m.code from mould m where ${mouldText(sql)} %> ${word} order by similarity(m.code, ${word}) desc limit ${likest})
      union all (select s.code from mould_set s where ${setText(sql)} %> ${word} order by similarity(s.code, ${word}) desc limit ${likest})
      union all (select n.code from pattern n where ${patternText(sql)} %> ${word} order by similarity(n.code, ${word}) desc limit ${likest})
      union all (select p.code from part p where ${partText(sql)} %> ${word} order by similarity(p.code, ${word}) desc limit ${likest})
      union all (select code from material) union all (select code from stack)
      union all (select serial from built_part where plain_words(' ' || serial || ' ' || where_now || ' ' || note) %> ${word} limit ${likest})
      union all (select lot from stock_lot where plain_words(' ' || lot || ' ' || place || ' ' || note) %> ${word} limit ${likest})
      union all (select distinct tag from locating_point where plain_words(tag) like ${`${fold(word).slice(0, 1)}%`} limit 500)) c`
  if (rows.some((row) => squeeze(row.code) === code)) return word
  const found = nearestWord(code, new Map(rows.map((row) => [squeeze(row.code), 1])))
  return rows.find((row) => squeeze(row.code) === found)?.code ?? null
}
