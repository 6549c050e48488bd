import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, test } from 'vitest'
import { judgement, mouldStanding } from '#lib/core/log/index'
import { writeForSet } from '#lib/services/log-set'
import { addPart } from '#lib/services/parts'
import { benchMoulds, listRack } from '#lib/services/rack'
import { readSettings, saveSettings } from '#lib/services/shop'
import { db } from '#lib/store/db'
import { refreshTally } from '#lib/store/tally'
import { ada, aMould, anArea, book, countsOf, entry, lam, log, today, vi } from './book'
import { aSet } from './log-subjects'
import { aPatch } from './patch-book'

book()

/** The row of one mould as the rack tells it now. */
async function rowOf(code: string) {
  const { rows } = await listRack(ada, { find: code })
  const row = rows.find((each) => each.mould.code === code)
  if (!row) throw new Error(`${code} is not on the rack`)
  return row
}

/** What is kept of a mould, and whether it would be counted anew. */
async function kept(id: string) {
  const [row] = await db().sql`
    select state, stops, looks, pulls, place, dirty <> clean as stale, holds_through as "holdsThrough" from mould_tally where mould_id = ${id}`
  return row
}

describe('the kept counts say what the views say', () => {
  test('after everything that may change them', async () => {
    const { id, code } = await aMould()
    const agree = async () => {
      const counts = await countsOf(id)
      const row = await rowOf(code)
      expect({ ...row.counts, pullsThisSeason: 0 }).toEqual({ ...counts, pullsThisSeason: 0 })
      expect(row.standing).toEqual(mouldStanding(counts))
      expect(await kept(id)).toMatchObject({ state: row.standing.state, pulls: counts.pulls, stale: false })
    }
    await agree()
    const area = await anArea(id)
    await agree()
    await log(id, 'strip', { doneOn: '2024-05-01', areaId: area.id })
    await agree()
    const coat = entry(id, 'coat', { doneOn: '2024-05-02' })
    await log(id, 'coat', coat)
    await agree()
    await log(id, 'pull', { doneOn: '2024-05-03' })
    await log(id, 'moved', { data: { place: 'rack B4' } })
    await agree()
    await log(id, 'damage', { doneOn: '2024-05-04' })
    await agree()
    expect(await kept(id)).toMatchObject({ state: 'held', place: 'rack B4' })
    await log(id, 'correction', { correctsId: coat.id, doneOn: await today() })
    await agree()
    await aPatch(id, area.id, 'on the bench')
    await agree()
    expect((await rowOf(code)).standing.also).toContain('held')
  })

  test('a write while they are being counted is not lost', async () => {
    const { id } = await aMould()
    const { shop } = await readSettings(ada, {})
    const [now, day] = [new Date().toISOString(), await today()]
    let raised: Promise<unknown> = Promise.resolve()
    await refreshTally({
      rulesVersion: shop.version,
      today: day,
      now,
      judge: (counts) => {
        raised = Promise.resolve(
          db().sql`update mould_tally set dirty = dirty + 1 where mould_id = ${id}`.execute(),
        )
        return judgement(counts, shop.rules.upkeep, day, now)
      },
    })
    await raised
    expect(await kept(id)).toMatchObject({ stale: true })
    await listRack(ada, {})
    expect(await kept(id)).toMatchObject({ stale: false })
  })

  test('a mould that somebody else is just counting for the first time, or in an older shape, is on the rack', async () => {
    const { id, code } = await aMould({ owner: 'just being counted' })
    await log(id, 'pull')
    await listRack(ada, {})
    for (const column of ['counts = null', `counts = '{"older": 1}', edition = 0`]) {
      await db().sql.unsafe(`update mould_tally set ${column}, dirty = dirty + 1 where mould_id = '${id}'`)
      await db().sql.begin(async (sql) => {
        await sql`select 1 from mould_tally where mould_id = ${id} for update`
        expect((await rowOf(code)).counts.pulls).toBe(1)
      })
    }
    await listRack(ada, {})
    expect(await kept(id)).toMatchObject({ stale: false, pulls: 1 })
  })

  test('names that change while the pieces of a split mould are pulled never lock anybody up', async () => {
    const part = { id: randomUUID(), code: `PART-${randomUUID().slice(0, 8)}`, name: 'hull', note: '' }
    await addPart(ada, part)
    const { setId, pieces } = await aSet(4, part.id)
    await db().sql`update mould set part_id = ${part.id}, piece_no = 20 - piece_no where set_id = ${setId}`
    const pull = () =>
      writeForSet(lam, {
        id: randomUUID(),
        setId,
        doneOn: '2024-05-10',
        doneAt: null,
        precision: 'day',
        note: '',
        kind: 'pull',
        data: { went: 'usual', serial: null, partFate: 'good', mouldFate: 'unharmed', cureC: null },
      })
    let pulling = true
    const renaming = (async () => {
      for (let time = 0; pulling; time += 1) {
        await db().sql`update part set name = ${`hull ${time}`} where id = ${part.id}`
      }
    })()
    await Promise.all([
      renaming,
      (async () => {
        for (let time = 0; time < 20; time += 1) await pull()
      })().finally(() => {
        pulling = false
      }),
    ])
    for (const { id } of pieces) expect((await countsOf(id)).pulls).toBe(20)
  })

  test('another rule of the shop judges anew', async () => {
    const { id, code } = await aMould()
    await log(id, 'strip', { doneOn: '2024-05-01' })
    await log(id, 'seal', { doneOn: '2024-05-02' })
    await log(id, 'coat', { doneOn: '2024-05-03', data: { coats: 4 } })
    expect((await rowOf(code)).matters.some(({ severity }) => severity === 'stop')).toBe(false)
    const { shop } = await readSettings(ada, {})
    const { isDemo: _demo, ...settings } = shop
    await saveSettings(ada, {
      ...settings,
      rules: { ...shop.rules, upkeep: { ...shop.rules.upkeep, coatsAfterStrip: 6 } },
    })
    await rowOf(code)
    expect((await kept(id))?.stops).toBe(1)
    await saveSettings(ada, { ...settings, version: shop.version + 1 })
    await rowOf(code)
    expect((await kept(id))?.stops).toBe(0)
  })

  test('a leak check that grows old turns into a matter on the day after the last good one', async () => {
    const { id } = await aMould()
    await log(id, 'leak-check', { doneOn: '2024-05-01' })
    const { shop } = await readSettings(ada, {})
    const at = (day: string) =>
      refreshTally({
        rulesVersion: shop.version,
        today: day,
        now: `${day}T12:00:00Z`,
        judge: (counts) => judgement(counts, shop.rules.upkeep, day, `${day}T12:00:00Z`),
      })
    await at('2024-10-01')
    const before = await kept(id)
    // 180 days are the shop's rule: 28 October is the last day of them.
    expect(before).toMatchObject({ holdsThrough: '2024-10-28' })
    await at('2024-10-28')
    expect((await kept(id))?.looks).toBe(before?.looks)
    await at('2024-10-29')
    expect((await kept(id))?.looks).toBe(before?.looks + 1)
  })
})

