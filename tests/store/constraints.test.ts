import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { db } from '#lib/store/db'
import { ada, aMould, book, log } from './book'
import { broken, good, ids, insert, json, moment, patternId, productId, type Row, rows } from './rows'

/** What the database itself refuses, whoever writes. */

book()
rows()

test.each(Object.keys(good))('a good row of %s is taken', async (table) => {
  await insert(table, good[table]?.() ?? {})
})

const bad: readonly (readonly [table: string, constraint: string, change: Row])[] = [
  ['person', 'person_role_check', { role: 'owner' }],
  ['person', 'person_name_check', { name: '  ' }],
  ['person', 'person_name_check', { initials: ' ' }],
  ['api_token', 'api_token_role_check', { role: 'root' }],
  ['season', 'season_dates_check', { ends_on: '2024-01-01' }],
  ['part', 'part_code_check', { code: '' }],
  ['part', 'part_code_check', { code: ' A1' }],
  ['part', 'part_code_check', { code: 'A 1' }],
  ['part', 'part_code_check', { code: '-A1' }],
  ['pattern', 'pattern_code_check', { code: 'A/1' }],
  ['pattern', 'pattern_size_check', { mass_kg: 0 }],
  ['pattern', 'pattern_size_check', { length_mm: 0 }],
  ['pattern', 'pattern_size_check', { mass_kg: 90, width_mm: 0 }],
  ['pattern', 'pattern_size_check', { height_mm: -1 }],
  ['mould_set', 'mould_set_code_check', { code: 'A\n1' }],
  ['mould_set', 'mould_set_name_check', { name: ' ' }],
  ['mould_set', 'mould_set_size_check', { mass_kg: 0 }],
  ['mould_set', 'mould_set_size_check', { length_mm: 0 }],
  ['mould_set', 'mould_set_size_check', { mass_kg: 300, width_mm: 0 }],
  ['mould_set', 'mould_set_size_check', { height_mm: -1 }],
  ['set_hardware', 'set_hardware_kind_check', { kind: 'screw' }],
  ['set_hardware', 'set_hardware_check', { position: 0 }],
  ['set_hardware', 'set_hardware_check', { count: 0 }],
  ['set_hardware', 'set_hardware_check', { name: ' ' }],
  ['mould', 'mould_code_check', { code: 'A1 ' }],
  ['mould', 'mould_name_check', { name: ' ' }],
  ['mould', 'mould_hand_check', { hand: 'left' }],
  ['mould', 'mould_piece_check', { piece_no: 1 }],
  ['mould', 'mould_size_check', { mass_kg: 0 }],
  ['mould', 'mould_size_check', { mass_kg: 3, height_mm: -1 }],
  ['mould', 'mould_heat_check', { heat_in_use_c: 401 }],
  ['mould', 'mould_heat_check', { part_cure_c: 9 }],
  ['mould', 'mould_part_id_fkey', { part_id: randomUUID() }],
  ['face_area', 'face_area_name_check', { name: '' }],
  ['face_area', 'face_area_frame_check', { origin_mm: [0, 0] }],
  ['face_area', 'face_area_frame_check', { u_axis: null }],
  ['face_area', 'face_area_frame_check', { grid_origin_mm: [] }],
  ['face_area', 'face_area_grid_check', { grid_cell_mm: 4 }],
  ['face_area', 'face_area_curvature_check', { curvature: 'double' }],
  ['thickness_reading', 'thickness_reading_check', { thickness_mm: 0 }],
  ['thickness_reading', 'thickness_reading_check', { thickness_mm: 101 }],
  ['thickness_reading', 'thickness_reading_struck_check', { struck_at: moment }],
  ['thickness_reading', 'thickness_reading_struck_check', { struck_at: moment, struck_by_name: 'Ada' }],
  ['thickness_reading', 'thickness_reading_struck_check', { struck_at: moment, struck_because: 'misread' }],
  [
    'thickness_reading',
    'thickness_reading_struck_check',
    { struck_by_name: 'Ada', struck_because: 'misread' },
  ],
  ['locating_table', 'locating_table_number_check', { number: 0 }],
  ['material', 'material_code_check', { code: '#1' }],
  ['material', 'material_role_check', { role: 'core' }],
  ['material', 'material_figures_check', { fibre_areal_weight_gsm: 0 }],
  ['material', 'material_figures_check', { roll_width_mm: 0 }],
  ['material', 'material_fibre_check', { fibre_volume_fraction: null }],
  ['material', 'material_fibre_check', { fibre_volume_fraction: 1 }],
  ['material', 'material_fibre_check', { resin_mass_fraction: 0.4, resin_density_g_cm3: 1.2 }],
  ['material', 'material_fibre_check', { fibre_volume_fraction: null, resin_mass_fraction: 0.4 }],
  ['stack', 'stack_code_check', { code: '' }],
  ['stack_ply', 'stack_ply_check', { position: 0 }],
  ['stack_ply', 'stack_ply_check', { direction_deg: -180 }],
  ['stack_ply', 'stack_ply_pkey', { position: 1 }],
  ['log_entry', 'log_entry_subject_check', { mould_id: null }],
  ['log_entry', 'log_entry_subject_check', { pattern_id: randomUUID() }],
  ['log_entry', 'log_entry_kind_check', { kind: 'pulled' }],
  ['log_entry', 'log_entry_pattern_kind_check', { mould_id: null, pattern_id: patternId, kind: 'pull' }],
  ['log_entry', 'log_entry_precision_check', { precision: 'minute' }],
  ['log_entry', 'log_entry_precision_check', { done_at: moment }],
  ['log_entry', 'log_entry_precision_check', { precision: 'week' }],
  ['log_entry', 'log_entry_order_check', { day_order: -1 }],
  ['log_entry', 'log_entry_order_check', { day_order: 1560 }],
  ['log_entry', 'log_entry_data_check', { data: null }],
  ['log_entry', 'log_entry_correction_check', { kind: 'correction' }],
  ['log_entry', 'log_entry_correction_of_mould', { kind: 'correction', corrects_id: randomUUID() }],
  ['patch', 'patch_number_check', { number: 0 }],
  ['patch', 'patch_number_check', { title: ' ' }],
  ['patch_plan', 'patch_plan_version_check', { version_no: 0 }],
  ['patch_plan', 'patch_plan_state_check', { state: 'done', signed_at: moment, signed_by_name: 'Ada' }],
  ['patch_plan', 'patch_plan_signed_check', { state: 'signed' }],
  [
    'patch_plan',
    'patch_plan_bench_check',
    { state: 'on the bench', signed_at: moment, signed_by_name: 'Ada' },
  ],
  [
    'patch_plan',
    'patch_plan_laid_check',
    { state: 'laid', signed_at: moment, signed_by_name: 'Ada', bench_at: moment },
  ],
  [
    'patch_plan',
    'patch_plan_proved_check',
    {
      state: 'proved',
      signed_at: moment,
      signed_by_name: 'Ada',
      bench_at: moment,
      laid_entry_id: randomUUID(),
    },
  ],
  ['patch_plan', 'patch_plan_put_by_check', { state: 'put by' }],
  ['patch_plan', 'patch_plan_put_by_check', { put_by_at: moment }],
  [
    'patch_plan',
    'patch_plan_in_work_key',
    { state: 'on the bench', signed_at: moment, signed_by_name: 'Ada', bench_at: moment },
  ],
  ['job_line', 'job_line_tick_check', { ticked_at: moment }],
  ['job_line', 'job_line_pkey', { position: 1 }],
  ['built_part', 'built_part_serial_check', { serial: ' ' }],
  ['built_part_lot', 'built_part_lot_check', { position: 0 }],
  ['built_part_lot', 'built_part_lot_check', { material: ' ' }],
  ['built_part_lot', 'built_part_lot_check', { lot: '' }],
  ['product', 'product_name_check', { name: ' ' }],
  ['product', 'product_use_check', { use: 'paint' }],
  ['product', 'product_unit_check', { unit: 'gallon' }],
  ['product', 'product_figures_check', { coats: -1 }],
  ['product', 'product_figures_check', { interval_min: -1 }],
  ['product', 'product_figures_check', { flash_min: -1 }],
  ['product', 'product_figures_check', { cure_min: -1 }],
  ['product', 'product_figures_check', { pot_life_min: 0 }],
  ['product', 'product_figures_check', { shelf_life_days: 0 }],
  ['product', 'product_figures_check', { open_life_days: 0 }],
  ['product', 'product_figures_check', { low_below: -1 }],
  ['stock_lot', 'stock_lot_subject_check', { material_id: null }],
  ['stock_lot', 'stock_lot_subject_check', { product_id: productId }],
  ['stock_lot', 'stock_lot_check', { lot: ' ' }],
  ['stock_lot', 'stock_lot_check', { quantity: 0 }],
  ['stock_lot', 'stock_lot_check', { expires_on: '2014-05-01' }],
  ['stock_lot', 'stock_lot_container_check', { container: 'crate' }],
  ['stock_lot', 'stock_lot_closed_check', { closed_on: '2024-06-01' }],
  ['stock_lot', 'stock_lot_closed_check', { closed_why: 'used up' }],
  ['lot_move', 'lot_move_kind_check', { kind: 'thrown away' }],
  ['lot_move', 'lot_move_amount_check', { amount: 0 }],
  ['lot_move', 'lot_move_amount_check', { kind: 'out of freezer', amount: 0 }],
  ['lot_move', 'lot_move_amount_check', { kind: 'counted', amount: -1 }],
  ['lot_move', 'lot_move_correction_check', { kind: 'correction', amount: 0 }],
  ['price', 'price_subject_check', { material_id: null }],
  ['price', 'price_subject_check', { product_id: productId }],
  ['price', 'price_check', { minor_per_unit: -1 }],
  ['price', 'price_check', { currency: 'eur' }],
  ['rate', 'rate_check', { operation: ' ' }],
  ['rate', 'rate_check', { basis: 'day' }],
  ['rate', 'rate_check', { hours: 0 }],
  ['rate', 'rate_check', { minor_per_basis: -1 }],
  ['rate', 'rate_check', { currency: 'EURO' }],
  ['picture', 'picture_kind_check', { kind: 'sketch' }],
  ['picture', 'picture_type_check', { mime_type: 'image/heic' }],
  ['picture', 'picture_subject_check', { mould_id: null }],
  ['picture', 'picture_subject_check', { pattern_id: patternId }],
  ['picture', 'picture_size_check', { size_bytes: 0 }],
  ['picture', 'picture_size_check', { mime_type: 'application/pdf' }],
  ['picture', 'picture_size_check', { width_px: null, height_px: null }],
  ['picture', 'picture_size_check', { height_px: null }],
  ['picture', 'picture_put_away_check', { put_away_at: moment }],
  ['picture', 'picture_put_away_check', { put_away_because: 'blurred' }],
  ['picture_bytes', 'picture_bytes_size_check', { size: 'middling' }],
]

