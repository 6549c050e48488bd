import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import {
  addLot,
  changeLot,
  closeLot,
  correctMove,
  freezerHours,
  openLots,
  readStockMatters,
  reopenLot,
} from '#lib/services/stores-lots'
import { db } from '#lib/store/db'
import { ada, aMould, ben, book, entry, lam, log, refusal, surfaceId, today, write } from './book'
import { aLot, aTin, count, lotInput, lotNow, movesOf, take } from './stock-book'

book()

describe('receiving', () => {
  test('a roll by its length is its width times that, and twice sent it is stored once', async () => {
    const input = lotInput({ amount: null, rollLengthM: 50 })
    await addLot(lam, input)
    await addLot(lam, input)
    // 50 m of a roll of 1250 mm: 62.5 m2.
    expect(await lotNow(input)).toMatchObject({
      quantity: 62.5,
      remaining: 62.5,
      unit: 'm2',
      subjectCode: 'S200',
    })
  })
  test('the same lot number of the same material is refused at its field, of another it is not', async () => {
    const lot = await aLot({ lot: 'X-77' })
    const refused = await refusal(addLot(lam, lotInput({ lot: ' x-77 ' })))
    expect(refused.fields).toHaveProperty('lot')
    await aTin({ lot: 'X-77' })
    expect((await lotNow(lot)).lot).toBe('X-77')
  })
  test('a tin in another unit than its card, and what has not come yet', async () => {
    const { subjectId } = await aTin()
    const other = lotInput({ subjectKind: 'product', subjectId, unit: 'kg' })
    expect((await refusal(addLot(lam, other))).fields).toHaveProperty('amount')
    expect((await refusal(addLot(lam, lotInput({ receivedOn: '2999-01-01' })))).fields).toHaveProperty(
      'receivedOn',
    )
    expect((await refusal(addLot(lam, lotInput({ subjectId: randomUUID() })))).status).toBe(404)
  })
})

describe('taking', () => {
  test('what is left follows, and a move sent twice counts once', async () => {
    const lot = await aLot()
    const id = randomUUID()
    await take(lot, 2.5, { id })
    await take(lot, 2.5, { id })
    await take(lot, 0.5)
    expect((await lotNow(lot)).remaining).toBe(7)
    expect((await refusal(take(lot, 2.6, { id }))).status).toBe(409)
    expect(await movesOf(lot)).toHaveLength(2)
  })

  test('ten people who take at once: as many as the lot holds are written, the others told', async () => {
    const lot = await aLot({ amount: 10 })
    const sent = await Promise.allSettled(Array.from({ length: 10 }, () => take(lot, 3)))
    expect(sent.filter((each) => each.status === 'fulfilled')).toHaveLength(3)
    const [first] = sent.flatMap((each) => (each.status === 'rejected' ? [each.reason as Error] : []))
    expect(first?.message).toContain('Count the lot')
    expect((await lotNow(lot)).remaining).toBe(1)
  })

  test('more than the book has is refused; after a count it goes', async () => {
    const lot = await aLot({ amount: 1 })
    expect((await refusal(take(lot, 1.2))).fields).toHaveProperty('amount')
    await count(lot, 3, '2024-05-09')
    await take(lot, 1.2)
    expect(await lotNow(lot)).toMatchObject({ remaining: 1.8, countedOn: '2024-05-09' })
  })

  test('a lot past its date, judged by the day of the act: with a because only', async () => {
    const lot = await aLot({ expiresOn: '2024-05-10' })
    await take(lot, 1, { doneOn: '2024-05-10' })
    const refused = await refusal(take(lot, 1, { doneOn: '2024-05-11' }))
    expect(refused.fields).toEqual({ because: 'Give a because' })
    await take(lot, 1, { doneOn: '2024-05-11', because: 'test panel only' })
    expect((await movesOf(lot))[0]?.note).toBe('Because: test panel only.')
  })

  test('a tin is opened by the first taking', async () => {
    const lot = await aTin()
    await take(lot, 0.1, { doneOn: '2024-03-01' })
    await take(lot, 0.1, { doneOn: '2024-04-01' })
    const now = await lotNow(lot)
    expect(now.openedOn).toBe('2024-03-01')
    // 180 days open, from its card: 1 Mar to 28 Aug.
    expect(now.standing).toMatchObject({ state: 'late', goodUntil: { on: '2024-08-28', by: 'open life' } })
  })

  test('in another unit, in the future, from a closed lot', async () => {
    const lot = await aLot()
    expect((await refusal(take(lot, 1, { unit: 'kg' }))).fields).toHaveProperty('amount')
    expect((await refusal(take(lot, 1, { doneOn: '2999-01-01' }))).fields).toHaveProperty('doneOn')
    await closeLot(lam, { lotId: lot.id, version: 1, closedOn: '2024-06-01', closedWhy: 'used up' })
    expect((await refusal(take(lot, 1))).message).toContain('is closed: used up')
  })
})

