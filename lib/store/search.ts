import 'server-only'
import { type Asked, type Hit, type HitKind, hitKinds, readAsked } from '#lib/core/search/index'
import type { Role } from '#lib/schema/shop'
import { db, type Sql } from './db'
import { findEntries } from './search/entries'
import { findBuiltParts, findLots, findPeople, findPictures } from './search/kept'
import type { Found } from './search/match'
import {
  findMaterials,
  findMoulds,
  findParts,
  findPatterns,
  findProducts,
  findSets,
  findStacks,
} from './search/named'
import { nearestAsked } from './search/near'
import { findDamage, findPatches, findPoints } from './search/on-face'

type Finder = (sql: Sql, asked: Asked, limit: number, role: Role) => Promise<Found>

const finders: Readonly<Record<HitKind, Finder>> = {
  mould: findMoulds,
  set: findSets,
  pattern: findPatterns,
  part: findParts,
  'built-part': findBuiltParts,
  patch: findPatches,
  damage: findDamage,
  point: findPoints,
  material: findMaterials,
  product: findProducts,
  lot: findLots,
  stack: findStacks,
  person: findPeople,
  picture: findPictures,
  entry: findEntries,
}

export interface SearchQuery {
  readonly typed: string
  /** Only these kinds; all when left out. */
  readonly kinds?: readonly HitKind[]
  /** Most hits of each kind. */
  readonly limit: number
  readonly role: Role
  /** Look for what was probably meant when nothing is found. */
  readonly forgiving: boolean
}

export interface SearchResult {
  readonly found: ReadonlyMap<HitKind, Found>
  /** What was looked for instead, when nothing was found as typed. */
  readonly meant: string | null
}

/**
 * Searches the whole book in one read-only look. Each kind is asked for by its own indexes; a search that takes longer than
 * three seconds is broken off by the database.
 */
export async function searchBook({
  typed,
  kinds = hitKinds,
  limit,
  role,
  forgiving,
}: SearchQuery): Promise<SearchResult> {
  const asked = readAsked(typed)
  if (asked.words.length === 0) return { found: new Map(), meant: null }
  return db().sql.begin('read only', async (sql) => {
    // The best way to a word depends on how often it stands there, so each search is planned anew.
    await sql`
      select set_config('plan_cache_mode', 'force_custom_plan', true), set_config('jit', 'off', true), set_config('statement_timeout', '3000', true)`
    const found = await each(sql, asked, kinds, limit, role)
    if (found.size > 0 || !forgiving) return { found, meant: null }
    const meant = await nearestAsked(sql, asked)
    if (meant === null) return { found, meant: null }
    return { found: nearly(await each(sql, readAsked(meant), kinds, limit, role)), meant }
  })
}

async function each(
  sql: Sql,
  asked: Asked,
  kinds: readonly HitKind[],
  limit: number,
  role: Role,
): Promise<Map<HitKind, Found>> {
  const found = new Map<HitKind, Found>()
  for (const kind of kinds) {
    const one = await finders[kind](sql, asked, limit, role)
    if (one.hits.length > 0) found.set(kind, one)
  }
  return found
}

function nearly(found: ReadonlyMap<HitKind, Found>): Map<HitKind, Found> {
  const near = (hit: Hit): Hit => ({ ...hit, fit: 'near' })
  return new Map([...found].map(([kind, { hits, more }]) => [kind, { hits: hits.map(near), more }]))
}
