import { randomUUID } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type LogData, mouldStanding } from '#lib/core/log/index'
import { NewLogEntry } from '#lib/schema/log'
import { orderInDay, readHistory, readLogEntry, writeEntry } from '#lib/services/log'
import { openMatters } from '#lib/services/open-matters'
import { shopContext } from '#lib/services/shop'
import { appendEntries, entryHash } from '#lib/store/log'
import { contentHash } from '#lib/store/once'
import { ada, aMould, anArea, book, countsOf, entry, lam, log, refusal } from './book'

book()

/** One of each kind that a person may write, as it is stored. */
const samples: Partial<LogData> = {
  'test-patch': { surface: 'a tile', sealer: null, agent: 'release', result: 'releases' },
  repair: {
    method: 'fill',
    what: 'a chip',
    interim: true,
    untilPulls: 5,
    untilOn: null,
    maxC: 60,
    uMm: 10,
    vMm: 20,
  },
  're-machined': { what: 'the seal land', depthMm: 0.2, by: 'the router' },
  heat: { what: 'post-cure', toC: 120, holdMin: 240, withPart: false },
  pins: { tag: 'D01', insertions: 2 },
  measured: {
    instrument: 'arm',
    temperatureC: 21,
    frame: 'datum',
    points: [{ tag: 'D01', xMm: 1.25, yMm: 2, zMm: null }],
  },
  'before-book': {
    pullsLow: 30,
    pullsBest: 40,
    pullsHigh: 50,
    heatLow: null,
    heatBest: null,
    heatHigh: null,
    what: 'what Ada remembers',
  },
  matter: { what: 'order a bush', who: 'Ada', untilOn: '2024-06-01' },
  'dowel-changed': { tag: 'D01', what: 're-bushed', uMm: null, vMm: null, diameterMm: null },
}

describe('every kind', () => {
  test.each(Object.keys(samples) as (keyof typeof samples)[])('%s is stored as it was sent', async (kind) => {
    const { id } = await aMould()
    const written = await log(id, kind, { data: samples[kind] as Record<string, unknown> })
    expect(await readLogEntry(ada, { id: written })).toMatchObject({ kind, data: samples[kind] })
  })
})

describe('what was before the book', () => {
  test('stays unknown until it is written, and sums up range by range', async () => {
    const { id } = await aMould()
    expect(await countsOf(id)).toMatchObject({ beforeBook: null, heatBeforeBook: null })
    const before = samples['before-book'] as LogData['before-book']
    const first = await log(id, 'before-book', { data: { ...before } })
    expect(await countsOf(id)).toMatchObject({
      beforeBook: { low: 30, best: 40, high: 50 },
      heatBeforeBook: null,
    })
    await log(id, 'before-book', { data: { ...before, heatLow: 1, heatBest: 2, heatHigh: 3 } })
    expect(await countsOf(id)).toMatchObject({
      beforeBook: { low: 60, best: 80, high: 100 },
      heatBeforeBook: { low: 1, best: 2, high: 3 },
    })
    await log(id, 'correction', { correctsId: first })
    expect((await countsOf(id)).beforeBook).toEqual({ low: 30, best: 40, high: 50 })
  })
})

describe('heat', () => {
  const heat = (toC: number, withPart: boolean) => ({
    data: { what: 'cure', toC, holdMin: null, withPart },
  })

  test('cycles by temperature, with the cures that pulls name; the hottest since it was found sound', async () => {
    const { id } = await aMould({ heatInUseC: 140, heatFreeC: 180, heatBondedC: null })
    await log(id, 'pull', { data: { cureC: 120 } })
    await log(id, 'heat', heat(120, true))
    await log(id, 'heat', { doneOn: '2024-05-11', ...heat(175, false) })
    expect((await countsOf(id)).heat).toEqual({
      cycles: [
        { toC: 175, count: 1 },
        { toC: 120, count: 2 },
      ],
      hottestC: 175,
      hottestWithPart: { toC: 120, doneOn: '2024-05-10' },
      hottestFree: { toC: 175, doneOn: '2024-05-11' },
    })
    expect(mouldStanding(await countsOf(id)).state).toBe('fit for use')
  })

  test('over its limit it is held until it was inspected as a whole and found sound', async () => {
    const { id } = await aMould({ heatInUseC: 140, heatFreeC: 180, heatBondedC: null })
    const area = await anArea(id)
    await log(id, 'heat', heat(150, true))
    expect(mouldStanding(await countsOf(id))).toMatchObject({
      state: 'held',
      reason: 'overheated: 150 °C with a part in it on 10 May 2024; limit in use 140 °C',
    })
    await log(id, 'inspection', { doneOn: '2024-05-11', areaId: area.id })
    expect(mouldStanding(await countsOf(id)).state).toBe('held')
    await log(id, 'inspection', { doneOn: '2024-05-12' })
    expect(mouldStanding(await countsOf(id)).state).toBe('fit for use')
    expect((await countsOf(id)).heat.hottestC).toBe(150)
  })
})

