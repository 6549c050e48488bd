import 'server-only'
import { type Asked, type Hit, type HitKind, hitKinds, readAsked } from '#lib/core/search/index'
import type { Role } from '#lib/schema/shop'
import type { Sql } from './db'
import { findEntries } from './search/entries'
import { findBuiltParts, findLots, findPeople, findPictures } from './search/kept'
import { look } from './search/look'
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
 * Searches the whole book. Each kind is asked for by its own indexes; a search that takes longer than
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
  const found = await each(asked, kinds, limit, role)
  if (found.size > 0 || !forgiving) return { found, meant: null }
  const meant = await look((sql) => nearestAsked(sql, asked))
  if (meant === null) return { found, meant: null }
  return { found: nearly(await each(readAsked(meant), kinds, limit, role)), meant }
}

/** What each kind holds, the kinds in their order; half of them are looked up beside the other half. */
async function each(
  asked: Asked,
  kinds: readonly HitKind[],
  limit: number,
  role: Role,
): Promise<Map<HitKind, Found>> {
  const half = (rest: 0 | 1) =>
    look(async (sql) => {
      const found: [HitKind, Found][] = []
      for (const kind of kinds.filter((_kind, index) => index % 2 === rest)) {
        found.push([kind, await finders[kind](sql, asked, limit, role)])
      }
      return found
    })
  const found = new Map((await Promise.all([half(0), half(1)])).flat())
  return new Map(
    kinds.flatMap((kind) => {
      const one = found.get(kind)
      return one && one.hits.length > 0 ? [[kind, one] as const] : []
    }),
  )
}

function nearly(found: ReadonlyMap<HitKind, Found>): Map<HitKind, Found> {
  const near = (hit: Hit): Hit => ({ ...hit, fit: 'near' })
  return new Map([...found].map(([kind, { hits, more }]) => [kind, { hits: hits.map(near), more }]))
}
