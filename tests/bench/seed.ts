import type postgres from 'postgres'
import { defaultShopRules } from '#lib/schema/shop'
import { makeDraws } from './draw'
import { seedFaces } from './seed-faces'
import { seedEntries } from './seed-log'
import { seedPatches } from './seed-patches'
import { seedStores } from './seed-stores'
import { families, owners, peopleNames } from './seed-words'

export interface SeedSize {
  readonly moulds: number
  readonly entries: number
}

/**
 * Fills a migrated database with an invented shop of this size: people, stores, parts, patterns, split moulds, moulds with
 * faces and points, patches with real plans, lots, built parts and a log in the proportions of a working shop. Set-based
 * and deterministic: the same size gives the same rows. A shop and its people that are there stay. One transaction;
 * afterwards the tables are analysed.
 */
export async function seedLarge(sql: postgres.Sql, size: SeedSize): Promise<void> {
  await sql.begin(async (tx) => {
    await makeDraws(tx)
    await seedShop(tx)
    await seedStores(tx)
    await seedMoulds(tx, size.moulds)
    await seedFaces(tx)
    await seedPatches(tx)
    await seedEntries(tx, size.entries)
  })
  await sql`analyze`
}

async function seedShop(tx: postgres.TransactionSql): Promise<void> {
  await tx`
    insert into shop (id, name, time_zone, currency, rules)
    values (1, 'Large shop (invented)', 'Europe/Berlin', 'EUR', ${tx.json(defaultShopRules as never)}) on conflict (id) do nothing`
  await tx`
    insert into season (name, starts_on, ends_on)
    select year || '/' || right((year + 1)::text, 2), make_date(year, 9, 1), make_date(year + 1, 8, 31)
    from generate_series(2021, 2026) year on conflict do nothing`
  await tx`
    insert into person (id, name, initials, email, role, ended_at)
    select pg_temp.id_of('person/' || n), name, left(name, 1) || upper(left(split_part(name, ' ', 2), 2)), 'large.' || n || '@shop.example',
      case when n <= 2 then 'lead' when n <= 15 then 'laminator' else 'viewer' end,
      case when n % 7 = 0 then timestamptz '2025-09-01 12:00Z' end
    from unnest(${[...peopleNames]}::text[]) with ordinality as p (name, n)`
}

/** Of five moulds two are the port and the starboard piece of a split mould; the others stand alone. */
async function seedMoulds(tx: postgres.TransactionSql, moulds: number): Promise<void> {
  await tx`
    create temp table seed_mould on commit drop as
    select i, ((i - 1) / 5) * 4 + least((i - 1) % 5, 3) as thing, case when (i - 1) % 5 = 3 then 1 when (i - 1) % 5 = 4 then 2 end as piece
    from generate_series(1, ${moulds}::int) i`
  await tx`
    create temp table seed_thing on commit drop as
    select distinct t.thing, f.code as family, f.name as family_name, f.code || '-' || lpad((t.thing + 1)::text, 4, '0') as code,
      exists (select 1 from seed_mould p where p.thing = t.thing and p.piece is not null) as split
    from seed_mould t
    join unnest(${families.map(([code]) => code)}::text[], ${families.map(([, name]) => name)}::text[]) with ordinality as f (code, name, n)
      on f.n = 1 + t.thing % ${families.length}`
  await tx`
    insert into part (id, code, name, note)
    select pg_temp.id_of('part/' || thing), code || '-T', family_name || ' ' || (thing / ${families.length} + 1),
      case when thing % 9 = 0 then 'Bonded to its neighbour before paint.' else '' end
    from seed_thing`
  await tx`
    insert into pattern (id, code, name, condition, place, available, can_be_made_again, made_of)
    select pg_temp.id_of('pattern/' || thing), code || '-PAT', 'Pattern of ' || lower(family_name) || ' ' || (thing / ${families.length} + 1),
      pg_temp.pick('condition/' || thing, array['sealed, true', 'sealed, edge chipped at the nose', 'sanded through near the flange', 'as machined']),
      'store ' || chr(65 + pg_temp.draw('store/' || thing, 6)) || (1 + thing % 40), thing % 11 <> 0, thing % 13 <> 0,
      pg_temp.pick('made/' || thing, array['tooling board 700', 'tooling board 1200', 'sanded plug, glass over foam'])
    from seed_thing where thing % 3 <> 2`
  await tx`
    insert into mould_set (id, code, name, part_id, mass_kg, assembly)
    select pg_temp.id_of('set/' || thing), code || '-S', family_name || ' ' || (thing / ${families.length} + 1) || ', split mould', pg_temp.id_of('part/' || thing),
      40 + pg_temp.draw('mass/' || thing, 120), 'Pins first, then bolts from the middle outwards; opened from the nose.'
    from seed_thing where split`
  await tx`
    insert into mould (id, code, name, part_id, pattern_id, set_id, piece_no, stack_id, hand, made_when, owner, mass_kg, heat_in_use_c,
      heat_free_c, heat_bonded_c, tg_dry_c, part_cure_c, can_be_made_again, demoulding, do_nots, note, created_at)
    select pg_temp.id_of('mould/' || m.i), t.code || case m.piece when 1 then '-P' when 2 then '-R' else '' end,
      t.family_name || ' ' || (m.thing / ${families.length} + 1) || case m.piece when 1 then ', port' when 2 then ', starboard' else '' end,
      pg_temp.id_of('part/' || m.thing), case when m.thing % 3 <> 2 then pg_temp.id_of('pattern/' || m.thing) end,
      case when m.piece is not null then pg_temp.id_of('set/' || m.thing) end, m.piece, pg_temp.id_of('stack/M141'),
      case m.piece when 1 then 'port' when 2 then 'starboard' else 'none' end, (2021 + m.i % 5)::text,
      pg_temp.pick('owner/' || m.i, ${[...owners]}::text[]), 5 + pg_temp.draw('kg/' || m.i, 90), 140, 200, 160, 185, 120, m.i % 17 <> 0,
      case when m.i % 3 = 0 then 'Wedges along the flange first, air at the deepest corner, then lift straight up.' else '' end,
      case when m.i % 8 = 0 then 'Never pry at the nose: the corner is thin there.' else '' end,
      case when m.i % 6 = 0 then 'Backing frame shared with the neighbour; check that it sits without rocking.' else '' end,
      timestamptz '2021-09-01 08:00Z' + (m.i % 1500) * interval '1 day'
    from seed_mould m join seed_thing t using (thing)`
}