describe('the rack a page at a time', () => {
  const numbers = [2, 10, 1, 11, 3]
  beforeAll(async () => {
    for (const number of numbers)
      await aMould({ code: `RACK-${number}`, name: 'Hülle hinten', owner: 'the rack test' })
  })
  const codes = async (asked: Parameters<typeof listRack>[1]) =>
    (await listRack(vi, { find: 'the rack test', ...asked })).rows.map(({ mould }) => mould.code)

  test('codes stand in the order that people expect', async () => {
    expect(await codes({})).toEqual(['RACK-1', 'RACK-2', 'RACK-3', 'RACK-10', 'RACK-11'])
  })

  test('pages follow each other without a gap, with how many there are', async () => {
    const pages = await Promise.all([1, 2, 3, 4].map((page) => codes({ size: 2, page })))
    expect(pages).toEqual([['RACK-1', 'RACK-2'], ['RACK-3', 'RACK-10'], ['RACK-11'], []])
    const first = await listRack(vi, { find: 'the rack test', size: 2 })
    expect(first).toMatchObject({ matching: 5, page: 1, pages: 3 })
    expect(first.total).toBeGreaterThan(5)
  })

  test.each([
    ['hulle RACK-1', ['RACK-1', 'RACK-10', 'RACK-11']],
    ['HÜLLE rack-10', ['RACK-10']],
    ['RACK_1', []],
    ['%', []],
    ['\\', []],
    ["' or 1=1 --", []],
  ])('words: %s', async (words, expected) => {
    const { rows } = await listRack(vi, { find: words })
    expect(rows.map(({ mould }) => mould.code)).toEqual(expected)
  })

  test('by state, by what comes next, by pulls', async () => {
    const held = await rowOf('RACK-3')
    await log(held.mould.id, 'damage', { doneOn: '2024-05-04' })
    const pulled = await rowOf('RACK-10')
    await log(pulled.mould.id, 'pull', { doneOn: '2024-05-04' })
    expect((await codes({ sort: 'state' }))[0]).toBe('RACK-3')
    expect((await codes({ sort: 'next' }))[0]).toBe('RACK-3')
    expect((await codes({ sort: 'pulls' }))[0]).toBe('RACK-10')
    expect(await codes({ state: 'held' })).toEqual(['RACK-3'])
  })
})

test('the Bench speaks of moulds with a part in them, and of those with something to settle', async () => {
  const open = await aMould()
  await log(open.id, 'damage', { doneOn: '2024-05-04' })
  const racked = await aMould()
  await log(racked.id, 'damage', { doneOn: '2024-05-04' })
  await log(racked.id, 'state', { data: { state: 'retired', on: true, reason: 'worn' } })
  const bench = await benchMoulds(vi, {})
  const codes = bench.open.map(({ mould }) => mould.code)
  expect(codes).toContain(open.code)
  expect(codes).not.toContain(racked.code)
  expect(bench.openInAll).toBeGreaterThanOrEqual(codes.length)
})