test('insertions count for every bush that is named, and start again where a bush was set anew', async () => {
  const { id } = await aMould()
  await log(id, 'pins', { data: { tag: null, insertions: 10 } })
  await log(id, 'pins', { data: { tag: 'D01', insertions: 2 } })
  await log(id, 'pins', { data: { tag: 'D02', insertions: 1 } })
  await log(id, 'dowel-changed', { doneOn: '2024-05-11', data: { ...samples['dowel-changed'], tag: 'd01 ' } })
  await log(id, 'pins', { doneOn: '2024-05-12', data: { tag: null, insertions: 3 } })
  expect((await countsOf(id)).pins).toEqual([
    { tag: null, insertions: 13 },
    { tag: 'D01', insertions: 3 },
    { tag: 'D02', insertions: 14 },
  ])
})

describe('a repair', () => {
  test('is bare until sealed, coated and tested, and counts as the last repair', async () => {
    const { id } = await aMould()
    const area = await anArea(id)
    await log(id, 'leak-check', { doneOn: '2024-05-09' })
    await log(id, 'repair', { areaId: area.id, data: { ...samples.repair } })
    const counts = await countsOf(id)
    expect(counts).toMatchObject({ lastRepairOn: '2024-05-10', leakSinceRepair: false })
    expect(counts.repairs[0]).toMatchObject({
      areaName: 'floor',
      sealedSince: false,
      coatsSince: 0,
      closed: false,
    })
    await log(id, 'seal', { doneOn: '2024-05-11', areaId: area.id })
    await log(id, 'coat', { doneOn: '2024-05-11', data: { coats: 4 } })
    await log(id, 'tape-test', { doneOn: '2024-05-11' })
    await log(id, 'pull', { doneOn: '2024-05-12' })
    expect((await countsOf(id)).repairs[0]).toMatchObject({
      sealedSince: true,
      coatsSince: 4,
      tapeSlipsSince: true,
      pullsSince: 1,
      usualSince: 1,
    })
  })

  test('a pull that damaged the mould holds it, and says so', async () => {
    const { id } = await aMould()
    await log(id, 'pull', { data: { mouldFate: 'damaged' } })
    expect(mouldStanding(await countsOf(id))).toMatchObject({
      state: 'held',
      reason: 'damaged by a pull; inspect first',
    })
  })
})