test.each(bad)('%s: %s refuses %j', async (table, constraint, change) => {
  const row = { ...good[table]?.(), ...change }
  if (constraint === 'log_entry_data_check') Object.assign(row, { data: json([]) })
  expect(await broken(insert(table, row))).toBe(constraint)
})

describe('what belongs to a mould belongs to one', () => {
  test('area, patch and corrected entry of an entry are of its mould', async () => {
    const row = () => ({ ...good.log_entry?.(), mould_id: ids.other })
    expect(await broken(insert('log_entry', { ...row(), area_id: ids.area }))).toBe('log_entry_area_of_mould')
    expect(await broken(insert('log_entry', { ...row(), patch_id: ids.patch }))).toBe(
      'log_entry_patch_of_mould',
    )
    expect(await broken(insert('log_entry', { ...row(), corrects_id: ids.entry }))).toBe(
      'log_entry_correction_of_mould',
    )
  })

  test("an entry doesn't correct itself", async () => {
    const id = randomUUID()
    expect(await broken(insert('log_entry', { ...good.log_entry?.(), id, corrects_id: id }))).toBe(
      'log_entry_correction_of_mould',
    )
  })

  test('a boundary of two points, and one that is no list', async () => {
    for (const boundary of [
      [
        [0, 0],
        [1, 0],
      ],
      [],
    ]) {
      expect(await broken(insert('face_area', { ...good.face_area?.(), boundary: json(boundary) }))).toBe(
        'face_area_boundary_check',
      )
    }
    expect(await broken(insert('face_area', { ...good.face_area?.(), boundary: json({}) }))).toMatch(
      /face_area_boundary_check|array/,
    )
  })

  test('the points of an issue: kind, size, tag once whatever the case', async () => {
    const [table] = await db()
      .sql`insert into locating_table ${db().sql(good.locating_table?.() as never)} returning id`
    const point = (change: Row) => ({
      table_id: table?.id,
      mould_id: ids.mould,
      tag: randomUUID(),
      kind: 'dowel',
      u_mm: 0,
      v_mm: 0,
      diameter_mm: 8,
      position: 1,
      ...change,
    })
    await insert('locating_point', point({ tag: 'D01' }))
    expect(await broken(insert('locating_point', point({ tag: ' d01' })))).toBe('locating_point_tag_key')
    expect(await broken(insert('locating_point', point({ kind: 'screw' })))).toBe('locating_point_kind_check')
    expect(await broken(insert('locating_point', point({ diameter_mm: 0 })))).toBe(
      'locating_point_size_check',
    )
    expect(await broken(insert('locating_point', point({ bush_diameter_mm: 7 })))).toBe(
      'locating_point_size_check',
    )
    expect(await broken(insert('locating_point', point({ tolerance_mm: 0 })))).toBe(
      'locating_point_size_check',
    )
    expect(await broken(insert('locating_point', point({ tag: ' ' })))).toBe('locating_point_tag_check')
    expect(await broken(db().sql`update locating_point set u_mm = 1`)).toMatch(
      /locating_point is never changed/,
    )
    expect(await broken(db().sql`delete from locating_table where id = ${table?.id as string}`)).toMatch(
      /never changed|fkey/,
    )
  })

  test('e-mail addresses once whatever the case', async () => {
    const row = { ...good.person?.(), email: 'ADA@shop.example' }
    expect(await broken(insert('person', row))).toBe('person_email_lower_key')
  })

  test('one shop, with a name and a currency', async () => {
    const row = { id: 2, name: 'two', time_zone: 'UTC', currency: 'EUR', rules: json({}) }
    expect(await broken(insert('shop', row))).toBe('shop_one_row_check')
    expect(await broken(db().sql`update shop set currency = 'eur'`)).toBe('shop_currency_check')
    expect(await broken(db().sql`update shop set name = ' '`)).toBe('shop_name_check')
  })
})

