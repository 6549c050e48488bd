import 'server-only'
import { squeeze } from '#lib/core/search/index'
import type { Sql } from '../db'
import type { Piece } from './match'

/** Moulds that words name by code, also through their split mould, and the words that are left. */
export interface Scope {
  /** Null: no word names a mould. */
  readonly mouldIds: readonly string[] | null
  readonly words: readonly string[]
}

/** Finds among the words the codes of moulds and split moulds: "LH-P patch 7", "lh-p floor b5". */
export async function scopeOf(sql: Sql, words: readonly string[]): Promise<Scope> {
  const codes = words.map(squeeze)
  if (words.length === 0) return { mouldIds: null, words }
  const rows = await sql<{ code: string; id: string }[]>`
    select squeezed(m.code) as code, m.id from mould m where squeezed(m.code) = any(${codes}::text[])
    union select squeezed(s.code), m.id from mould_set s join mould m on m.set_id = s.id where squeezed(s.code) = any(${codes}::text[])`
  if (rows.length === 0) return { mouldIds: null, words }
  const named = new Set(rows.map(({ code }) => code))
  return {
    mouldIds: [...new Set(rows.map(({ id }) => id))],
    words: words.filter((word) => !named.has(squeeze(word))),
  }
}

export const inScope = (sql: Sql, column: Piece, { mouldIds }: Scope) =>
  mouldIds === null ? sql`true` : sql`${column} = any(${[...mouldIds]}::uuid[])`