describe('counting', () => {
  test('what was taken before the count, though written later, is in it already', async () => {
    const lot = await aLot()
    await take(lot, 2, { doneOn: '2024-02-01' })
    await count(lot, 6, '2024-03-01')
    await take(lot, 1, { doneOn: '2024-02-15' })
    expect((await lotNow(lot)).remaining).toBe(6)
    await take(lot, 1, { doneOn: '2024-03-01' })
    expect((await lotNow(lot)).remaining).toBe(5)
  })
})

describe('putting right', () => {
  const strike = (lot: { id: string }, correctsId: string) =>
    correctMove(lam, { id: randomUUID(), lotId: lot.id, correctsId, note: 'typed wrong' })

  test('a struck move no longer counts and stays readable; it is struck once', async () => {
    const lot = await aLot()
    const id = randomUUID()
    await take(lot, 4, { id })
    await strike(lot, id)
    expect((await lotNow(lot)).remaining).toBe(10)
    expect((await movesOf(lot)).map(({ kind, counts }) => [kind, counts])).toEqual(
      expect.arrayContaining([
        ['used', false],
        ['correction', true],
      ]),
    )
    expect((await refusal(strike(lot, id))).status).toBe(409)
  })

  test('not a strike itself, not a move of another lot, not what an entry took', async () => {
    const [lot, other] = [await aLot(), await aTin()]
    const id = randomUUID()
    await take(lot, 1, { id })
    expect((await refusal(strike(other, id))).status).toBe(404)
    await strike(lot, id)
    const correction = (await movesOf(lot)).find((move) => move.kind === 'correction')
    expect((await refusal(strike(lot, correction?.id ?? ''))).message).toContain('write it anew')
    const mould = await aMould()
    await write(mould.id, [entry(mould.id, 'coat', { uses: [{ lotId: other.id, amount: 0.2 }] })])
    const [move] = await movesOf(other)
    expect(move).toMatchObject({ mouldCode: mould.code, entryKind: 'coat', amount: 0.2 })
    expect((await refusal(strike(other, move?.id ?? ''))).message).toContain('put that entry right')
  })

  test('an entry that is put right gives back what it took, and takes what is right', async () => {
    const lot = await aTin()
    const mould = await aMould()
    const wrong = await log(mould.id, 'coat', { uses: [{ lotId: lot.id, amount: 1.9 }] })
    expect((await lotNow(lot)).remaining).toBeCloseTo(0.1, 9)
    await log(mould.id, 'coat', { correctsId: wrong, uses: [{ lotId: lot.id, amount: 0.2 }] })
    expect((await lotNow(lot)).remaining).toBeCloseTo(1.8, 9)
    await log(mould.id, 'correction', {
      correctsId: (await movesOf(lot)).find((move) => move.counts)?.entryId ?? null,
    })
    expect((await lotNow(lot)).remaining).toBe(2)
  })

  test('an entry whose lot does not hold what it says is not written', async () => {
    const lot = await aTin({ amount: 0.1 })
    const mould = await aMould()
    const refused = await refusal(log(mould.id, 'coat', { uses: [{ lotId: lot.id, amount: 0.2 }] }))
    expect(refused.message).toContain("can't be taken")
    const [row] = await db().sql`select count(*)::int as n from log_entry where mould_id = ${mould.id}`
    expect(row?.n).toBe(0)
  })
})

