import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { db } from '#lib/store/db'
import { ada, book } from './book'
import { broken, good, ids, insert, moment, productId, type Row, rows } from './rows'

/** What stands in the database once only, whoever writes. */

book()
rows()

const moveId = randomUUID()

type Twice = readonly [index: string, table: string, first: () => Row, second?: () => Row]

/** Two rows that are alike in what must not come twice, and good otherwise. */
const twice: readonly Twice[] = [
  ['api_token_name_key', 'api_token', () => ({ name: 'Scale' }), () => ({ name: ' scale ' })],
  [
    'api_token_token_hash_key',
    'api_token',
    () => ({ name: 'one', token_hash: 'h' }),
    () => ({ name: 'two', token_hash: 'h' }),
  ],
  ['built_part_serial_key', 'built_part', () => ({ serial: 'LH-01' }), () => ({ serial: ' lh-01' })],
  ['face_area_mould_id_position_key', 'face_area', () => ({ position: 7 })],
  ['face_area_name_key', 'face_area', () => ({ name: 'Floor' }), () => ({ name: 'floor ' })],
  ['locating_point_tag_key', 'locating_point', () => ({ tag: 'D1' }), () => ({ tag: ' d1' })],
  ['locating_table_number_key', 'locating_table', () => ({ number: 7 })],
  ['log_entry_corrects_id_key', 'log_entry', () => ({ kind: 'correction', corrects_id: ids.entry })],
  ['lot_move_corrects_id_key', 'lot_move', () => ({ kind: 'correction', amount: 0, corrects_id: moveId })],
  ['material_code_key', 'material', () => ({ code: 'Twill' }), () => ({ code: 'twill' })],
  ['mould_code_key', 'mould', () => ({ code: 'Nose' }), () => ({ code: 'nose' })],
  ['mould_set_code_key', 'mould_set', () => ({ code: 'Hull' }), () => ({ code: 'hull' })],
  ['mould_set_piece_key', 'mould', () => ({ set_id: ids.set, piece_no: 1 })],
  ['part_code_key', 'part', () => ({ code: 'Spat' }), () => ({ code: 'spat' })],
  ['patch_mould_id_number_key', 'patch', () => ({ number: 7 })],
  ['patch_plan_in_work_key', 'patch_plan', () => ({ state: 'on the bench', ...onBench })],
  ['patch_plan_patch_id_version_no_key', 'patch_plan', () => ({ version_no: 7 })],
  ['pattern_code_key', 'pattern', () => ({ code: 'Plug' }), () => ({ code: 'plug' })],
  ['person_email_key', 'person', () => ({ email: 'eve@shop.example' })],
  [
    'person_email_lower_key',
    'person',
    () => ({ email: 'fay@shop.example' }),
    () => ({ email: 'FAY@shop.example' }),
  ],
  ['product_name_key', 'product', () => ({ name: 'Agent' }), () => ({ name: ' agent' })],
  ['season_name_key', 'season', () => ({ name: '2031' })],
  ['session_token_key', 'session', () => ({ token: 't', person_id: ada.id, expires_at: moment })],
  ['stack_code_key', 'stack', () => ({ code: 'M9' }), () => ({ code: 'm9' })],
  ['stock_lot_material_lot_key', 'stock_lot', () => ({ lot: 'R-9' }), () => ({ lot: 'r-9 ' })],
  [
    'stock_lot_product_lot_key',
    'stock_lot',
    () => ({ material_id: null, product_id: productId, lot: 'T-9' }),
    () => ({ material_id: null, product_id: productId, lot: ' t-9' }),
  ],
]

const onBench = { signed_at: moment, signed_by_name: 'Ada', bench_at: moment }

test.each(twice.map(([index, table, first, second]) => [index, table, first, second ?? first] as const))(
  '%s',
  async (index, table, first, second) => {
    if (table === 'lot_move') await insert('lot_move', { ...good.lot_move?.(), id: moveId })
    // The patch of the sample has a plan in work already.
    if (index !== 'patch_plan_in_work_key') await insert(table, { ...good[table]?.(), ...first() })
    expect(await broken(insert(table, { ...good[table]?.(), ...second() }))).toBe(index)
  },
)

test('a token that was ended leaves its name to the next one', async () => {
  await insert('api_token', { ...good.api_token?.(), name: 'rig 2', ended_at: moment })
  await insert('api_token', { ...good.api_token?.(), name: 'rig 2' })
})

test('every unique rule of the migrations is broken once in these tests', async () => {
  const found = await db().sql<{ name: string }[]>`
    select c.relname as name from pg_index i join pg_class c on c.oid = i.indexrelid join pg_namespace n on n.oid = c.relnamespace
    where n.nspname = 'public' and i.indisunique and not i.indisprimary and c.relname not like '\\_prisma%' order by 1`
  expect(found.map(({ name }) => name).sort()).toEqual(twice.map(([index]) => index).sort())
})
