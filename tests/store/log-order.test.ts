import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { NewLogEntry } from '#lib/schema/log'
import { orderInDay, readHistory, writeEntry } from '#lib/services/log'
import { shopContext } from '#lib/services/shop'
import { db } from '#lib/store/db'
import { appendEntries } from '#lib/store/log'
import { ada, aMould, anArea, book, countsOf, entry, log, refusal, releaseOf, today } from './book'

book()

/** Written without the gate, as history is. */
async function append(entries: readonly NewLogEntry[]): Promise<void> {
  const context = await shopContext()
  for (const each of entries) {
    await appendEntries(ada, [{ entry: each, dayOrder: orderInDay(each, context) }])
  }
}

const order = async (mouldId: string) =>
  (await readHistory(ada, { mouldId, limit: 200 })).entries.map((each) => each.note)

describe('order of entries', () => {
  test('by day, then by time, then by writing; the latest first', async () => {
    const { id } = await aMould()
    await log(id, 'note', { note: 'noon a', doneOn: '2024-05-10' })
    await log(id, 'note', { note: 'noon b', doneOn: '2024-05-10' })
    await log(id, 'note', { note: 'evening', doneOn: '2024-05-10', doneAt: '2024-05-10T20:00:00+02:00' })
    await log(id, 'note', { note: 'morning', doneOn: '2024-05-10', doneAt: '2024-05-10T07:00:00+02:00' })
    await log(id, 'note', { note: 'day before', doneOn: '2024-05-09', doneAt: '2024-05-09T23:59:00+02:00' })
    expect(await order(id)).toEqual(['evening', 'noon b', 'noon a', 'morning', 'day before'])
  })

  test('entries written within one transaction keep their order', async () => {
    const { id } = await aMould()
    const notes = Array.from({ length: 12 }, (_, index) => String(index))
    await appendEntries(
      ada,
      notes.map((note) => ({ entry: entry(id, 'note', { note }), dayOrder: 720 })),
    )
    expect(await order(id)).toEqual([...notes].reverse())
  })

  test('written-at rises under parallel writers', async () => {
    const { id } = await aMould()
    await Promise.all(Array.from({ length: 15 }, () => log(id, 'note')))
    const rows = await db()
      .sql`select count(distinct written_at)::int as moments from log_entry where mould_id = ${id}`
    expect(rows[0]?.moments).toBe(15)
  })

  test('the counts are the same whatever the order of arrival', async () => {
    const at = (hour: number) => ({
      doneOn: '2024-05-10',
      doneAt: `2024-05-10T${String(hour).padStart(2, '0')}:15:00+02:00`,
    })
    const story = (mouldId: string, areaId: string): NewLogEntry[] => [
      entry(mouldId, 'pull', { doneOn: '2024-05-09' }),
      entry(mouldId, 'strip', at(7)),
      entry(mouldId, 'seal', at(8)),
      entry(mouldId, 'coat', { ...at(9), data: { coats: 4, lot: 'A' } }),
      entry(mouldId, 'cleared', at(10)),
      entry(mouldId, 'pull', { ...at(11), data: { went: 'harder' } }),
      entry(mouldId, 'coat', { ...at(12), areaId, data: { coats: 1, lot: 'B' } }),
      entry(mouldId, 'tape-test', { ...at(13), areaId, data: { result: 'grips' } }),
      entry(mouldId, 'damage', at(14)),
      entry(mouldId, 'inspection', at(15)),
      entry(mouldId, 'pull', at(16)),
      entry(mouldId, 'damage', { ...at(17), data: { what: 'a chip' } }),
      entry(mouldId, 'leak-check', at(18)),
    ]
    const stateOf = async (permute: (entries: NewLogEntry[]) => NewLogEntry[]) => {
      const { id } = await aMould()
      const area = await anArea(id)
      await append(permute(story(id, area.id)))
      return JSON.parse(JSON.stringify(await countsOf(id)).replaceAll(area.id, 'area'))
    }
    const expected = await stateOf((entries) => entries)
    expect(expected).toMatchObject({ pulls: 3, pullsNotCleared: 2, lastPullWent: 'usual', clearedOn: null })
    expect(expected.openDamage).toEqual([{ what: 'a chip', areaName: null, doneOn: '2024-05-10' }])
    const orders = fc.shuffledSubarray([...Array(13).keys()], { minLength: 13, maxLength: 13 })
    await fc.assert(
      fc.asyncProperty(orders, async (indexes) => {
        const found = await stateOf((entries) => indexes.map((index) => entries[index] as NewLogEntry))
        expect(found).toEqual(expected)
      }),
      { numRuns: 12 },
    )
  })
})