describe('open matters', () => {
  const word = (entryId: string, changes: object = {}) => ({
    data: { entryId, outcome: 'closed', who: null, untilOn: null, how: '', ...changes },
  })

  test('written, carried on, closed; the last word counts', async () => {
    const { id } = await aMould()
    const matter = await log(id, 'matter', { data: { ...samples.matter } })
    expect((await countsOf(id)).openMatters).toMatchObject([{ entryId: matter, carried: false, who: 'Ada' }])
    await log(id, 'settled', word(matter, { outcome: 'carried', untilOn: '2024-07-01', who: 'Lam' }))
    expect((await countsOf(id)).openMatters).toMatchObject([
      { entryId: matter, carried: true, who: 'Lam', untilOn: '2024-07-01' },
    ])
    const closed = await log(id, 'settled', word(matter))
    expect((await countsOf(id)).openMatters).toEqual([])
    expect((await refusal(writeEntry(ada, entry(id, 'settled', word(matter))))).status).toBe(409)
    await log(id, 'settled', {
      correctsId: closed,
      ...word(matter, { outcome: 'carried', untilOn: '2024-08-01' }),
    })
    expect((await countsOf(id)).openMatters).toMatchObject([{ untilOn: '2024-08-01' }])
  })

  test('damage to be seen to and repairs for the time being are matters too; the most overdue on top', async () => {
    const [one, other] = [await aMould(), await aMould()]
    await log(one.id, 'damage', { data: { weight: 'open matter', what: 'a chip' } })
    const repaired = await log(other.id, 'repair', { data: { ...samples.repair, untilOn: '2024-05-20' } })
    await log(one.id, 'matter', { data: { ...samples.matter, untilOn: '2024-05-15' } })
    const open = await openMatters(lam, { mouldIds: [one.id, other.id] })
    expect(open.map((matter) => [matter.kind, matter.code === one.code])).toEqual([
      ['matter', true],
      ['repair', false],
      ['damage', true],
    ])
    await log(other.id, 'settled', word(repaired))
    expect((await countsOf(other.id)).repairs[0]?.closed).toBe(true)
  })

  test('a matter whose words are put right after it was closed, or carried on, stays so', async () => {
    const { id } = await aMould()
    const [closed, carried] = [
      await log(id, 'matter', { data: { ...samples.matter } }),
      await log(id, 'matter', { data: { ...samples.matter, what: 'order a pin' } }),
    ]
    await log(id, 'settled', word(closed))
    await log(id, 'settled', word(carried, { outcome: 'carried', untilOn: '2024-07-01', who: 'Lam' }))
    await log(id, 'matter', { data: { ...samples.matter, what: 'order two bushes' }, correctsId: closed })
    const anew = await log(id, 'matter', {
      data: { ...samples.matter, what: 'order two pins' },
      correctsId: carried,
    })
    expect((await countsOf(id)).openMatters).toMatchObject([
      { entryId: anew, what: 'order two pins', who: 'Lam', untilOn: '2024-07-01', carried: true },
    ])
  })

  test('a repair for the time being that was closed stays closed when its words are put right', async () => {
    const { id } = await aMould()
    const repaired = await log(id, 'repair', { data: { ...samples.repair } })
    await log(id, 'settled', { doneOn: '2024-05-12', ...word(repaired) })
    await log(id, 'repair', { data: { ...samples.repair, what: 'two chips' }, correctsId: repaired })
    expect((await countsOf(id)).repairs).toMatchObject([{ what: 'two chips', closed: true }])
    expect((await countsOf(id)).openMatters).toEqual([])
  })

  test('the last word on a matter can be put right after the matter was', async () => {
    const { id } = await aMould()
    const matter = await log(id, 'matter', { data: { ...samples.matter } })
    const closed = await log(id, 'settled', word(matter))
    const anew = await log(id, 'matter', {
      data: { ...samples.matter, what: 'order two' },
      correctsId: matter,
    })
    await log(id, 'settled', {
      correctsId: closed,
      ...word(matter, { outcome: 'carried', untilOn: '2024-08-01' }),
    })
    expect((await countsOf(id)).openMatters).toMatchObject([{ entryId: anew, untilOn: '2024-08-01' }])
  })

  test('a matter of another mould, or what is none, is not settled', async () => {
    const [one, other] = [await aMould(), await aMould()]
    const matter = await log(one.id, 'matter', { data: { ...samples.matter } })
    const note = await log(one.id, 'note')
    for (const [mouldId, entryId] of [
      [other.id, matter],
      [one.id, note],
      [one.id, randomUUID()],
    ] as const) {
      expect((await refusal(writeEntry(ada, entry(mouldId, 'settled', word(entryId))))).status).toBe(404)
    }
  })
})

test('a state with its day', async () => {
  const { id } = await aMould()
  await log(id, 'state', { data: { state: 'away', reason: 'lent', untilOn: '2024-06-01' } })
  await log(id, 'state', { data: { state: 'racked', reason: 'summer' } })
  expect((await countsOf(id)).flags.map((flag) => [flag.state, flag.untilOn]).sort()).toEqual([
    ['away', '2024-06-01'],
    ['racked', null],
  ])
})

