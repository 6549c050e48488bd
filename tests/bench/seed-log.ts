import type postgres from 'postgres'
import { products } from './seed-words'

/** What happens to a mould in turn: pulls are cleared first, coats and cleaning come between, the rest now and then. */
const turns = (
  'moved cleared pull coat cleared pull clean cleared pull heat coat tape-test cleared pull clean leak-check cleared pull coat ' +
  'inspection cleared pull clean heat cleared pull coat note cleared pull damage repair seal coat tape-test cleared pull clean moved pins ' +
  'cleared pull coat leak-check cleared pull strip clean seal coat test-patch cleared pull heat coat matter cleared pull clean settled ' +
  'inspection cleared pull coat dowel-changed moved cleared pull clean coat cleared pull measured leak-check cleared pull coat clean state'
).split(' ')

const release = products.filter(([, use]) => use === 'release').map(([name]) => name)
const sealers = products.filter(([, use]) => use === 'sealer').map(([name]) => name)

const notes = [
  'Air bubble at the flange, sanded flush',
  'Edge of the surface ply chipped near the nose, 4 mm',
  'Fine cracks round the bush, checked with a lamp',
  'Resin ran under the bag at the trim line',
  'Bag bridged in the corner, pleat added',
  'Release looked dull at the deepest corner',
  'Hairline crack along the radius, seen after the hot leak check',
  'Scratch from the trim knife, polished out',
  'Part needed wedges on the port side',
  'Vacuum fitting loose, sealed with tape',
  'Colour of the face darker round the heater',
  'Großer Kratzer am Rand, poliert',
]

/**
 * Appends the log: `entries` in all, patches' own entries included. One mould in a hundred is a busy one with twenty
 * times the history of the others. One entry in two hundred was put right.
 */
export async function seedEntries(tx: postgres.TransactionSql, entries: number): Promise<void> {
  // The tallies are raised once at the end, not once an entry.
  await tx`alter table log_entry disable trigger mould_tally_of_entry`
  await seedPatchEntries(tx)
  await tx`
    create temp table seed_entry on commit drop as
    with weight as (select i, case when i % 100 = 1 then 20 else 1 end as w from seed_mould),
      share as (select i, sum(w) over (order by i) as upto, w, sum(w) over () as whole from weight),
      wanted as (select (${entries}::int - (select count(*) from log_entry where content_hash like 'seed%'))::numeric * 200 / 201 as n)
    select s.i, k, (${[...turns]}::text[])[1 + (s.i * 7 + k) % ${turns.length}] as kind,
      date '2022-01-03' + ((k - 1) * (1700.0 / greatest(1, cells)))::int + pg_temp.draw('start/' || s.i, 30) as done_on,
      3 + pg_temp.draw('who/' || s.i || '/' || k, 13) as who
    from share s, wanted, lateral (select floor(n * upto / whole)::int - floor(n * (upto - w) / whole)::int as cells) c,
      lateral generate_series(1, cells) k`
  await insertEntries(tx)
  await tx`
    insert into log_entry (id, mould_id, kind, done_on, precision, day_order, written_at, by_id, by_name, corrects_id, data, note, content_hash)
    select pg_temp.id_of('right/' || e.id), e.mould_id, 'correction', e.done_on, 'day', e.day_order, e.written_at + interval '1 day', e.by_id, e.by_name,
      e.id, '{}', 'Written down for the wrong mould', 'seed-right/' || e.id
    from (select e.*, row_number() over (order by md5(e.id::text)) as n from log_entry e where content_hash like 'seed-turn%' and kind in ('note', 'clean', 'heat')) e
    where n <= ${entries}::int - (select count(*) from log_entry where content_hash like 'seed%')`
  await tx`
    insert into built_part (serial, part_id, where_now)
    select distinct on (lower(e.data ->> 'serial')) e.data ->> 'serial', m.part_id,
      pg_temp.pick('now/' || (e.data ->> 'serial'), array['on the car', 'spare, shelf 3', 'scrapped', 'with the customer'])
    from log_entry e join mould m on m.id = e.mould_id where e.kind = 'pull' and e.content_hash like 'seed-turn%'
    on conflict do nothing`
  await tx`alter table log_entry enable trigger mould_tally_of_entry`
  await tx`update mould_tally set dirty = dirty + 1`
}

