import * as z from 'zod'
import {
  beforeLayUp,
  judgement,
  type Matter,
  type MouldCounts,
  type MouldStanding,
  mouldStanding,
  mouldStates,
} from '#lib/core/log/index'
import { asked } from '#lib/schema/fields'
import { rackSorts } from '#lib/schema/rack'
import { type StripMarks, stripMarks } from '#lib/store/counts'
import { listMouldsById, type StoredMould } from '#lib/store/moulds'
import { type RackQuery, rackPage, refreshTally, withSeason } from '#lib/store/tally'
import { type ShopContext, shopContext } from './shop'
import { asking, everyone, verb } from './verb'

/** One mould in the rack: what it is, how it stands, what comes next. */
export interface RackRow {
  readonly mould: StoredMould
  readonly counts: MouldCounts
  readonly standing: MouldStanding
  /** What must be settled before the next lay-up, worst first. */
  readonly matters: readonly Matter[]
  readonly strip: StripMarks
}

export interface Rack {
  readonly rows: readonly RackRow[]
  /** Moulds that fit what was asked, and all moulds. */
  readonly matching: number
  readonly total: number
  readonly page: number
  readonly pages: number
  readonly context: ShopContext
}

/** Moulds on one page of the rack: a usual shop has fewer, so it sees them all. */
export const rackPageSize = 60

/** The rack, a page at a time. Left out: no words, any state, by code, the first page. */
export const listRack = asking(
  'moulds.rack',
  everyone,
  z.object({
    find: asked().optional(),
    state: z.enum(mouldStates).optional(),
    /** States that are left out. */
    notIn: z.array(z.enum(mouldStates)).optional(),
    sort: z.enum(rackSorts).optional(),
    page: z.int().min(1).optional(),
    size: z.int().min(1).max(500).optional(),
  }),
  async (_actor, asked): Promise<Rack> => {
    const context = await freshContext()
    const query: RackQuery = {
      find: asked.find ?? '',
      state: asked.state ?? '',
      sort: asked.sort ?? 'code',
      page: asked.page ?? 1,
      size: asked.size ?? rackPageSize,
      ...(asked.notIn ? { notIn: asked.notIn } : {}),
    }
    const found = await rackPage(query)
    return {
      rows: await rowsOf(found, context),
      matching: found.matching,
      total: found.total,
      page: query.page,
      pages: Math.max(1, Math.ceil(found.matching / query.size)),
      context,
    }
  },
)

/** Moulds that the Bench speaks of, most urgent first, with how many there are of each. */
export interface BenchMoulds {
  readonly partIn: readonly RackRow[]
  readonly partInAll: number
  readonly open: readonly RackRow[]
  readonly openInAll: number
  readonly total: number
  readonly context: ShopContext
}

/** States in which nobody wants to lay up, or something else comes first: their matters wait. */
const resting = ['retired', 'away', 'being built', 'part in it', 'racked'] as const

/** Lines of a block on the Bench. */
const benchLines = 20

/** Moulds with a part in them, and those in use with something to settle before a lay-up; at most 20 of each. */
export const benchMoulds = verb('moulds.bench', everyone, z.object({}), async (): Promise<BenchMoulds> => {
  const context = await freshContext()
  const [partIn, open] = await Promise.all([
    rackPage({ find: '', state: 'part in it', sort: 'code', page: 1, size: benchLines }),
    rackPage({
      find: '',
      state: '',
      onlyOpen: true,
      notIn: resting,
      sort: 'next',
      page: 1,
      size: benchLines,
    }),
  ])
  return {
    partIn: await rowsOf(partIn, context),
    partInAll: partIn.matching,
    open: await rowsOf(open, context),
    openInAll: open.matching,
    total: open.total,
    context,
  }
})

async function freshContext(): Promise<ShopContext> {
  const context = await shopContext()
  const { shop, today, now } = context
  await refreshTally({
    rulesVersion: shop.version,
    today,
    now,
    judge: (counts) => judgement(counts, shop.rules.upkeep, today, now),
  })
  return context
}

const noMarks: StripMarks = { pulls: [], coats: [], patches: [] }

async function rowsOf(
  { ids, counts }: Awaited<ReturnType<typeof rackPage>>,
  { shop, season, today, now }: ShopContext,
): Promise<RackRow[]> {
  const [moulds, strips, inSeason] = await Promise.all([
    listMouldsById(ids),
    stripMarks(ids),
    withSeason(counts, season?.startsOn ?? null),
  ])
  return ids.flatMap((id): RackRow[] => {
    const mould = moulds.get(id)
    const counted = inSeason.get(id)
    if (!mould || !counted) return []
    return [
      {
        mould,
        counts: counted,
        standing: mouldStanding(counted),
        matters: beforeLayUp(counted, shop.rules.upkeep, today, now),
        strip: strips.get(id) ?? noMarks,
      },
    ]
  })
}
