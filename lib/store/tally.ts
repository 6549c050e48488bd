import 'server-only'
import { countsEdition, type Judgement, type MouldCounts } from '#lib/core/log/index'
import { fold } from '#lib/core/search/index'
import type { RackSort } from '#lib/schema/rack'
import { mouldCounts } from './counts'
import { db, type Sql } from './db'
import { likeText } from './search/match'

/** Counted and judged in one go; more would hold too much at once. */
const atOnce = 500

/** What the counts of moulds are judged by: the version of the shop's rules, its day and the moment. */
export interface TallyBasis {
  readonly rulesVersion: number
  readonly today: string
  readonly now: string
  readonly judge: (counts: MouldCounts) => Judgement
}

/**
 * Brings the kept counts up to date: those of moulds about which something was written since, and those whose
 * judgement has run out with the day, with a drying coat or with the shop's rules. Afterwards the tally can be read.
 */
export async function refreshTally(basis: TallyBasis): Promise<void> {
  const { sql } = db()
  const stale = await sql<StaleTally[]>`
    select mould_id as "mouldId", dirty from mould_tally
    where dirty <> clean or edition < ${countsEdition} or edition > ${countsEdition}
      or rules_version < ${basis.rulesVersion} or rules_version > ${basis.rulesVersion}
      or holds_through < ${basis.today} or drying_until <= ${basis.now}`
  for (let from = 0; from < stale.length; from += atOnce) {
    await refresh(sql, stale.slice(from, from + atOnce), basis)
  }
}

interface StaleTally {
  readonly mouldId: string
  readonly dirty: string
}

/** Counts of moulds: the kept ones where they still hold, the others counted anew. */
export async function keptCounts(mouldIds: readonly string[]): Promise<ReadonlyMap<string, MouldCounts>> {
  const kept = await db().sql<{ mouldId: string; counts: MouldCounts }[]>`
    select mould_id as "mouldId", counts from mould_tally
    where mould_id = any(${[...mouldIds]}::uuid[]) and dirty = clean and edition = ${countsEdition}`
  const counts = new Map(kept.map(({ mouldId, counts }) => [mouldId, counts]))
  const anew = mouldIds.filter((id) => !counts.has(id))
  return anew.length > 0 ? new Map([...counts, ...(await mouldCounts(anew, null))]) : counts
}

/** The same with the pulls since the day on which a season began; null: all of them. */
export async function countsSince(
  mouldIds: readonly string[],
  day: string | null,
): Promise<ReadonlyMap<string, MouldCounts>> {
  return withSeason(await keptCounts(mouldIds), day)
}

/** Counts with the pulls since the day on which a season began; null: all of them. */
export async function withSeason(
  counts: ReadonlyMap<string, MouldCounts>,
  day: string | null,
): Promise<ReadonlyMap<string, MouldCounts>> {
  const pulls = day === null ? null : await pullsSince([...counts.keys()], day)
  return new Map(
    [...counts].map(([id, kept]) => [
      id,
      { ...kept, pullsThisSeason: pulls === null ? kept.pulls : (pulls.get(id) ?? 0) },
    ]),
  )
}

async function refresh(
  sql: Sql,
  stale: readonly StaleTally[],
  { rulesVersion, judge }: TallyBasis,
): Promise<void> {
  const counted = await keptCounts(stale.map(({ mouldId }) => mouldId))
  const rows = stale.flatMap(({ mouldId, dirty }) => {
    const counts = counted.get(mouldId)
    if (!counts) return []
    const { changesOn, ...judged } = judge(counts)
    const face = counts.release.find((target) => target.target === 'face')
    return [
      {
        ...judged,
        mouldId,
        // What was raised while this was being counted stays dirty.
        clean: dirty,
        counts,
        pulls: counts.pulls,
        sinceCoat: face?.pullsSinceCoat ?? 0,
        lastLeakOn: counts.lastLeak?.doneOn ?? null,
        place: counts.place ?? '',
        changesOn,
      },
    ]
  })
  // Rows that a writer holds just now are left to the next reader: waiting here could end in a deadlock.
  await sql`
    with held as (select mould_id from mould_tally where mould_id = any(${rows.map(({ mouldId }) => mouldId)}::uuid[]) for update skip locked),
    named as (
      select m.id, natural_key(m.code) as code_key,
        plain_words(' ' || concat_ws(' ', m.code, m.name, m.owner, p.code, p.name, pn.code, pn.name, s.code, s.name)) as words
      from mould m left join part p on p.id = m.part_id left join pattern pn on pn.id = m.pattern_id left join mould_set s on s.id = m.set_id
      where m.id in (select mould_id from held))
    update mould_tally t set code_key = n.code_key, words = n.words || ' ' || plain_words(r."place"), clean = r."clean", counts = r."counts",
      edition = ${countsEdition}, state = r."state", state_rank = r."stateRank", stops = r."stops", looks = r."looks", notes = r."notes",
      pulls = r."pulls", since_coat = r."sinceCoat", last_leak_on = r."lastLeakOn", place = r."place",
      rules_version = ${rulesVersion}, holds_through = r."changesOn" - 1, drying_until = r."dryingUntil"
    from named n join jsonb_to_recordset(${sql.json(rows as never)}) as r("mouldId" uuid, "clean" bigint, "counts" jsonb, "state" text,
      "stateRank" int, "stops" int, "looks" int, "notes" int, "pulls" int, "sinceCoat" int, "lastLeakOn" date, "place" text, "changesOn" date,
      "dryingUntil" timestamptz) on n.id = r."mouldId"
    where t.mould_id = n.id`
}