async function insertEntries(tx: postgres.TransactionSql): Promise<void> {
  await tx`
    insert into log_entry (id, mould_id, kind, done_on, precision, day_order, written_at, by_id, by_name, area_id, data, note, content_hash)
    select pg_temp.id_of('entry/' || s.i || '/' || s.k), m.id, s.kind, s.done_on, 'day', 480 + s.k % 540, s.done_on + interval '16 hours' + s.k * interval '1 second',
      p.id, p.name, case when s.kind in ('coat', 'seal', 'damage', 'repair', 'inspection') and s.k % 3 = 0 or s.kind in ('damage', 'repair', 'measured') then pg_temp.id_of('area/' || s.i || '/1') end,
      case s.kind
        when 'cleared' then jsonb_build_object('open', '[]'::jsonb, 'because', null, 'proof', false)
        when 'pull' then jsonb_build_object('went', case when r % 40 = 0 then 'forced' when r % 9 = 0 then 'harder' else 'usual' end,
          'serial', replace(m.code, '-', '') || '-' || lpad(s.k::text, 4, '0'), 'partFate', case when r % 60 = 0 then 'scrapped' when r % 25 = 0 then 'rework' else 'good' end,
          'mouldFate', case when r % 50 = 0 then 'marked' else 'unharmed' end, 'cureC', 120)
        when 'coat' then jsonb_build_object('product', pg_temp.pick('p' || r, ${release}::text[]), 'lot', 'T' || lpad((1 + 2 * (r % 1500))::text, 5, '0'), 'coats', 1 + r % 4, 'minutesBetween', 30)
        when 'seal' then jsonb_build_object('product', pg_temp.pick('s' || r, ${sealers}::text[]), 'lot', null, 'coats', 2)
        when 'clean' then jsonb_build_object('product', 'Wash N')
        when 'strip' then jsonb_build_object('product', 'Strip 9')
        when 'heat' then jsonb_build_object('what', 'post-cure', 'toC', 90 + r % 60, 'holdMin', 240, 'withPart', false)
        when 'tape-test' then jsonb_build_object('result', case when r % 12 = 0 then 'grips' else 'slips' end)
        when 'test-patch' then jsonb_build_object('surface', 'tile beside the mould', 'sealer', 'Sealcoat B', 'agent', 'Gleitfilm 40', 'result', 'releases')
        when 'leak-check' then jsonb_build_object('bagging', 'mould alone', 'heat', case when r % 2 = 0 then 'cold' else 'hot' end, 'temperatureC', 20 + r % 80, 'pins', 'in',
          'volumeL', null, 'startMbar', 20, 'endMbar', 22 + r % 12, 'minutes', 10)
        when 'inspection' then jsonb_build_object('verdict', case when r % 15 = 0 then 'look' else 'sound' end, 'what', pg_temp.pick('f' || r, ${notes}::text[]))
        when 'damage' then jsonb_build_object('weight', case when r % 8 = 0 then 'stop' when r % 3 = 0 then 'open matter' else 'mark' end, 'uMm', -550 + r % 1100, 'vMm', -350 + r % 700,
          'what', pg_temp.pick('d' || r, ${notes}::text[]))
        when 'repair' then jsonb_build_object('method', case when r % 2 = 0 then 'fill' else 'surface ply' end, 'what', 'Filled and faired', 'interim', r % 6 = 0,
          'untilPulls', case when r % 6 = 0 then 5 end, 'untilOn', null, 'maxC', null, 'uMm', -550 + r % 1100, 'vMm', -350 + r % 700)
        when 'pins' then jsonb_build_object('tag', null, 'insertions', 1 + r % 3)
        when 'dowel-changed' then jsonb_build_object('tag', 'D0' || (1 + r % 6), 'what', 're-bushed', 'uMm', null, 'vMm', null, 'diameterMm', 8)
        when 'measured' then jsonb_build_object('instrument', 'arm 2', 'temperatureC', 21, 'frame', 'area',
          'points', jsonb_build_array(jsonb_build_object('tag', 'D01', 'xMm', -300.02, 'yMm', -170.01, 'zMm', 0.05), jsonb_build_object('tag', 'D02', 'xMm', -119.95, 'yMm', -90.03, 'zMm', null)))
        when 'moved' then jsonb_build_object('place', 'rack ' || chr(65 + r % 8) || (1 + r % 48))
        when 'matter' then jsonb_build_object('what', pg_temp.pick('m' || r, array['Order bolts for the flange', 'Ask design about the moved dowel', 'Backing frame wobbles']), 'who', p.name, 'untilOn', (s.done_on + 30)::text)
        when 'settled' then jsonb_build_object('entryId', pg_temp.id_of('entry/' || s.i || '/' || (s.k - 4)), 'outcome', 'closed', 'who', null, 'untilOn', null, 'how', 'done')
        when 'state' then jsonb_build_object('state', 'held', 'on', r % 40 = 0, 'reason', 'crack to be looked at', 'untilOn', null)
        else '{}'::jsonb end,
      case when s.kind = 'note' or r % 30 = 0 then pg_temp.pick('n' || r, ${notes}::text[]) else '' end, 'seed-turn/' || s.i || '/' || s.k
    from seed_entry s, lateral (select pg_temp.id_of('mould/' || s.i) as id) x join mould m on m.id = x.id,
      lateral (select pg_temp.draw('entry/' || s.i || '/' || s.k, 100000) as r) d, person p
    where p.id = pg_temp.id_of('person/' || s.who)`
}

/** The entries that patches bring with them. */
async function seedPatchEntries(tx: postgres.TransactionSql): Promise<void> {
  for (const [kind, least, days] of [
    ['laid', 3, 0],
    ['proved', 6, 4],
  ] as const) {
    await tx`
      insert into log_entry (id, mould_id, kind, done_on, precision, day_order, written_at, by_id, by_name, area_id, patch_id, data, content_hash)
      select pg_temp.id_of(${kind} || '/' || i || '/' || n), pg_temp.id_of('mould/' || i), ${kind === 'laid' ? 'patch-laid' : 'proved'}, laid_on + ${days}::int, 'day', 960,
        laid_on + ${days}::int + interval '17 hours', pg_temp.id_of('person/4'), (select name from person where id = pg_temp.id_of('person/4')),
        pg_temp.id_of('area/' || i || '/1'), id, jsonb_build_object('planId', pg_temp.id_of('plan/' || i || '/' || n), 'number', n)
          || case when ${kind === 'laid'} then jsonb_build_object('lots', jsonb_build_array(jsonb_build_object('material', 'Large twill 200', 'lot', 'R00500'))) else '{}' end,
        'seed-' || ${kind} || '/' || i || '/' || n
      from seed_patch where fate >= ${least}`
  }
}
