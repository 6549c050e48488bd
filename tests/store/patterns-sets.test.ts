import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { SeasonInput } from '#lib/schema/season'
import { writePatternEntry } from '#lib/services/log'
import { addReadings, changeMould, readMouldPage, strikeReading } from '#lib/services/moulds'
import { addPattern, changePattern, listPatternLines, readPatternPage } from '#lib/services/patterns'
import { addSeason, changeSeason } from '#lib/services/seasons'
import { addPiece, addSet, changeSet, listSets, readSetPage, takePieceOut } from '#lib/services/sets'
import { readSettings } from '#lib/services/shop'
import { db } from '#lib/store/db'
import { ada, aMould, anArea, ben, book, lam, log, pattern, refusal, splitMould, versionOf } from './book'

book()

const auditOf = async (id: string) =>
  (await db().sql`select act from audit where record_id = ${id} order by id`).map((row) => row.act)

describe('a pattern', () => {
  test('sent twenty times at once: there once', async () => {
    const input = pattern()
    await Promise.all(Array.from({ length: 20 }, () => addPattern(ada, input)))
    expect(await auditOf(input.id)).toEqual(['made'])
    expect((await readPatternPage(lam, { code: input.code.toLowerCase() })).pattern.madeOf).toBe(
      'epoxy board',
    )
  })

  test('is where its last move has put it; the typed place waits until then', async () => {
    const input = pattern({ place: 'shelf 1' })
    await addPattern(ada, input)
    expect((await readPatternPage(ada, input)).pattern).toMatchObject({ place: 'shelf 1', movedTo: null })
    const head = { patternId: input.id, doneAt: null, precision: 'day', note: '', correctsId: null } as const
    const move = (doneOn: string, place: string, sawVersion: number) =>
      writePatternEntry(lam, {
        ...head,
        id: randomUUID(),
        kind: 'moved',
        doneOn,
        sawVersion,
        data: { place },
      })
    await move('2024-05-10', 'oven room', 1)
    await move('2024-03-01', 'outside shop', 2)
    const { pattern: now } = await readPatternPage(ada, input)
    expect(now.movedTo).toEqual({ place: 'oven room', doneOn: '2024-05-10' })
    const line = (await listPatternLines(ada, {})).lines.find(({ pattern: { id } }) => id === input.id)
    expect(line?.last).toMatchObject({ kind: 'moved', doneOn: '2024-05-10' })
  })

  test('two leads edit it: the second is shown what the first wrote', async () => {
    const input = pattern()
    await addPattern(ada, input)
    await changePattern(ada, { ...input, condition: 'edge chipped', version: 1 })
    const refused = await refusal(changePattern(ben, { ...input, condition: 'sound', version: 1 }))
    expect(refused).toMatchObject({ status: 409, current: { version: 2 } })
    expect(refused.current?.values).toMatchObject({ condition: 'edge chipped' })
    expect((await readPatternPage(ada, input)).pattern.condition).toBe('edge chipped')
  })

  test('moulds off it stand with it, with its state then', async () => {
    const input = pattern()
    await addPattern(ada, input)
    await aMould({ patternId: input.id, madeWhen: '2024-05', patternState: 'as first machined' })
    expect((await readPatternPage(ada, input)).pattern.moulds).toMatchObject([
      { madeWhen: '2024-05', patternState: 'as first machined' },
    ])
  })
})

const bolt = {
  kind: 'bolt',
  name: 'split bolt',
  count: 14,
  size: 'M8',
  joins: '1-2',
  place: '',
  note: '',
} as const
const pin = { ...bolt, kind: 'pin', name: 'pin', count: 4, size: '10 h6' } as const