describe('the freezer', () => {
  const out = (lot: { id: string }, changes: Partial<Parameters<typeof freezerHours>[1]>) =>
    freezerHours(lam, {
      id: randomUUID(),
      lotId: lot.id,
      doneOn: '2024-05-10',
      hours: null,
      outAt: null,
      backOn: null,
      backAt: null,
      note: '',
      ...changes,
    })

  test('hours add up, by figure and by the clock, over night as well', async () => {
    const lot = await aLot()
    await out(lot, { hours: 3.5 })
    await out(lot, { outAt: '08:15', backAt: '16:45' })
    await out(lot, { outAt: '20:00', backOn: '2024-05-11', backAt: '06:00' })
    expect((await lotNow(lot)).outHours).toBe(22)
  })

  test('the night of the clock change has an hour less', async () => {
    const lot = await aLot()
    // 31 Mar 2024, Europe/Berlin: the clock goes from 2 to 3.
    await out(lot, { doneOn: '2024-03-30', outAt: '20:00', backOn: '2024-03-31', backAt: '06:00' })
    expect((await lotNow(lot)).outHours).toBe(9)
  })

  test('back before it came out', async () => {
    const lot = await aLot()
    expect((await refusal(out(lot, { outAt: '16:00', backAt: '08:00' }))).fields).toHaveProperty('backAt')
  })

  test('its life gone: 240 h of the material', async () => {
    const lot = await aLot()
    await out(lot, { hours: 239.9 })
    expect((await lotNow(lot)).standing.state).toBe('use first')
    await out(lot, { hours: 0.1 })
    expect((await lotNow(lot)).standing.state).toBe('out life gone')
  })
})

describe('closing', () => {
  test('twice the same is done once; another reason or an older version is told', async () => {
    const lot = await aLot()
    const act = { lotId: lot.id, version: 1, closedOn: '2024-06-01', closedWhy: 'used up' } as const
    await closeLot(lam, act)
    await closeLot(lam, act)
    expect(await lotNow(lot)).toMatchObject({ closedOn: '2024-06-01', closedWhy: 'used up', version: 2 })
    expect((await refusal(closeLot(ben, { ...act, closedWhy: 'thrown away' }))).status).toBe(409)
    await reopenLot(lam, { lotId: lot.id, version: 2 })
    expect((await lotNow(lot)).standing.state).toBe('fit')
    expect(
      (await openLots(ada, { of: { kind: 'material', id: surfaceId }, uses: [] })).map((each) => each.id),
    ).toContain(lot.id)
  })

  test('an edit that saw an older version is shown what stands now', async () => {
    const lot = await aLot()
    const { id, lot: number, container, receivedOn, expiresOn, openedOn, note } = lot
    const edit = { id, lot: number, container, receivedOn, expiresOn, openedOn, note, version: 1 }
    await changeLot(lam, { ...edit, place: 'freezer 2' })
    expect((await refusal(changeLot(ben, { ...edit, place: 'freezer 3' }))).current).toMatchObject({
      version: 2,
      values: { place: 'freezer 2' },
    })
  })
})

test('the Bench is told of what is low, late and soon late', async () => {
  const day = await today()
  const soon = new Date(Date.parse(day) + 5 * 86_400_000).toISOString().slice(0, 10)
  const [late, soonLate] = [await aTin({ expiresOn: '2024-02-01' }), await aTin({ expiresOn: soon })]
  const low = await aTin({}, { lowBelow: 5 })
  const { matters } = await readStockMatters(ada, {})
  const of = (lot: { id: string; subjectId: string }) =>
    matters.filter((each) => each.subjectId === lot.subjectId).map((each) => each.code)
  expect(of(late)).toEqual(['late'])
  expect(of(soonLate)).toEqual(['nearly-late'])
  expect(of(low)).toEqual(['stock-low'])
})

test('moves, prices and rates are never changed or taken out', async () => {
  const lot = await aLot()
  await take(lot, 1)
  const { sql } = db()
  await expect(sql`update lot_move set amount = 0.5 where lot_id = ${lot.id}`).rejects.toThrow(
    'never changed',
  )
  await expect(sql`delete from lot_move where lot_id = ${lot.id}`).rejects.toThrow('never changed')
})
