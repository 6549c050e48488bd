import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { readHistory, writeEntry, writePatternEntry } from '#lib/services/log'
import { openMatters } from '#lib/services/open-matters'
import { addPart } from '#lib/services/parts'
import { countLot } from '#lib/services/stores-lots'
import { db } from '#lib/store/db'
import { ada, aMould, book, entry, lam, log, refusal } from './book'
import { aLot, aPattern, leftIn, patternEntry } from './log-subjects'

book()

describe('what an entry takes from the stores', () => {
  test('is taken once, told with the entry, and given back when the entry is put right', async () => {
    const { id } = await aMould()
    const lotId = await aLot(1)
    const coat = entry(id, 'coat', { uses: [{ lotId, amount: 0.2 }] })
    await writeEntry(lam, coat)
    await writeEntry(lam, coat)
    expect(await leftIn(lotId)).toBeCloseTo(0.8, 9)
    const [told] = (await readHistory(ada, { mouldId: id })).entries
    expect(told?.uses).toMatchObject([{ lotId, amount: 0.2, unit: 'l' }])
    const right = await log(id, 'coat', { correctsId: coat.id, uses: [{ lotId, amount: 0.9 }] })
    expect(await leftIn(lotId)).toBeCloseTo(0.1, 9)
    await log(id, 'correction', { correctsId: right })
    expect(await leftIn(lotId)).toBeCloseTo(1, 9)
  })

  test('a tin that only an entry by mistake opened is shut again, else open since the next taking', async () => {
    const { id } = await aMould()
    const [lotId, other] = [await aLot(1), await aLot(1)]
    const opened = async (lot: string) =>
      (await db().sql`select opened_on as "on" from stock_lot where id = ${lot}`)[0]?.on as string | null
    const uses = [{ lotId, amount: 0.1 }]
    const slip = await log(id, 'coat', { uses, doneOn: '2024-05-02' })
    expect(await opened(lotId)).toBe('2024-05-02')
    await log(id, 'coat', {
      uses: [{ lotId: other, amount: 0.1 }],
      doneOn: '2024-05-02',
      correctsId: slip,
    })
    expect(await opened(lotId)).toBeNull()
    expect(await opened(other)).toBe('2024-05-02')
    const again = await log(id, 'coat', { uses, doneOn: '2024-05-03' })
    await log(id, 'coat', { uses, doneOn: '2024-05-06' })
    await log(id, 'correction', { correctsId: again, doneOn: '2024-05-06' })
    expect(await opened(lotId)).toBe('2024-05-06')
  })

  test('more than is left, a closed lot, a lot that is not there: refused, and nothing is written', async () => {
    const { id } = await aMould()
    const [lotId, closed] = [await aLot(0.3), await aLot(5)]
    await db().sql`update stock_lot set closed_on = '2024-05-01', closed_why = 'used up' where id = ${closed}`
    const over = await refusal(writeEntry(lam, entry(id, 'coat', { uses: [{ lotId, amount: 0.5 }] })))
    expect(over.message).toMatch(/0\.3 l/)
    expect(over.fields).toHaveProperty(['uses.0.amount'])
    for (const gone of [closed, randomUUID()]) {
      const uses = [
        { lotId, amount: 0.1 },
        { lotId: gone, amount: 0.1 },
      ]
      await refusal(writeEntry(lam, entry(id, 'coat', { uses })))
    }
    expect(await leftIn(lotId)).toBeCloseTo(0.3, 9)
    expect((await readHistory(ada, { mouldId: id })).total).toBe(0)
  })

  test('counted later, a lot is left as counted when the words of an entry before are put right', async () => {
    const { id } = await aMould()
    const lotId = await aLot(5)
    const counted = (amount: number, doneOn: string) =>
      countLot(lam, { id: randomUUID(), lotId, unit: 'l', amount, doneOn, note: '' })
    const uses = [{ lotId, amount: 3 }]
    const early = await log(id, 'coat', { uses, doneOn: '2024-05-09' })
    await counted(1, '2024-05-10')
    await log(id, 'coat', { uses, doneOn: '2024-05-09', correctsId: early, note: 'a word more' })
    expect(await leftIn(lotId)).toBe(1)
    const sameDay = await log(id, 'coat', { uses: [{ lotId, amount: 0.5 }], doneOn: '2024-05-11' })
    await counted(0.2, '2024-05-11')
    await log(id, 'coat', {
      uses: [{ lotId, amount: 0.5 }],
      doneOn: '2024-05-11',
      correctsId: sameDay,
      note: 'a word more',
    })
    expect(await leftIn(lotId)).toBe(0.2)
  })

  test('of a lot that was closed since, the words of an entry before are put right', async () => {
    const { id } = await aMould()
    const lotId = await aLot(1)
    const uses = [{ lotId, amount: 1 }]
    const last = await log(id, 'coat', { uses })
    await db().sql`update stock_lot set closed_on = '2024-05-20', closed_why = 'used up' where id = ${lotId}`
    await log(id, 'coat', { uses, correctsId: last, note: 'a word more' })
    expect(await leftIn(lotId)).toBe(0)
    await refusal(writeEntry(lam, entry(id, 'coat', { uses: [{ lotId, amount: 0.1 }] })))
  })

  test('two who take the last of it at once: one of them', async () => {
    const [one, other] = [await aMould(), await aMould()]
    const lotId = await aLot(1)
    const tries = await Promise.allSettled(
      [one, other, one, other].map(({ id }) =>
        writeEntry(lam, entry(id, 'coat', { uses: [{ lotId, amount: 0.6 }] })),
      ),
    )
    expect(tries.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    expect(await leftIn(lotId)).toBeCloseTo(0.4, 9)
  })
})

describe('the serial of a part', () => {
  const pull = (serial: string, changes: object = {}) => ({ data: { serial }, ...changes })

  test('makes the part once; a mould gives it once, in any case of letters', async () => {
    const { id } = await aMould()
    await log(id, 'pull', pull('N-12'))
    const refused = await refusal(writeEntry(lam, entry(id, 'pull', pull(' n-12 '))))
    expect(refused.message).toMatch(/the pull of 2024-05-10, written by Ada Lead/)
    expect(await db().sql`select 1 from built_part where lower(serial) = 'n-12'`).toHaveLength(1)
  })

  test('a pull put right may keep its serial or take another', async () => {
    const { id } = await aMould()
    const first = await log(id, 'pull', pull('N-13'))
    const second = await log(id, 'pull', pull('N-13', { correctsId: first, doneOn: '2024-05-11' }))
    await log(id, 'pull', pull('N-14', { correctsId: second }))
    await log(id, 'pull', pull('N-13'))
    const serials = await db()
      .sql`select serial from built_part where serial in ('N-13', 'N-14') order by serial`
    expect(serials.map((row) => row.serial)).toEqual(['N-13', 'N-14'])
  })

  test('of one part is not given by the mould of another one; two moulds of one part may share it', async () => {
    const [one, other] = [randomUUID(), randomUUID()]
    for (const [id, code] of [
      [one, 'HULL-1'],
      [other, 'DECK-1'],
    ] as const) {
      await addPart(ada, { id, code, name: 'part', note: '' })
    }
    const [hull, twin, deck, plain] = [
      await aMould({ partId: one }),
      await aMould({ partId: one }),
      await aMould({ partId: other }),
      await aMould(),
    ]
    const given = await log(hull.id, 'pull', pull('N-20'))
    await log(twin.id, 'pull', pull('N-20'))
    await log(plain.id, 'pull', pull('n-20'))
    const refused = await refusal(writeEntry(lam, entry(deck.id, 'pull', pull('n-20'))))
    expect(refused.message).toMatch(/is a part HULL-1: \S+ gave it on 2024-05-10/)
    expect(refused.fields).toHaveProperty(['data.serial'])
    await log(hull.id, 'correction', { correctsId: given })
    await refusal(writeEntry(lam, entry(deck.id, 'pull', pull('N-20'))))
    await log(deck.id, 'pull', pull('N-21'))
  })

  test('typed on the wrong mould and struck out there, it is a part of the right one', async () => {
    const [wrong, right] = [randomUUID(), randomUUID()]
    await addPart(ada, { id: wrong, code: 'LID-1', name: 'part', note: '' })
    await addPart(ada, { id: right, code: 'KEEL-1', name: 'part', note: '' })
    const [lid, keel] = [await aMould({ partId: wrong }), await aMould({ partId: right })]
    const slip = await log(lid.id, 'pull', pull('N-30'))
    await log(lid.id, 'correction', { correctsId: slip })
    await log(keel.id, 'pull', pull('N-30'))
    expect(await db().sql`select part_id from built_part where serial = 'N-30'`).toEqual([{ part_id: right }])
  })

  test('of four who send the same serial at once, one is stored', async () => {
    const { id } = await aMould()
    const tries = await Promise.allSettled(
      [1, 2, 3, 4].map(() => writeEntry(lam, entry(id, 'pull', pull('N-15')))),
    )
    expect(tries.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
  })
})

describe('the log of a pattern', () => {
  const moved = (patternId: string, sawVersion: number, place = 'rack P2') =>
    patternEntry(patternId, 'moved', { place }, { sawVersion })

  test('is written once, moves it, and raises its version', async () => {
    const id = await aPattern()
    const move = moved(id, 1)
    expect((await writePatternEntry(lam, move)).written).toBe(true)
    expect((await writePatternEntry(lam, move)).written).toBe(false)
    const [row] = await db().sql`
      select p.version, l.place from pattern p join pattern_place l on l.pattern_id = p.id where p.id = ${id}`
    expect(row).toEqual({ version: 2, place: 'rack P2' })
    const late = await refusal(writePatternEntry(ada, moved(id, 1, 'elsewhere')))
    expect(late).toMatchObject({ status: 409, current: { version: 2, values: { place: 'rack P2' } } })
  })

  test('keeps matters of its own, corrected within itself', async () => {
    const [id, other] = [await aPattern(), await aPattern()]
    const matter = patternEntry(id, 'matter', { what: 'check the datum pins', who: 'Ada', untilOn: null })
    await writePatternEntry(lam, matter)
    expect(await openMatters(lam, { patternId: id })).toMatchObject([{ entryId: matter.id, of: 'pattern' }])
    const strike = (patternId: string) => patternEntry(patternId, 'correction', {}, { correctsId: matter.id })
    expect((await refusal(writePatternEntry(lam, strike(other)))).message).toMatch(/another pattern/)
    await writePatternEntry(lam, strike(id))
    expect(await openMatters(lam, { patternId: id })).toEqual([])
    expect((await readHistory(ada, { patternId: id })).total).toBe(2)
  })

  test('a pattern that is not there', async () => {
    expect((await refusal(writePatternEntry(lam, moved(randomUUID(), 1)))).status).toBe(404)
  })
})
