import 'server-only'
import type { Row } from 'postgres'
import type { HandState, LeakReading, MouldCounts, PullGrade } from '#lib/core/log/index'
import { guessesOf, toHeat, toMatter, toRelease, toRepair } from './count-rows'
import { db, type Sql } from './db'

/** One stroke of a pull strip. */
export interface PullStroke {
  readonly id: string
  readonly doneOn: string
  readonly went: PullGrade
  readonly cleared: boolean
  readonly pullNo: number
}

export interface StripMarks {
  readonly pulls: readonly PullStroke[]
  /** Days on which coats went on, with the number of pulls before. */
  readonly coats: readonly { readonly doneOn: string; readonly afterPull: number }[]
  readonly patches: readonly {
    readonly number: number
    readonly doneOn: string
    readonly afterPull: number
  }[]
}

/**
 * Counts and last entries for some moulds, from the views over the log; no judgement here. Without a
 * season `pullsThisSeason` counts all pulls. Within a transaction it is asked on the transaction's own connection:
 * waiting for a second one while holding a lock would let a few writers block each other for ever.
 */
export async function mouldCounts(
  mouldIds: readonly string[],
  seasonStart: string | null,
  sql: Sql = db().sql,
): Promise<Map<string, MouldCounts>> {
  const of = (column: string) => sql`${sql(column)} = any(${[...mouldIds]}::uuid[])`
  const from = seasonStart ?? '0001-01-01'
  const [
    moulds,
    pulls,
    cleared,
    places,
    flags,
    damage,
    plans,
    unproved,
    repairs,
    leaks,
    release,
    good,
    before,
    cycles,
    hottest,
    pins,
    repaired,
    matters,
  ] = await Promise.all([
    sql`select id, heat_in_use_c, heat_free_c, heat_bonded_c from mould where ${of('id')}`,
    sql`
      select mould_id, count(*)::int as pulls, count(*) filter (where done_on >= ${from})::int as this_season,
        count(*) filter (where not cleared)::int as not_cleared, max(done_on) as last_on,
        (array_agg(data ->> 'went' order by pull_no desc))[1] as last_went
      from pull_entry where ${of('mould_id')} group by mould_id`,
    sql`
      select distinct on (c.mould_id) c.mould_id, c.done_on, (c.data ->> 'proof')::boolean as proof
      from effective_entry c where c.kind = 'cleared' and ${of('c.mould_id')}
        and not exists (select 1 from effective_entry p where p.mould_id = c.mould_id and p.kind = 'pull'
          and (p.done_on, p.day_order, p.written_at, p.id) > (c.done_on, c.day_order, c.written_at, c.id))
      order by c.mould_id, c.done_on desc, c.day_order desc, c.written_at desc, c.id desc`,
    sql`select mould_id, place from mould_place where ${of('mould_id')}`,
    sql`
      select f.mould_id, f.state, f.reason, f.done_on, (e.data ->> 'untilOn')::date as until_on
      from mould_flag f join log_entry e on e.id = f.entry_id where f.is_on and ${of('f.mould_id')}
        and not (f.state = 'racked' and exists (select 1 from effective_entry c where c.mould_id = f.mould_id and c.kind = 'cleared'
          and (c.done_on, c.day_order, c.written_at, c.id) > (f.done_on, f.day_order, f.written_at, f.entry_id)))`,
    sql`
      select d.mould_id, case when d.kind <> 'pull' then d.data ->> 'what'
          when d.data ->> 'went' = 'stuck' then 'last part stuck; inspect first' else 'damaged by a pull; inspect first' end as what,
        a.name as area, d.done_on
      from open_damage d left join face_area a on a.id = d.area_id where ${of('d.mould_id')} order by d.done_on`,
    sql`
      select p.mould_id, p.number, a.name as area, pl.place
      from patch_plan pl join patch p on p.id = pl.patch_id join face_area a on a.id = p.area_id
      where pl.state = 'on the bench' and ${of('p.mould_id')} order by pl.bench_at`,
    sql`
      select p.mould_id, p.id as patch_id, p.number, pl.place, e.done_on
      from patch_plan pl join patch p on p.id = pl.patch_id join log_entry e on e.id = pl.laid_entry_id
      where pl.state = 'laid' and ${of('p.mould_id')} order by p.number`,
    sql`
      select distinct on (mould_id) mould_id, done_on, day_order, written_at, id from effective_entry
      where kind in ('patch-laid', 'repair') and ${of('mould_id')}
      order by mould_id, done_on desc, day_order desc, written_at desc, id desc`,
    sql`
      select distinct on (l.mould_id) l.mould_id, l.done_on as "doneOn", l.data,
        not exists (select 1 from effective_entry r where r.mould_id = l.mould_id and r.kind in ('patch-laid', 'repair')
          and (r.done_on, r.day_order, r.written_at, r.id) > (l.done_on, l.day_order, l.written_at, l.id)) as since_repair
      from effective_entry l where l.kind = 'leak-check' and ${of('l.mould_id')}
      order by l.mould_id, l.done_on desc, l.day_order desc, l.written_at desc, l.id desc`,
    sql`
      select r.*, a.name as area_name, p.number as patch_number, pl.place as patch_place,
        to_json(r.coat_at) #>> '{}' as coat_moment
      from release_count r
      left join face_area a on a.id = r.area_id
      left join patch p on p.id = r.patch_id
      left join patch_plan pl on pl.patch_id = r.patch_id and pl.state in ('laid', 'proved')
      where ${of('r.mould_id')} and (r.target <> 'patch' or pl.state = 'laid')
      order by r.mould_id, case r.target when 'face' then 0 when 'area' then 1 else 2 end, a.position, p.number`,
    sql`
      with last_good as (
        select distinct on (mould_id) * from pull_entry where data ->> 'went' = 'usual' and ${of('mould_id')}
        order by mould_id, pull_no desc)
      select g.mould_id, s.data ->> 'product' as seal_product, s.data ->> 'lot' as seal_lot,
        c.data ->> 'product' as coat_product, c.data ->> 'lot' as coat_lot
      from last_good g
      left join lateral (select e.data from effective_entry e where e.mould_id = g.mould_id and e.kind = 'seal'
        and e.area_id is null and e.patch_id is null
        and (e.done_on, e.day_order, e.written_at, e.id) < (g.done_on, g.day_order, g.written_at, g.id)
        order by e.done_on desc, e.day_order desc, e.written_at desc, e.id desc limit 1) s on true
      left join lateral (select e.data from effective_entry e where e.mould_id = g.mould_id and e.kind = 'coat'
        and e.area_id is null and e.patch_id is null
        and (e.done_on, e.day_order, e.written_at, e.id) < (g.done_on, g.day_order, g.written_at, g.id)
        order by e.done_on desc, e.day_order desc, e.written_at desc, e.id desc limit 1) c on true`,
    sql`
      select mould_id, sum((data ->> 'pullsLow')::int)::int as low, sum((data ->> 'pullsBest')::int)::int as best,
        sum((data ->> 'pullsHigh')::int)::int as high, sum((data ->> 'heatLow')::int)::int as heat_low,
        sum((data ->> 'heatBest')::int)::int as heat_best, sum((data ->> 'heatHigh')::int)::int as heat_high
      from effective_entry where kind = 'before-book' and ${of('mould_id')} group by mould_id`,
    sql`
      select mould_id, to_c, count(*)::int as times from heat_seen where ${of('mould_id')}
      group by mould_id, to_c order by mould_id, to_c desc`,
    sql`
      select distinct on (h.mould_id, h.with_part) h.mould_id, h.with_part, h.to_c, h.done_on
      from heat_seen h
      where ${of('h.mould_id')} and not exists (select 1 from effective_entry i where i.mould_id = h.mould_id and i.kind = 'inspection'
        and i.data ->> 'verdict' = 'sound' and i.area_id is null and i.patch_id is null
        and (i.done_on, i.day_order, i.written_at, i.id) > (h.done_on, h.day_order, h.written_at, h.id))
      order by h.mould_id, h.with_part, h.to_c desc, h.done_on desc, h.id`,
    // What is driven into every bush counts for each tag that is named; a bush that was set anew starts again.
    sql`
      with driven as (
        select mould_id, lower(btrim(data ->> 'tag')) as tag_key, btrim(data ->> 'tag') as tag, (data ->> 'insertions')::int as times,
          done_on, day_order, written_at, id
        from effective_entry where kind = 'pins' and ${of('mould_id')}),
      named as (select mould_id, tag_key, max(tag) as tag from driven where tag_key is not null group by mould_id, tag_key),
      fresh as (
        select distinct on (e.mould_id, lower(btrim(e.data ->> 'tag'))) e.mould_id, lower(btrim(e.data ->> 'tag')) as tag_key,
          e.done_on, e.day_order, e.written_at, e.id
        from effective_entry e where e.kind = 'dowel-changed' and e.data ->> 'what' in ('re-bushed', 'set new') and ${of('e.mould_id')}
        order by e.mould_id, lower(btrim(e.data ->> 'tag')), e.done_on desc, e.day_order desc, e.written_at desc, e.id desc)
      select n.mould_id, n.tag, coalesce(sum(d.times) filter (where f.id is null
          or (d.done_on, d.day_order, d.written_at, d.id) > (f.done_on, f.day_order, f.written_at, f.id)), 0)::int as times
      from named n
      join driven d on d.mould_id = n.mould_id and (d.tag_key = n.tag_key or d.tag_key is null)
      left join fresh f on f.mould_id = n.mould_id and f.tag_key = n.tag_key
      group by n.mould_id, n.tag_key, n.tag
      union all
      select mould_id, null, sum(times)::int from driven where tag_key is null group by mould_id
      order by 1, 2 nulls first`,
    sql`
      select r.*, a.name as area from repair_count r join effective_entry e on e.id = r.entry_id
      left join face_area a on a.id = r.area_id
      where ${of('r.mould_id')} order by r.mould_id, e.done_on, e.day_order, e.written_at, e.id`,
    sql`
      select o.*, a.name as area from open_matter o left join face_area a on a.id = o.area_id
      where ${of('o.mould_id')} order by o.mould_id, o.until_on nulls last, o.done_on, o.entry_id`,
  ])
  const pullsOf = byMould(pulls)
  const clearedOf = byMould(cleared)
  const placeOf = byMould(places)
  const flagsOf = byMould(flags)
  const damageOf = byMould(damage)
  const planOf = byMould(plans)
  const unprovedOf = byMould(unproved)
  const repairOf = byMould(repairs)
  const leakOf = byMould(leaks)
  const releaseOf = byMould(release)
  const goodOf = byMould(good)
  const beforeOf = byMould(before)
  const cyclesOf = byMould(cycles)
  const hottestOf = byMould(hottest)
  const pinsOf = byMould(pins)
  const repairedOf = byMould(repaired)
  const mattersOf = byMould(matters)
  return new Map(
    moulds.map(({ id, ...limits }) => {
      const pull = pullsOf.get(id)?.[0]
      const clear = clearedOf.get(id)?.[0]
      const plan = planOf.get(id)?.[0]
      const leak = leakOf.get(id)?.[0]
      const atGood = goodOf.get(id)?.[0]
      const counts: MouldCounts = {
        pulls: pull?.pulls ?? 0,
        pullsThisSeason: pull?.this_season ?? 0,
        pullsNotCleared: pull?.not_cleared ?? 0,
        lastPullOn: pull?.last_on ?? null,
        lastPullWent: pull?.last_went ?? null,
        clearedOn: clear?.done_on ?? null,
        clearedForProof: clear?.proof ?? false,
        place: placeOf.get(id)?.[0]?.place ?? null,
        flags: (flagsOf.get(id) ?? []).map((flag) => ({
          state: flag.state as HandState,
          reason: flag.reason as string,
          doneOn: flag.done_on as string,
          untilOn: flag.until_on as string | null,
        })),
        openDamage: (damageOf.get(id) ?? []).map((row) => ({
          what: row.what as string,
          areaName: row.area as string | null,
          doneOn: row.done_on as string,
        })),
        planOnBench: plan ? { number: plan.number, place: plan.place ?? plan.area } : null,
        unprovedPatches: (unprovedOf.get(id) ?? []).map((row) => ({
          patchId: row.patch_id as string,
          number: row.number as number,
          place: row.place as string,
          laidOn: row.done_on as string,
        })),
        lastRepairOn: repairOf.get(id)?.[0]?.done_on ?? null,
        lastLeak: leak ? ({ doneOn: leak.doneOn, ...leak.data } as LeakReading) : null,
        leakSinceRepair: leak?.since_repair ?? false,
        release: (releaseOf.get(id) ?? []).map(toRelease),
        atLastGoodPull: atGood
          ? {
              sealProduct: atGood.seal_product,
              sealLot: atGood.seal_lot,
              coatProduct: atGood.coat_product,
              coatLot: atGood.coat_lot,
            }
          : null,
        ...guessesOf(beforeOf.get(id)?.[0]),
        heat: toHeat(cyclesOf.get(id) ?? [], hottestOf.get(id) ?? []),
        heatLimits: {
          inUseC: limits.heat_in_use_c,
          freeC: limits.heat_free_c,
          bondedC: limits.heat_bonded_c,
        },
        pins: (pinsOf.get(id) ?? []).map((row) => ({
          tag: row.tag as string | null,
          insertions: row.times as number,
        })),
        repairs: (repairedOf.get(id) ?? []).map(toRepair),
        openMatters: (mattersOf.get(id) ?? []).map(toMatter),
      }
      return [id as string, counts]
    }),
  )
}