describe('days and times of the shop (Europe/Berlin)', () => {
  test('a calendar date stays what it is, and comes back as written', async () => {
    const { id } = await aMould()
    await log(id, 'pull', { doneOn: '2024-05-10' })
    expect((await countsOf(id)).lastPullOn).toBe('2024-05-10')
    expect((await readHistory(ada, { mouldId: id, limit: 1 })).entries[0]).toMatchObject({
      doneOn: '2024-05-10',
      doneAt: null,
    })
  })

  test('a moment belongs to the day that it is in the shop', async () => {
    const { id } = await aMould()
    const lateEvening = { doneAt: '2024-05-10T22:30:00Z', precision: 'minute' } as const
    const refused = await refusal(
      writeEntry(ada, entry(id, 'pull', { doneOn: '2024-05-10', ...lateEvening })),
    )
    expect(refused.message).toMatch(/lies on 2024-05-11 in the shop, not on 2024-05-10/)
    expect(refused.fields).toHaveProperty('doneAt')
    await log(id, 'pull', { doneOn: '2024-05-11', ...lateEvening })
  })

  test("the day of a clock change begins and ends at the shop's midnight", async () => {
    const { id } = await aMould()
    // 2024-10-27: at 3:00 the clock goes back to 2:00; the day has 25 hours, until 23:00 UTC.
    await log(id, 'note', { note: 'last minute', doneOn: '2024-10-27', doneAt: '2024-10-27T22:59:00Z' })
    await log(id, 'note', { note: 'first minute', doneOn: '2024-10-27', doneAt: '2024-10-26T22:00:00Z' })
    expect(
      (
        await refusal(
          writeEntry(ada, entry(id, 'note', { doneOn: '2024-10-27', doneAt: '2024-10-27T23:00:00Z' })),
        )
      ).message,
    ).toMatch(/2024-10-28/)
    expect(await order(id)).toEqual(['last minute', 'first minute'])
  })

  test('the hour that comes twice is kept in order: 2:40 summer time before 2:10 winter time', async () => {
    const { id } = await aMould()
    await log(id, 'note', { note: '2:10 again', doneOn: '2024-10-27', doneAt: '2024-10-27T01:10:00Z' })
    await log(id, 'note', { note: '2:40 first', doneOn: '2024-10-27', doneAt: '2024-10-27T00:40:00Z' })
    await log(id, 'note', { note: 'noon', doneOn: '2024-10-27' })
    await log(id, 'note', { note: '11:30', doneOn: '2024-10-27', doneAt: '2024-10-27T10:30:00Z' })
    expect(await order(id)).toEqual(['noon', '11:30', '2:10 again', '2:40 first'])
  })

  test("tomorrow is refused by the shop's day, and so is a later hour of today", async () => {
    const { id } = await aMould()
    const now = await shopContext()
    const tomorrow = new Date(Date.parse(`${now.today}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10)
    const refused = await refusal(writeEntry(ada, entry(id, 'pull', { doneOn: tomorrow })))
    expect(refused.message).toMatch(`${tomorrow} is in the future: today is ${now.today} in the shop`)
    const inAnHour = new Date(Date.parse(now.now) + 3_600_000).toISOString()
    const later = writeEntry(
      ada,
      entry(id, 'pull', { doneOn: now.today, doneAt: inAnHour, precision: 'minute' }),
    )
    expect((await refusal(later)).message).toMatch(/future|lies on/)
  })

  test('a clock that runs a few minutes ahead is borne with', async () => {
    const { id } = await aMould()
    const { now, shop } = await shopContext()
    const soon = new Date(Date.parse(now) + 4 * 60_000)
    const doneOn = soon.toLocaleDateString('en-CA', { timeZone: shop.timeZone })
    if (doneOn === (await today())) await log(id, 'coat', { doneOn, doneAt: soon.toISOString() })
  })

  test.each(['month', 'year', 'before'] as const)('precision "%s" is kept and counts', async (precision) => {
    const { id } = await aMould()
    await log(id, 'pull', { doneOn: '2023-01-01', precision })
    expect((await readHistory(ada, { mouldId: id, kinds: ['pull'], limit: 5 })).entries[0]).toMatchObject({
      precision,
      doneOn: '2023-01-01',
    })
    expect((await countsOf(id)).pulls).toBe(1)
  })
})

describe('putting right', () => {
  test('what is put right no longer counts and stays readable; both name each other', async () => {
    const { id } = await aMould()
    const wrong = await log(id, 'pull', { data: { went: 'stuck' } })
    const right = await log(id, 'pull', { correctsId: wrong, data: { went: 'harder' } })
    const counts = await countsOf(id)
    expect(counts).toMatchObject({ pulls: 1, lastPullWent: 'harder', openDamage: [] })
    const { entries } = await readHistory(ada, { mouldId: id, limit: 10 })
    expect(entries.find((each) => each.id === wrong)).toMatchObject({
      correctedById: right,
      data: { went: 'stuck' },
    })
    expect(entries.find((each) => each.id === right)).toMatchObject({ correctsId: wrong })
  })

  test('struck out: it never happened', async () => {
    const { id } = await aMould()
    await log(id, 'pull')
    const twice = await log(id, 'pull')
    await log(id, 'correction', { correctsId: twice, note: 'typed twice' })
    expect((await countsOf(id)).pulls).toBe(1)
  })

  test('the same entry is put right once; a second time, also at the same moment, is refused', async () => {
    const { id } = await aMould()
    const wrong = await log(id, 'pull')
    const tries = await Promise.allSettled(
      [1, 2, 3].map(() => writeEntry(ada, entry(id, 'correction', { correctsId: wrong }))),
    )
    const refused = tries.filter((each) => each.status === 'rejected')
    expect(refused).toHaveLength(2)
    for (const each of refused) {
      expect(each.reason).toMatchObject({
        status: 409,
        message: expect.stringMatching(/already put this entry right/),
      })
    }
  })

  test('the newer one may be put right in its turn', async () => {
    const { id } = await aMould()
    const first = await log(id, 'coat', { data: { coats: 1 } })
    const second = await log(id, 'coat', { correctsId: first, data: { coats: 2 } })
    await log(id, 'coat', { correctsId: second, data: { coats: 3 } })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ coatsSinceStrip: 3 })
  })

  test('a strike is not struck out, for that would change nothing', async () => {
    const { id } = await aMould()
    const wrong = await log(id, 'pull')
    const strike = await log(id, 'correction', { correctsId: wrong })
    expect((await refusal(writeEntry(ada, entry(id, 'correction', { correctsId: strike })))).message).toMatch(
      /write the entry anew/,
    )
    await log(id, 'pull', { correctsId: strike })
    expect((await countsOf(id)).pulls).toBe(1)
  })

  test('what is put right later that day stands where the wrong entry stood', async () => {
    const { id } = await aMould()
    const strip = await log(id, 'strip', { data: { product: 'wrong name' } })
    await log(id, 'seal')
    await log(id, 'coat', { data: { coats: 4 } })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ sealedSinceStrip: true, coatsSinceStrip: 4 })
    const right = await log(id, 'strip', { correctsId: strip, data: { product: 'right name' } })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ sealedSinceStrip: true, coatsSinceStrip: 4 })
    await log(id, 'strip', { correctsId: right, data: { product: 'right name, again' } })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ sealedSinceStrip: true, coatsSinceStrip: 4 })
  })

  test('the same today, where entries without a time are ordered by the hour of writing', async () => {
    const { id } = await aMould()
    const doneOn = await today()
    const strip = entry(id, 'strip', { doneOn })
    // The strip of this morning; the rest a little later.
    await appendEntries(ada, [{ entry: strip, dayOrder: 0 }])
    await appendEntries(ada, [{ entry: entry(id, 'seal', { doneOn }), dayOrder: 0 }])
    await log(id, 'strip', { doneOn, correctsId: strip.id })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ sealedSinceStrip: true })
  })

  test('put right with another day, it moves there', async () => {
    const { id } = await aMould()
    const strip = await log(id, 'strip', { doneOn: '2024-05-10' })
    await log(id, 'coat', { doneOn: '2024-05-11' })
    await log(id, 'strip', { correctsId: strip, doneOn: '2024-05-12' })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ stripOn: '2024-05-12', coatsSinceStrip: 0 })
  })

  test('of another mould, or of nothing: refused', async () => {
    const [one, other] = [await aMould(), await aMould()]
    const theirs = await log(other.id, 'pull')
    expect(
      (await refusal(writeEntry(ada, entry(one.id, 'correction', { correctsId: theirs })))).message,
    ).toMatch(/another mould/)
    const nothing = entry(one.id, 'correction', { correctsId: entry(one.id, 'note').id })
    expect((await refusal(writeEntry(ada, nothing))).status).toBe(404)
  })
})

test('an area or a patch of another mould is refused', async () => {
  const [one, other] = [await aMould(), await aMould()]
  const area = await anArea(other.id)
  const refused = await refusal(writeEntry(ada, entry(one.id, 'coat', { areaId: area.id })))
  expect(refused.fields).toHaveProperty('areaId')
})

test('an entry of a mould that is not there is refused', async () => {
  expect((await refusal(writeEntry(ada, entry('00000000-0000-4000-8000-00000000ffff', 'pull')))).status).toBe(
    404,
  )
})