test('an entry that was first sent before new fields were known keeps its fingerprint', () => {
  const id = randomUUID()
  const {
    uses: _uses,
    groupId: _group,
    ...old
  } = NewLogEntry.parse(
    entry(id, 'state', { sawVersion: 1, data: { state: 'held', on: true, reason: 'a crack' } }),
  )
  const before = contentHash(old)
  const now = (changes: object, data: object = {}) =>
    entryHash(NewLogEntry.parse({ ...old, ...changes, data: { ...old.data, ...data } }))
  expect(now({})).toBe(before)
  expect(now({ uses: [], groupId: null }, { untilOn: null })).toBe(before)
  expect(now({}, { untilOn: '2024-06-01' })).not.toBe(before)
  expect(now({ groupId: id })).not.toBe(before)
  expect(now({ uses: [{ lotId: id, amount: 1 }] })).not.toBe(before)
})

test('counts are the same whatever the order in which entries of the new kinds were written', async () => {
  const told = [
    entry('', 'repair', { doneOn: '2024-05-03', data: { ...samples.repair } }),
    entry('', 'coat', { doneOn: '2024-05-04', data: { coats: 2 } }),
    entry('', 'seal', { doneOn: '2024-05-04' }),
    entry('', 'pull', { doneOn: '2024-05-05', data: { cureC: 80 } }),
    entry('', 'heat', { doneOn: '2024-05-06', data: { ...samples.heat } }),
    entry('', 'pins', { doneOn: '2024-05-07', data: { ...samples.pins } }),
    entry('', 'dowel-changed', { doneOn: '2024-05-08', data: { ...samples['dowel-changed'] } }),
    entry('', 'pins', { doneOn: '2024-05-09', data: { tag: null, insertions: 4 } }),
    entry('', 'before-book', { doneOn: '2024-01-01', data: { ...samples['before-book'] } }),
    entry('', 'matter', { doneOn: '2024-05-10', data: { ...samples.matter } }),
  ]
  const context = await shopContext()
  const countsIn = async (order: readonly number[]) => {
    const { id } = await aMould()
    await appendEntries(
      ada,
      order.map((index) => {
        const each = { ...told[index]!, id: randomUUID(), mouldId: id } as NewLogEntry
        return { entry: each, dayOrder: orderInDay(each, context) }
      }),
    )
    const { repairs, openMatters: open, ...rest } = await countsOf(id)
    return {
      ...rest,
      repairs: repairs.map(({ entryId: _id, ...each }) => each),
      open: open.map(({ entryId: _id, ...each }) => each),
    }
  }
  const straight = await countsIn(told.map((_, index) => index))
  await fc.assert(
    fc.asyncProperty(
      fc.shuffledSubarray(
        told.map((_, index) => index),
        { minLength: told.length },
      ),
      async (order) => {
        expect(await countsIn(order)).toEqual(straight)
      },
    ),
    { numRuns: 12 },
  )
})

describe('a long history', () => {
  test('a page at a time, each entry once, by kind and by words', async () => {
    const { id } = await aMould()
    const context = await shopContext()
    const many = Array.from({ length: 23 }, (_, index) =>
      entry(id, index % 2 === 0 ? 'note' : 'pull', { note: `line ${index}`, doneOn: '2024-05-10' }),
    )
    await appendEntries(
      ada,
      many.map((each) => ({ entry: each, dayOrder: orderInDay(each, context) })),
    )
    const seen: string[] = []
    let olderThan: string | null = null
    do {
      const page = await readHistory(ada, { mouldId: id, limit: 5, ...(olderThan ? { olderThan } : {}) })
      expect(page).toMatchObject({ fitting: 23, total: 23, beginsOn: '2024-05-10' })
      seen.push(...page.entries.map((each) => each.note))
      olderThan = page.next
    } while (olderThan)
    expect(seen).toEqual(many.map((each) => each.note).reverse())
    const found = await readHistory(ada, { mouldId: id, kinds: ['pull'], find: 'LINE 13' })
    expect(found.entries.map((each) => each.note)).toEqual(['line 13'])
    expect(found).toMatchObject({ fitting: 1, total: 23, next: null })
    expect((await readHistory(ada, { mouldId: id, find: '100%' })).fitting).toBe(0)
    expect((await readHistory(ada, { mouldId: id, find: 'ada lead' })).fitting).toBe(23)
  })
})