function byMould(rows: readonly unknown[]): Map<string, Row[]> {
  const found = new Map<string, Row[]>()
  for (const row of rows as Row[]) {
    const list = found.get(row.mould_id)
    if (list) list.push(row)
    else found.set(row.mould_id, [row])
  }
  return found
}

/** Strokes, coats and patches of some moulds, oldest first. */
export async function stripMarks(mouldIds: readonly string[]): Promise<Map<string, StripMarks>> {
  const { sql } = db()
  const rows = await sql`
    select e.mould_id, e.id, e.kind, e.done_on, e.data ->> 'went' as went, e.data ->> 'number' as number, p.cleared, p.pull_no
    from effective_entry e
    left join (select id, cleared, pull_no from pull_entry where mould_id = any(${[...mouldIds]}::uuid[])) p on p.id = e.id
    where e.kind in ('pull', 'coat', 'patch-laid') and e.mould_id = any(${[...mouldIds]}::uuid[])
    order by e.mould_id, e.done_on, e.day_order, e.written_at, e.id`
  const found = new Map<
    string,
    { pulls: PullStroke[]; coats: StripMarks['coats'][number][]; patches: StripMarks['patches'][number][] }
  >()
  for (const row of rows) {
    const marks = found.get(row.mould_id) ?? { pulls: [], coats: [], patches: [] }
    found.set(row.mould_id, marks)
    const afterPull = marks.pulls.length
    if (row.kind === 'pull') {
      marks.pulls.push({
        id: row.id,
        doneOn: row.done_on,
        went: row.went,
        cleared: row.cleared,
        pullNo: row.pull_no,
      })
    } else if (row.kind === 'coat') {
      marks.coats.push({ doneOn: row.done_on, afterPull })
    } else {
      marks.patches.push({ number: Number(row.number), doneOn: row.done_on, afterPull })
    }
  }
  return found
}
