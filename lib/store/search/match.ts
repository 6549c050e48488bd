import 'server-only'
import type postgres from 'postgres'
import type { Hit, HitFit } from '#lib/core/search/index'
import type { Sql } from '../db'

/** A piece of SQL, as the client makes it. */
export type Piece = postgres.PendingQuery<postgres.Row[]>

/** What was found of one kind; `more`: there is more than is shown. */
export interface Found {
  readonly hits: readonly Hit[]
  readonly more: boolean
}

export const nothing: Found = { hits: [], more: false }

/** Text for LIKE in which the signs of patterns stand for themselves. */
export function likeText(text: string): string {
  return text.replace(/[\\%_]/g, (sign) => `\\${sign}`)
}

/** A word anywhere in a text; one or two letters only where a word begins. The text begins with a blank. */
export function wordPattern(word: string): string {
  return word.length <= 2 ? `% ${likeText(word)}%` : `%${likeText(word)}%`
}

/** All words stand in the text, each one somewhere. */
export function hasWords(sql: Sql, text: Piece, words: readonly string[]): Piece {
  return words.reduce((all, word) => sql`${all} and ${text} like ${wordPattern(word)}`, sql`true`)
}

/**
 * How well a thing fits by its code and name, for the order: 0 the code itself, 1 a code or a name that begins so, 2 words
 * somewhere.
 */
export function fitOf(
  sql: Sql,
  code: Piece,
  name: Piece,
  asked: { readonly whole: string; readonly code: string },
): Piece {
  const begins = likeText(asked.code)
  const codeFits =
    asked.code === ''
      ? sql``
      : sql`when squeezed(${code}) = ${asked.code} then 0 when squeezed(${code}) like ${`${begins}%`} then 1`
  return sql`(case ${codeFits} when plain_words(${name}) like ${`${likeText(asked.whole)}%`} then 1 else 2 end)`
}

export interface FoundRow extends Omit<Hit, 'fit' | 'of' | 'kind' | 'on'> {
  readonly on?: string | null
  readonly fit: number
  readonly ofKind?: 'mould' | 'pattern' | 'set' | 'built-part' | null
  readonly ofCode?: string | null
}

const fits: readonly HitFit[] = ['exact', 'begins', 'words']

/** Rows as hits; the row beyond the limit only says that there is more. */
export function asFound(kind: Hit['kind'], rows: readonly object[], limit: number): Found {
  const hits = (rows as readonly FoundRow[]).slice(0, limit).map(
    ({ id, title, name, state, place, detail, on, fit, ofKind, ofCode }): Hit => ({
      kind,
      id,
      title,
      name,
      state,
      place,
      detail,
      on: on ?? null,
      of: ofKind && ofCode ? { kind: ofKind, code: ofCode } : null,
      fit: fits[fit] ?? 'words',
    }),
  )
  return { hits, more: rows.length > limit }
}
