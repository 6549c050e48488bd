import { randomUUID } from 'node:crypto'
import { beforeAll } from 'vitest'
import { db } from '#lib/store/db'
import { violatedConstraint } from '#lib/store/errors'
import { aMould, anArea, stackId, surfaceId } from './book'
import { aPatch } from './patch-book'

/** Rows written past the services, and which rule of the database refuses them. */

export type Row = Readonly<Record<string, unknown>>

export const ids = {
  mould: '',
  other: '',
  area: '',
  patch: '',
  plan: '',
  entry: '',
  set: '',
  table: '',
  builtPart: '',
  lot: '',
  picture: '',
}

/** A pattern and a product that are there, for changes that name one. */
export const patternId = '00000000-0000-4000-8000-000000000061'
export const productId = '00000000-0000-4000-8000-000000000062'

/** Fills `ids`: a mould with a laid patch and a picture, another mould, a split mould, a part and a lot. */
export function rows(): void {
  beforeAll(async () => {
    const [mould, other] = [await aMould(), await aMould()]
    const area = await anArea(mould.id)
    const { patchId, planId, entryId } = await aPatch(mould.id, area.id, 'laid')
    Object.assign(ids, {
      mould: mould.id,
      other: other.id,
      area: area.id,
      patch: patchId,
      plan: planId,
      entry: entryId,
    })
    Object.assign(ids, {
      set: await idOf('mould_set'),
      table: await idOf('locating_table'),
      builtPart: await idOf('built_part'),
      lot: await idOf('stock_lot'),
      picture: await idOf('picture'),
    })
    await insert('pattern', { ...good.pattern?.(), id: patternId })
    await insert('product', { ...good.product?.(), id: productId })
  })
}

/** Writes the good row of a table and answers its id. */
async function idOf(table: string): Promise<string> {
  const id = randomUUID()
  await insert(table, { ...good[table]?.(), id })
  return id
}

/** A row that is taken, for each table. */
export const good: Readonly<Record<string, () => Row>> = {
  person: () => ({ name: 'Eve', initials: 'EV', email: `${randomUUID()}@shop.example`, role: 'viewer' }),
  api_token: () => ({ name: `rig ${randomUUID()}`, role: 'laminator', token_hash: randomUUID() }),
  season: () => ({ name: randomUUID(), starts_on: '2024-01-01', ends_on: '2024-12-31' }),
  part: () => ({ code: `P-${randomUUID()}`, name: 'part' }),
  pattern: () => ({ code: `P-${randomUUID()}`, name: 'pattern' }),
  mould_set: () => ({ code: `S-${randomUUID()}`, name: 'set' }),
  mould: () => ({ code: `M-${randomUUID()}`, name: 'mould' }),
  face_area: () => ({
    mould_id: ids.other,
    name: randomUUID(),
    origin_mm: [0, 0, 0],
    u_axis: [1, 0, 0],
    v_axis: [0, 1, 0],
    boundary: json([
      [0, 0],
      [1, 0],
      [1, 1],
    ]),
    grid_origin_mm: [0, 0],
    position: Math.floor(Math.random() * 1e9),
  }),
  thickness_reading: () => ({
    area_id: ids.area,
    u_mm: 0,
    v_mm: 0,
    thickness_mm: 4,
    measured_on: '2024-05-01',
    by_name: 'Ada',
  }),
  locating_table: () => ({
    number: 1000 + Math.floor(Math.random() * 1e9),
    name: 'issue',
    issued_on: '2024-05-01',
    by_name: 'Ada',
  }),
  locating_point: () => ({
    table_id: ids.table,
    mould_id: ids.mould,
    tag: randomUUID(),
    kind: 'dowel',
    u_mm: 0,
    v_mm: 0,
    diameter_mm: 8,
    position: 1,
  }),
  material: () => ({
    code: `F-${randomUUID()}`,
    name: 'fabric',
    role: 'bulk',
    fibre_areal_weight_gsm: 650,
    fibre_density_g_cm3: 1.78,
    fibre_volume_fraction: 0.5,
    roll_width_mm: 1250,
  }),
  stack: () => ({ code: `L-${randomUUID()}`, name: 'stack' }),
  stack_ply: () => ({
    stack_id: stackId,
    position: 7 + Math.floor(Math.random() * 1e9),
    material_id: surfaceId,
    direction_deg: 0,
  }),
  log_entry: () => ({
    id: randomUUID(),
    mould_id: ids.mould,
    kind: 'note',
    done_on: '2024-05-01',
    precision: 'day',
    day_order: 720,
    by_name: 'Ada',
    data: json({}),
    content_hash: 'x',
  }),
  patch: () => ({
    mould_id: ids.mould,
    area_id: ids.area,
    number: 100 + Math.floor(Math.random() * 1e9),
    title: 'patch',
  }),
  patch_plan: () => ({
    patch_id: ids.patch,
    version_no: 100 + Math.floor(Math.random() * 1e9),
    opening: json({}),
    input: json({}),
    result: json({}),
    calculation_version: '1',
    created_by_name: 'Ada',
  }),
  job_line: () => ({
    plan_id: ids.plan,
    position: 1000 + Math.floor(Math.random() * 1e9),
    code: 'cut',
    title: 'Cut',
    detail: '',
    second_person: false,
  }),
  set_hardware: () => ({
    set_id: ids.set,
    position: 1 + Math.floor(Math.random() * 1e9),
    kind: 'bolt',
    name: 'flange bolt',
  }),
  built_part: () => ({ serial: `B-${randomUUID()}` }),
  built_part_lot: () => ({
    built_part_id: ids.builtPart,
    position: 1 + Math.floor(Math.random() * 1e9),
    material: '200 twill',
    lot: 'R-1',
  }),
  product: () => ({ name: randomUUID(), use: 'release' }),
  stock_lot: () => ({
    material_id: surfaceId,
    lot: `R-${randomUUID()}`,
    container: 'roll',
    quantity: 10,
    received_on: '2024-05-01',
  }),
  lot_move: () => ({
    id: randomUUID(),
    lot_id: ids.lot,
    kind: 'used',
    amount: 1,
    done_on: '2024-05-02',
    by_name: 'Ada',
  }),
  price: () => ({
    material_id: surfaceId,
    minor_per_unit: 4200,
    unit: 'm2',
    currency: 'EUR',
    from_on: '2024-05-01',
    by_name: 'Ada',
  }),
  rate: () => ({
    operation: 'lay-up',
    basis: 'hour',
    hours: 1,
    minor_per_basis: 5500,
    currency: 'EUR',
    from_on: '2024-05-01',
    by_name: 'Ada',
  }),
  picture: () => ({
    id: randomUUID(),
    kind: 'photo',
    mime_type: 'image/jpeg',
    width_px: 1600,
    height_px: 1200,
    size_bytes: 200_000,
    taken_on: '2024-05-01',
    mould_id: ids.mould,
    by_name: 'Ada',
    content_hash: randomUUID(),
  }),
  picture_bytes: () => ({ picture_id: ids.picture, size: 'full', bytes: Buffer.from('picture') }),
}

export const json = (value: unknown) => db().sql.json(value as never)

export const insert = (table: string, row: Row) =>
  db().sql`insert into ${db().sql(table)} ${db().sql(row as never)}`

export async function broken(work: Promise<unknown>): Promise<string | null> {
  try {
    await work
    return 'nothing was refused'
  } catch (error) {
    return violatedConstraint(error) ?? (error as Error).message
  }
}

export const moment = '2024-05-01T10:00:00Z'
