import type postgres from 'postgres'

/** Two areas a mould, 1200 by 800 mm, with readings; six locating points in the present issue, some in the one before. */
export async function seedFaces(tx: postgres.TransactionSql): Promise<void> {
  const boundary = [
    [-600, -400],
    [600, -400],
    [600, 400],
    [-600, 400],
  ]
  await tx`
    insert into face_area (id, mould_id, name, origin_mm, u_axis, v_axis, boundary, grid_origin_mm, grid_cell_mm, position)
    select pg_temp.id_of('area/' || m.i || '/' || n), pg_temp.id_of('mould/' || m.i),
      case n when 1 then 'floor' else pg_temp.pick('area/' || m.i, array['side wall', 'flange', 'nose', 'bulkhead']) end,
      array[0, 0, 0], array[1, 0, 0], array[0, 1, 0], ${tx.json(boundary)}, array[-600, 400], 50, n
    from seed_mould m, generate_series(1, 2) n`
  await tx`
    insert into thickness_reading (area_id, u_mm, v_mm, thickness_mm, measured_on, by_name)
    select pg_temp.id_of('area/' || m.i || '/1'), -300 + 200 * n, 0, 3.1 + pg_temp.draw('reading/' || m.i || '/' || n, 30) / 100.0,
      date '2022-03-01', 'Greta Solheim'
    from seed_mould m, generate_series(1, 3) n`
  await tx`
    insert into locating_table (id, number, name, issued_on, by_id, by_name)
    select pg_temp.id_of('issue/' || n), (select coalesce(max(number), 0) from locating_table) + n, 'Large issue ' || n,
      make_date(2023 + n, 10, 1), pg_temp.id_of('person/1'), 'Greta Solheim'
    from generate_series(1, 2) n`
  await tx`
    insert into locating_point (id, table_id, mould_id, area_id, tag, kind, u_mm, v_mm, diameter_mm, bush_diameter_mm, through, is_datum, position)
    select pg_temp.id_of('point/' || issue || '/' || m.i || '/' || n), pg_temp.id_of('issue/' || issue), pg_temp.id_of('mould/' || m.i),
      pg_temp.id_of('area/' || m.i || '/1'), 'D' || lpad(n::text, 2, '0'), case when n = 6 then 'insert' else 'dowel' end,
      -480 + 180 * n + pg_temp.draw('u/' || issue || '/' || m.i || '/' || n, 40), -250 + 80 * n, 8, 14, n < 5, n < 3, n
    from seed_mould m, generate_series(1, 2) issue, generate_series(1, 6) n
    where issue = 2 or m.i % 10 = 0`
}
