import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { db } from '#lib/store/db'
import { aMould, anArea, book } from './book'
import { broken, good, ids, insert, moment, rows } from './rows'

/** What is written stays written, whoever writes. */

book()
rows()

describe('what is written stays written', () => {
  test.each([
    'log_entry',
    'audit',
    'creation',
    'locating_table',
    'locating_point',
    'lot_move',
    'price',
    'rate',
  ])('%s is neither changed nor deleted', async (table) => {
    const row = good[table]
    if (row) await insert(table, row())
    const { sql } = db()
    const [before] = await sql`select count(*)::int as rows from ${sql(table)}`
    expect(before?.rows).toBeGreaterThan(0)
    expect(await broken(sql`update ${sql(table)} set id = id`)).toBe(
      `${table} is never changed; write a new record`,
    )
    expect(await broken(sql`delete from ${sql(table)}`)).toBe(`${table} is never changed; write a new record`)
    expect((await sql`select count(*)::int as rows from ${sql(table)}`)[0]).toEqual(before)
  })

  test.each([
    ['input', 'restrict'],
    ['result', ''],
    ['opening', ''],
    ['becauses', ''],
  ])('%s of a signed plan', async (column) => {
    const { sql } = db()
    expect(
      await broken(sql`update patch_plan set ${sql(column)} = '{"other": 1}' where id = ${ids.plan}`),
    ).toBe('patch_plan_signed_stays')
  })

  test.each([
    ['signed_by_name', 'Somebody'],
    ['note', 'other'],
    ['calculation_version', '2'],
    ['signed_at', '2024-01-01T00:00:00Z'],
  ])('%s of a signed plan', async (column, value) => {
    const { sql } = db()
    expect(await broken(sql`update patch_plan set ${sql(column)} = ${value} where id = ${ids.plan}`)).toBe(
      'patch_plan_signed_stays',
    )
  })

  test('a plan is not deleted, nor a job line, and the text of a line stays', async () => {
    const { sql } = db()
    expect(await broken(sql`delete from patch_plan where id = ${ids.plan}`)).toMatch(/put by, never deleted/)
    expect(await broken(sql`delete from job_line where plan_id = ${ids.plan}`)).toBe('job_line_stays')
    expect(await broken(sql`update job_line set detail = 'skip it' where plan_id = ${ids.plan}`)).toBe(
      'job_line_stays',
    )
    await sql`update job_line set tick_note = 'again' where plan_id = ${ids.plan} and position = 1`
  })
})

describe('states of a plan move forward only', () => {
  const states = ['sketched', 'signed', 'on the bench', 'laid', 'proved', 'put by'] as const
  const allowed = new Set([
    'sketched>signed',
    'signed>on the bench',
    'on the bench>laid',
    'laid>proved',
    'sketched>put by',
    'signed>put by',
    'on the bench>put by',
  ])
  const rows = states.flatMap((from) => states.filter((to) => to !== from).map((to) => [from, to] as const))

  test.each(rows)('%s to %s', async (from, to) => {
    const mould = await aMould()
    const area = await anArea(mould.id)
    const [patch] = await db().sql`
      insert into patch ${db().sql({ mould_id: mould.id, area_id: area.id, number: 1, title: 'p' })} returning id`
    // Everything that any state needs, so that only the order of states is judged.
    const full = (state: string) => ({
      state,
      bench_at: moment,
      laid_entry_id: randomUUID(),
      proved_entry_id: randomUUID(),
      put_by_at: state === 'put by' ? moment : null,
    })
    const signed = { signed_at: moment, signed_by_name: 'Ada' }
    const { sql } = db()
    const [plan] = await sql`
      insert into patch_plan ${sql({ ...good.patch_plan?.(), patch_id: patch?.id, ...signed, ...full(from) } as never)} returning id`
    const moved = await broken(sql`update patch_plan set ${sql(full(to))} where id = ${plan?.id as string}`)
    expect(moved).toBe(allowed.has(`${from}>${to}`) ? 'nothing was refused' : 'patch_plan_state_order')
  })
})