describe('two plans of one patch', () => {
  test('have numbers of their own', async () => {
    const row = good.patch_plan?.() ?? {}
    await insert('patch_plan', row)
    expect(await broken(insert('patch_plan', row))).toBe('patch_plan_patch_id_version_no_key')
  })
})

test('a mould with a history is not deleted', async () => {
  const { id } = await aMould()
  await log(id, 'pull')
  expect(await broken(db().sql`delete from mould where id = ${id}`)).toMatch(/log_entry_mould_id_fkey/)
})

test('a person who has written is not deleted', async () => {
  expect(await broken(db().sql`delete from person where id = ${ada.id}`)).toBe('log_entry_by_id_fkey')
})

test('every check of the migrations is broken once in these tests', async () => {
  const { sql } = db()
  const rows = await sql`
    select conname as name from pg_constraint c join pg_class t on t.oid = c.conrelid join pg_namespace n on n.oid = t.relnamespace
    where n.nspname = 'public' and contype = 'c'`
  const tested = new Set([...bad.map(([, constraint]) => constraint), ...elsewhere])
  expect(
    rows
      .map((row) => row.name as string)
      .filter((name) => !tested.has(name))
      .sort(),
  ).toEqual([])
})

/** Checks that have a test of their own above. */
const elsewhere = [
  'face_area_boundary_check',
  'locating_point_kind_check',
  'locating_point_size_check',
  'locating_point_tag_check',
  'shop_currency_check',
  'shop_name_check',
  'shop_one_row_check',
]
