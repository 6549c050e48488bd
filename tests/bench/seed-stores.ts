import type postgres from 'postgres'
import { products } from './seed-words'

/** Two materials and a stack of six plies, products, and 3000 lots with their moves. */
export async function seedStores(tx: postgres.TransactionSql): Promise<void> {
  await tx`
    insert into material (id, code, name, role, fibre_areal_weight_gsm, fibre_density_g_cm3, resin_mass_fraction, resin_density_g_cm3,
      roll_width_mm, low_below_m2, out_life_h, source_note)
    values (pg_temp.id_of('material/L200'), 'L200', 'Large twill 200', 'surface', 200, 1.78, 0.42, 1.22, 1250, 10, 240, 'invented'),
      (pg_temp.id_of('material/L650'), 'L650', 'Large twill 650', 'bulk', 650, 1.78, 0.38, 1.22, 1250, 20, 240, 'invented')`
  await tx`
    insert into stack (id, code, name) values (pg_temp.id_of('stack/M141'), 'LM141', 'one, four, one')`
  await tx`
    insert into stack_ply (stack_id, position, material_id, direction_deg)
    select pg_temp.id_of('stack/M141'), n, pg_temp.id_of(case when n in (1, 6) then 'material/L200' else 'material/L650' end),
      case when n in (3, 4) then 45 else 0 end
    from generate_series(1, 6) n`
  await tx`
    insert into product (id, name, use, coats, interval_min, unit, source_note)
    select pg_temp.id_of('product/' || name), name, use, 4, 30, 'l', 'invented'
    from unnest(${products.map(([name]) => name)}::text[], ${products.map(([, use]) => use)}::text[]) as p (name, use)
    on conflict do nothing`
  await tx`
    insert into stock_lot (id, material_id, product_id, lot, container, quantity, received_on, expires_on, place, closed_on, closed_why)
    select pg_temp.id_of('lot/' || n), case when n % 2 = 0 then pg_temp.id_of(case when n % 4 = 0 then 'material/L200' else 'material/L650' end) end,
      case when n % 2 = 1 then (select id from product where name = pg_temp.pick('lot-product/' || n, ${products.map(([name]) => name)}::text[])) end,
      case when n % 2 = 0 then 'R' else 'T' end || lpad(n::text, 5, '0'), case when n % 2 = 0 then 'roll' else 'tin' end,
      case when n % 2 = 0 then 62.5 else 5 end, date '2022-01-10' + n / 2, date '2023-01-10' + n / 2,
      case when n % 2 = 0 then 'freezer ' || (1 + n % 3) else 'cupboard ' || (1 + n % 5) end,
      case when n < 2700 then date '2022-06-10' + n / 2 end, case when n < 2700 then 'used up' end
    from generate_series(1, 3000) n`
  await tx`
    insert into lot_move (id, lot_id, kind, amount, done_on, by_id, by_name)
    select pg_temp.id_of('move/' || n || '/' || k), pg_temp.id_of('lot/' || n), 'used', case when n % 2 = 0 then 12 else 1 end,
      date '2022-01-20' + n / 2 + k * 9, pg_temp.id_of('person/3'), (select name from person where id = pg_temp.id_of('person/3'))
    from generate_series(1, 3000) n, generate_series(1, 4) k`
}
