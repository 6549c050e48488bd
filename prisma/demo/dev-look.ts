import { listRack, readMouldPage } from '#lib/services/moulds'
import { closeDatabase, db } from '#lib/store/db'
import { actorOf } from './write/people'

const t = Date.now()
const { rows, context } = await listRack(actorOf('MO'), {})
console.log('rack ms', Date.now() - t, context.season?.name, context.today)
for (const r of rows) {
  console.log(
    `\n${r.mould.code} ${r.mould.name}: ${r.standing.state} (${r.standing.reason}) also ${r.standing.also.join(',')} | pulls ${r.counts.pulls} season ${r.counts.pullsThisSeason} notcleared ${r.counts.pullsNotCleared} last ${r.counts.lastPullOn} ${r.counts.lastPullWent} place ${r.counts.place} v${r.mould.version}`,
  )
  for (const m of r.matters) console.log(`   ${m.severity} ${m.code}: ${m.text}`)
}
for (const r of rows) {
  const t = Date.now()
  const p = await readMouldPage(actorOf('MO'), { code: r.mould.code })
  console.log(
    r.mould.code,
    'entries',
    p.entries.length,
    'areas',
    p.areas.map((a) => `${a.name}:${a.boundary.length}`).join(' '),
    'points',
    p.points?.number,
    p.points?.points.length,
    'patches',
    p.patches
      .map((x) => `${x.number}.${x.versionNo} ${x.state} ${x.place} ${x.ticked}/${x.lines}`)
      .join('; '),
    Date.now() - t,
    'ms',
  )
}
console.log(await db().sql`select kind, count(*)::int from log_entry group by 1 order by 2 desc`)
console.log(
  await db()
    .sql`select m.code, (extract(year from done_on + interval '4 months'))::int as season_end, count(*)::int n, string_agg(case when data->>'went'<>'usual' then data->>'went' end, ',') odd from pull_entry p join mould m on m.id=p.mould_id group by 1,2 order by 1,2`,
)
await closeDatabase()
