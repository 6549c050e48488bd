import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { db } from '#lib/store/db'
import { aMould, anArea, book } from './book'
import { aPatch } from './patch-book'
import { broken, good, ids, insert, json, rows } from './rows'

/** What the database does by itself when a row is written. */

book()
rows()

/** Triggers whose tests are elsewhere. */
const elsewhere = [
  // tests/store/constraints.test.ts
  'log_entry_belongs',
  // tests/store/written-stays.test.ts
  'audit_append_only',
  'creation_append_only',
  'job_line_guard',
  'locating_point_append_only',
  'locating_table_append_only',
  'log_entry_append_only',
  'lot_move_append_only',
  'patch_plan_guard',
  'price_append_only',
  'rate_append_only',
]

test('lot_move_belongs: a move that is corrected is of the same lot', async () => {
  const [lotId, id] = [randomUUID(), randomUUID()]
  await insert('stock_lot', { ...good.stock_lot?.(), id: lotId })
  await insert('lot_move', { ...good.lot_move?.(), id })
  const strike = { ...good.lot_move?.(), kind: 'correction', amount: 0, corrects_id: id }
  expect(await broken(insert('lot_move', { ...strike, lot_id: lotId }))).toBe('lot_move_correction_of_lot')
  await insert('lot_move', strike)
})

test('picture_belongs: the entry beside a picture is of its mould', async () => {
  const beside = { ...good.picture?.(), entry_id: ids.entry }
  expect(await broken(insert('picture', { ...beside, mould_id: ids.other }))).toBe('picture_entry_belongs')
  const id = randomUUID()
  await insert('picture', { ...beside, id })
  const moved = db().sql`update picture set mould_id = ${ids.other} where id = ${id}`
  expect(await broken(moved)).toBe('picture_entry_belongs')
})

test('patch_plan_summary: what lists show of a plan is its own', async () => {
  const { sql } = db()
  const result = {
    value: { place: 'floor B5', lengths: { lengthMm: 92.5 }, plies: [{}, {}, {}] },
    findings: [{ severity: 'stop' }, { severity: 'look' }, { severity: 'stop' }],
  }
  const id = randomUUID()
  const told = () =>
    sql`select place, side, length_mm, ply_count, stop_count from patch_plan where id = ${id}`
  await insert('patch_plan', { ...good.patch_plan?.(), id })
  expect(await told()).toEqual([{ place: '', side: '', length_mm: 0, ply_count: 0, stop_count: 0 }])
  await sql`update patch_plan set input = ${json({ side: 'pattern-back' })}, result = ${json(result)} where id = ${id}`
  expect(await told()).toEqual([
    { place: 'floor B5', side: 'pattern-back', length_mm: 92.5, ply_count: 3, stop_count: 2 },
  ])
})

describe('whatever may change the counts of a mould, or the words that it is found by, raises its tally', () => {
  type Of = {
    mould: string
    area: string
    patch: string
    plan: string
    part: string
    pattern: string
    set: string
  }

  const writes: readonly (readonly [trigger: string, write: (of: Of) => PromiseLike<unknown>])[] = [
    [
      'mould_tally_of_mould',
      ({ mould }) => db().sql`update mould set heat_in_use_c = 99 where id = ${mould}`,
    ],
    ['mould_tally_of_entry', ({ mould }) => insert('log_entry', { ...good.log_entry?.(), mould_id: mould })],
    ['mould_tally_of_area', ({ area }) => db().sql`update face_area set name = 'roof' where id = ${area}`],
    ['mould_tally_of_area', ({ mould }) => insert('face_area', { ...good.face_area?.(), mould_id: mould })],
    ['mould_tally_of_patch', ({ patch }) => db().sql`update patch set title = 'other' where id = ${patch}`],
    [
      'mould_tally_of_patch',
      ({ mould, area }) => insert('patch', { ...good.patch?.(), mould_id: mould, area_id: area }),
    ],
    ['mould_tally_of_plan', ({ plan }) => db().sql`update patch_plan set note = 'other' where id = ${plan}`],
    ['mould_tally_of_plan', ({ patch }) => insert('patch_plan', { ...good.patch_plan?.(), patch_id: patch })],
    ['mould_tally_of_part', ({ part }) => db().sql`update part set name = 'other' where id = ${part}`],
    [
      'mould_tally_of_pattern',
      ({ pattern }) => db().sql`update pattern set name = 'other' where id = ${pattern}`,
    ],
    ['mould_tally_of_set', ({ set }) => db().sql`update mould_set set name = 'other' where id = ${set}`],
  ]

  test.each(writes)('%s', async (_trigger, write) => {
    const [part, pattern, set] = [randomUUID(), randomUUID(), randomUUID()]
    await insert('part', { ...good.part?.(), id: part })
    await insert('pattern', { ...good.pattern?.(), id: pattern })
    await insert('mould_set', { ...good.mould_set?.(), id: set })
    const mould = (await aMould({ partId: part, patternId: pattern, setId: set, pieceNo: 1 })).id
    const other = (await aMould()).id
    const area = (await anArea(mould)).id
    const { patchId: patch, planId: plan } = await aPatch(mould, area, 'sketched')
    await db().sql`update mould_tally set clean = dirty`
    await write({ mould, area, patch, plan, part, pattern, set })
    const stale = await db().sql<
      { id: string }[]
    >`select mould_id as id from mould_tally where dirty <> clean`
    expect(stale.map(({ id }) => id)).toEqual([mould])
    expect(stale.map(({ id }) => id)).not.toContain(other)
  })

  test('a mould has a tally from the beginning', async () => {
    const { id } = await aMould()
    expect(await db().sql`select 1 from mould_tally where mould_id = ${id}`).toHaveLength(1)
  })

  test('every trigger of the migrations is named in these tests', async () => {
    const found = await db().sql<{ name: string }[]>`
      select t.tgname as name from pg_trigger t join pg_class c on c.oid = t.tgrelid join pg_namespace n on n.oid = c.relnamespace
      where n.nspname = 'public' and not t.tgisinternal order by 1`
    const here = [
      'lot_move_belongs',
      'picture_belongs',
      'patch_plan_summary',
      ...writes.map(([name]) => name),
    ]
    expect(found.map(({ name }) => name).sort()).toEqual([...new Set([...here, ...elsewhere])].sort())
  })
})
