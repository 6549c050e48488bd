import 'server-only'
import { type Asked, fold, nearestWord, squeeze } from '#lib/core/search/index'
import type { Sql } from '../db'
import { look } from './look'
import type { Piece } from './match'
import { mouldText, partText, patternText, setText } from './named'

/** Codes of this many of the likest are weighed. */
const likest = 20

/**
 * What was probably meant when nothing was found: every word that stands nowhere is taken for the nearest one of the book's
 * own words and codes. Null when no word comes near.
 */
export async function nearestAsked(asked: Asked): Promise<string | null> {
  const names = await nameWords()
  return look(async (sql) => {
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
  })
}

async function nearest(sql: Sql, word: string, names: ReadonlyMap<string, number>): Promise<string | null> {
  if (/\d/.test(word)) return (await nearestCode(sql, word)) ?? nearestWord(word, names)
  return nearestWord(word, names) ?? nearestWord(word, await logWords(sql, word))
}

/** How often each word stands in the names of things and people; the many moulds are counted beside all the rest. */
async function nameWords(): Promise<ReadonlyMap<string, number>> {
  const counted = await Promise.all([
    look((sql) => wordsIn(sql, sql`select name from mould union all select distinct place from mould_tally`)),
    look((sql) =>
      wordsIn(
        sql,
        sql`select name from part union all select name from pattern union all select name from mould_set
          union all select name from material union all select name from product union all select name from stack union all select name from person
          union all select title from patch union all select distinct name from face_area`,
      ),
    ),
  ])
  const words = new Map<string, number>()
  for (const { word, often } of counted.flat()) words.set(word, (words.get(word) ?? 0) + often)
  return words
}

/** Words of more than two letters. Names that differ by figures alone are taken apart once. */
function wordsIn(sql: Sql, names: Piece): Promise<{ word: string; often: number }[]> {
  return sql`
    select word, sum(often)::int as often
    from (
      select plain_words(name) as name, sum(often) as often
      from (select translate(name, '0123456789', '') as name, count(*) as often from (${names}) n group by 1) n
      group by 1) n, regexp_split_to_table(n.name, '[^[:alnum:]]+') word
    where length(word) > 2 group by word`
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