describe('a split mould', () => {
  test('with its hardware in order; sent twice there once; edited whole', async () => {
    const input = splitMould({ hardware: [bolt, pin], massKg: 100 })
    await Promise.all([addSet(ada, input), addSet(ada, input)])
    expect((await readSetPage(ada, input)).set.hardware).toEqual([bolt, pin])
    await changeSet(ada, { ...input, hardware: [pin], version: 1 })
    const refused = await refusal(changeSet(ben, { ...input, hardware: [], version: 1 }))
    expect(refused.current).toMatchObject({ version: 2, values: { hardware: [pin] } })
    expect((await readSetPage(ada, input)).set.hardware).toEqual([pin])
    const [change] = await db().sql`
      select before, after from audit where record_id = ${input.id} and act = 'changed'`
    expect(change).toMatchObject({ before: { hardware: [bolt, pin] }, after: { hardware: [pin] } })
  })

  test('moulds become pieces and leave again; their own record says so', async () => {
    const input = splitMould()
    await addSet(ada, input)
    const [port, starboard] = [await aMould(), await aMould()]
    await addPiece(ada, { setId: input.id, mouldId: port.id, pieceNo: 1, version: 1 })
    expect(
      (await refusal(addPiece(ada, { setId: input.id, mouldId: port.id, pieceNo: 2, version: 1 }))).status,
    ).toBe(409)
    const taken = addPiece(ada, { setId: input.id, mouldId: starboard.id, pieceNo: 1, version: 1 })
    expect((await refusal(taken)).fields).toHaveProperty('pieceNo')
    await addPiece(ada, { setId: input.id, mouldId: starboard.id, pieceNo: 2, version: 1 })
    expect((await readSetPage(ada, input)).set.pieces.map((piece) => piece.code)).toEqual([
      port.code,
      starboard.code,
    ])
    expect((await readMouldPage(ada, port)).mould.set).toMatchObject({ code: input.code, pieces: 2 })
    await takePieceOut(ada, { setId: input.id, mouldId: port.id, version: 2 })
    expect((await readMouldPage(ada, port)).mould).toMatchObject({ set: null, pieceNo: null, version: 3 })
    expect(await auditOf(port.id)).toEqual(['made', 'changed', 'changed'])
  })

  test('a piece that another lead has moved meanwhile is not taken out', async () => {
    const input = splitMould()
    await addSet(ada, input)
    const mould = await aMould({ setId: input.id, pieceNo: 1 })
    await changeMould(ben, { ...mould, pieceNo: 2, version: 1 })
    const refused = await refusal(takePieceOut(ada, { setId: input.id, mouldId: mould.id, version: 1 }))
    expect(refused).toMatchObject({ status: 409, current: { version: 2 } })
  })

  test('stands as its worst piece, and its strip has a stroke for each part', async () => {
    const input = splitMould()
    await addSet(ada, input)
    expect((await readSetPage(ada, input)).standing).toBeNull()
    const port = await aMould({ setId: input.id, pieceNo: 1 })
    const starboard = await aMould({ setId: input.id, pieceNo: 2 })
    expect((await readSetPage(ada, input)).standing?.state).toBe('fit for use')
    for (const serial of ['SP-1', 'SP-2']) {
      await log(port.id, 'pull', { data: { serial } })
      await log(starboard.id, 'pull', { data: { serial, went: serial === 'SP-2' ? 'harder' : 'usual' } })
    }
    await log(starboard.id, 'state', { data: { state: 'under repair', reason: 'cracked rib' } })
    const page = await readSetPage(ada, input)
    expect(page.standing).toMatchObject({
      state: 'under repair',
      reason: `${starboard.code}: cracked rib`,
      also: ['fit for use'],
    })
    expect(page.strokes.pulls.map((pull) => pull.went)).toEqual(['usual', 'harder'])
    const row = (await listSets(ada, {})).find(({ set }) => set.id === input.id)
    expect(row?.standing).toEqual(page.standing)
    expect(await versionOf(starboard.id)).toBe(2)
  })
})

describe('a season', () => {
  const season = (name: string, startsOn: string, endsOn: string) =>
    SeasonInput.parse({ id: randomUUID(), name, startsOn, endsOn })

  test('is entered once and edited in a version; its name is its own', async () => {
    const input = season('2023/24', '2023-09-01', '2024-08-31')
    await addSeason(ada, input)
    await addSeason(ada, input)
    expect(
      (await refusal(addSeason(ada, season('2023/24', '2024-09-01', '2025-08-31')))).fields,
    ).toHaveProperty('name')
    await changeSeason(ada, { ...input, endsOn: '2024-07-31', version: 1 })
    const refused = await refusal(changeSeason(ben, { ...input, version: 1 }))
    expect(refused.current).toMatchObject({
      version: 2,
      values: { endsOn: '2024-07-31', startsOn: '2023-09-01' },
    })
    const { seasons } = await readSettings(lam, {})
    expect(seasons).toEqual([{ ...input, endsOn: '2024-07-31', version: 2 }])
  })

  test('that ends before it starts is no season', () => {
    const read = SeasonInput.safeParse({
      id: randomUUID(),
      name: 'x',
      startsOn: '2024-01-02',
      endsOn: '2024-01-01',
    })
    expect(read.error?.issues[0]).toMatchObject({ path: ['endsOn'] })
  })
})

test('a reading that was struck out stays readable and counts nowhere', async () => {
  const mould = await aMould()
  const area = await anArea(mould.id)
  const [good, wrong] = [randomUUID(), randomUUID()]
  const at = { uMm: 0, vMm: 0 }
  await addReadings(lam, {
    areaId: area.id,
    measuredOn: '2024-05-01',
    readings: [
      { id: good, ...at, thicknessMm: 4.1 },
      { id: wrong, ...at, thicknessMm: 41 },
    ],
  })
  const strike = { id: wrong, because: 'a decimal slipped' }
  await Promise.all([strikeReading(lam, strike), strikeReading(lam, strike)])
  const [shown] = (await readMouldPage(ada, mould)).areas
  expect(shown?.readings.map((reading) => reading.id)).toEqual([good])
  expect(shown?.struckReadings).toMatchObject([
    { id: wrong, thicknessMm: 41, struckByName: lam.name, struckBecause: strike.because },
  ])
  expect(await auditOf(wrong)).toEqual(['struck out'])
  expect((await refusal(strikeReading(ada, { id: wrong, because: 'another reason' }))).message).toMatch(
    'Lam Hands has already struck it out: a decimal slipped',
  )
  expect((await refusal(strikeReading(ada, { id: randomUUID(), because: 'x' }))).status).toBe(404)
})
