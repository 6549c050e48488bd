import { mouldStanding } from '#lib/core/log/index'
import { type Hit, type HitKind, hitKinds, readAsked } from '#lib/core/search/index'
import { SearchInput } from '#lib/schema/search'
import { searchBook } from '#lib/store/search'
import { keptCounts } from '#lib/store/tally'
import { shopContext } from './shop'
import { everyone, verb } from './verb'

/** What was found of one kind, the best first. */
export interface HitGroup {
  readonly kind: HitKind
  readonly hits: readonly Hit[]
  /** There is more of it than is shown. */
  readonly more: boolean
}

export interface SearchAnswer {
  readonly q: string
  /** The shop's day. */
  readonly today: string
  /** False: nothing was typed that could be looked for. */
  readonly asked: boolean
  readonly groups: readonly HitGroup[]
  /** The one thing that has the very code that was typed. */
  readonly exact: Hit | null
  /** Nothing was found as typed; this was looked for instead. */
  readonly meant: string | null
}

/** What suggestions while typing are made of; entries and pictures are looked for when the search is sent. */
const briefKinds: readonly HitKind[] = [
  'mould',
  'set',
  'pattern',
  'part',
  'built-part',
  'patch',
  'lot',
  'person',
]

const usualLimit = 8
const briefLimit = 3

/** What has a code that is its own: typed whole, it is meant. The earlier goes before the later. */
const byCode: readonly HitKind[] = [
  'mould',
  'set',
  'pattern',
  'built-part',
  'part',
  'material',
  'stack',
  'lot',
]

/** Searches codes, names, notes, places, people and the log. */
export const findInBook = verb(
  'search.find',
  everyone,
  SearchInput,
  async (actor, input): Promise<SearchAnswer> => {
    const { q, brief = false } = input
    const [{ today }, { found, meant }] = await Promise.all([
      shopContext(),
      searchBook({
        typed: q,
        kinds: input.in ? [input.in] : brief ? briefKinds : hitKinds,
        limit: input.limit ?? (brief ? briefLimit : usualLimit),
        role: actor.role,
        forgiving: !brief,
      }),
    ])
    const groups: HitGroup[] = []
    for (const kind of hitKinds) {
      const one = found.get(kind)
      if (one) groups.push({ kind, ...one, hits: kind === 'mould' ? await standing(one.hits) : one.hits })
    }
    return { q, today, asked: readAsked(q).words.length > 0, groups, exact: exactOf(groups), meant }
  },
)

/** Moulds with their state and place, as the log has them now. */
async function standing(hits: readonly Hit[]): Promise<Hit[]> {
  const counts = await keptCounts(hits.map(({ id }) => id))
  return hits.map((hit) => {
    const counted = counts.get(hit.id)
    return counted ? { ...hit, state: mouldStanding(counted).state, place: counted.place ?? '' } : hit
  })
}

function exactOf(groups: readonly HitGroup[]): Hit | null {
  for (const kind of byCode) {
    const hits = groups.find((group) => group.kind === kind)?.hits.filter(({ fit }) => fit === 'exact') ?? []
    if (hits.length === 1) return hits[0] ?? null
  }
  return null
}