export interface RackQuery {
  /** Words that all stand in what names the mould, without regard to case and accents. */
  readonly find: string
  /** '' for any. */
  readonly state: string
  /** Only moulds with something to settle that stops or wants a look. */
  readonly onlyOpen?: boolean
  /** States that are left out. */
  readonly notIn?: readonly string[]
  readonly sort: RackSort
  /** From 1. */
  readonly page: number
  readonly size: number
}

export interface RackPage {
  readonly ids: readonly string[]
  readonly counts: ReadonlyMap<string, MouldCounts>
  /** Moulds that fit the query, and all moulds. */
  readonly matching: number
  readonly total: number
}

/** One page of the rack from the tally, which has to be fresh. */
export async function rackPage(query: RackQuery): Promise<RackPage> {
  const { sql } = db()
  const words = query.find.split(/\s+/).filter((word) => word !== '')
  const fits = sql`
    from mould_tally t
    where ${query.state === '' ? sql`true` : sql`t.state = ${query.state}`}
      and ${query.onlyOpen ? sql`t.stops + t.looks > 0` : sql`true`}
      and ${query.notIn ? sql`t.state <> all(${[...query.notIn]}::text[])` : sql`true`}
      and ${words.length === 0 ? sql`true` : sql`t.words like all(${words.map((word) => `%${likeText(fold(word))}%`)}::text[])`}`
  const [rows, [count]] = await Promise.all([
    sql<{ id: string; counts: MouldCounts | null }[]>`
      select t.mould_id as id, case when t.edition = ${countsEdition} then t.counts end as counts ${fits} order by ${orderOf(sql, query.sort)} t.code_key, t.mould_id
      limit ${query.size} offset ${(query.page - 1) * query.size}`,
    sql<{ matching: number; total: number }[]>`
      select count(*)::int as matching, (select count(*)::int from mould) as total ${fits}`,
  ])
  // Held by somebody who counts them just now, for the first time or in a new shape.
  const anew = rows.filter(({ counts }) => counts === null).map(({ id }) => id)
  const counted = anew.length > 0 ? await mouldCounts(anew, null) : new Map<string, MouldCounts>()
  const kept = rows.flatMap(({ id, counts }): [string, MouldCounts][] => (counts ? [[id, counts]] : []))
  return {
    ids: rows.map(({ id }) => id),
    counts: new Map([...kept, ...counted]),
    matching: count?.matching ?? 0,
    total: count?.total ?? 0,
  }
}

function orderOf(sql: Sql, sort: RackSort) {
  switch (sort) {
    case 'code':
      return sql``
    case 'state':
      return sql`t.state_rank,`
    case 'pulls':
      return sql`t.pulls desc,`
    case 'coated':
      return sql`t.since_coat desc,`
    case 'leak':
      return sql`t.last_leak_on nulls first,`
    case 'next':
      return sql`case when t.stops > 0 then 0 when t.looks > 0 then 1 when t.notes > 0 then 2 else 3 end,`
    case 'place':
      return sql`natural_key(t.place),`
  }
}

/** Pulls since a day, of some moulds; a mould without any is not there. */
async function pullsSince(mouldIds: readonly string[], day: string): Promise<ReadonlyMap<string, number>> {
  const rows = await db().sql<{ mouldId: string; pulls: number }[]>`
    select mould_id as "mouldId", count(*)::int as pulls from effective_entry
    where kind = 'pull' and done_on >= ${day} and mould_id = any(${[...mouldIds]}::uuid[]) group by mould_id`
  return new Map(rows.map(({ mouldId, pulls }) => [mouldId, pulls]))
}
