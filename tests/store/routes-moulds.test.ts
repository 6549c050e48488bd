import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { EntryAnswer, LogAnswer, MouldAnswer, MouldListAnswer } from '#lib/schema/answers/mould'
import { coatExample, pullExample } from '#lib/web/openapi/examples'
import * as logRoute from '../../app/api/v1/moulds/[code]/log/route'
import * as mouldRoute from '../../app/api/v1/moulds/[code]/route'
import * as mouldsRoute from '../../app/api/v1/moulds/route'
import { aMould, anArea, book, log, logEntryCount, versionOf } from './book'
import { answered, at, get, post, problem, tokens, withTokens } from './calls'
import { aPatch } from './patch-book'

book()
withTokens()

describe('GET moulds', () => {
  test('each with state and reason, place, counts, release, matters', async () => {
    const { id, code } = await aMould()
    await anArea(id)
    await log(id, 'moved', { data: { place: 'oven' } })
    await log(id, 'coat', { doneOn: '2024-05-01', data: { coats: 4 } })
    await log(id, 'pull', { doneOn: '2024-05-02' })
    await log(id, 'damage', { doneOn: '2024-05-03', data: { what: 'a crack' } })
    const { moulds } = await answered(await mouldsRoute.GET(get('/api/v1/moulds')), MouldListAnswer)
    const row = moulds.find((each) => each.code === code)
    expect(row).toMatchObject({
      state: 'held',
      reason: 'a crack',
      place: 'oven',
      version: 2,
      counts: { pulls: 1, pullsNotCleared: 1, lastPullOn: '2024-05-02' },
    })
    expect(
      row?.release.map((target) => [target.name, target.coatsSinceStrip, target.pullsSinceCoat]),
    ).toEqual([
      ['whole face', 4, 1],
      ['floor', 4, 1],
    ])
    expect(row?.matters.map((matter) => matter.severity)).toEqual(['stop', 'look'])
  })

  test('one by its code, in any case, with face, points and patches', async () => {
    const { id, code } = await aMould({ code: 'RÜ-1' })
    const area = await anArea(id)
    await aPatch(id, area.id, 'laid')
    const found = await answered(
      await mouldRoute.GET(get('/'), at(encodeURIComponent(code.toLowerCase()))),
      MouldAnswer,
    )
    expect(found).toMatchObject({ code, state: 'proof pull only', stackCode: 'M141', points: null })
    expect(found.areas.map((each) => each.name)).toEqual(['floor'])
    expect(found.patches.map((patch) => [patch.number, patch.state])).toEqual([[1, 'laid']])
  })

  test.each(['NO-SUCH', '%E0%A4%A', '..%2F..', "' or 1=1 --"])('%s is not there', async (code) => {
    await problem(await mouldRoute.GET(get('/'), at(code)), 404)
    await problem(await logRoute.GET(get('/'), at(code)), 404)
    await problem(
      await logRoute.POST(
        post('/', { id: randomUUID(), kind: 'note', note: 'looked at', doneOn: '2024-05-10' }),
        at(code),
      ),
      404,
    )
  })
})

describe('the log of a mould', () => {
  const send = (code: string, entry: unknown, token = tokens.laminator) =>
    logRoute.POST(post(`/api/v1/moulds/${code}/log`, entry, { token }), at(code))

  test('201 first, then 200 with the same body', async () => {
    const { id: mouldId, code } = await aMould()
    const entry = { ...pullExample, id: randomUUID(), doneAt: '2024-10-21T14:05:00+02:00' }
    const first = await answered(await send(code, entry), EntryAnswer, 201)
    expect(first).toMatchObject({
      kind: 'pull',
      doneOn: '2024-10-21',
      precision: 'minute',
      byName: 'token rig laminator',
      data: { serial: 'LH-P2-041', cureC: 80 },
    })
    expect(Date.parse(first.doneAt ?? '')).toBe(Date.parse('2024-10-21T12:05:00Z'))
    const again = await Promise.all([send(code, entry), send(code, entry)])
    for (const answer of again) expect(await answered(answer, EntryAnswer)).toEqual(first)
    expect(await logEntryCount(mouldId)).toBe(1)
  })

  test('twenty at once: one 201', async () => {
    const { code } = await aMould()
    const entry = { id: randomUUID(), kind: 'note', doneOn: '2024-05-10', note: 'hello' }
    const statuses = (await Promise.all(Array.from({ length: 20 }, () => send(code, entry)))).map(
      (answer) => answer.status,
    )
    expect(statuses.sort()).toEqual([...Array.from({ length: 19 }, () => 200), 201])
  })

  test('409 with what is stored when the content is another', async () => {
    const { id, code } = await aMould()
    await anArea(id)
    const entry = { ...coatExample, id: randomUUID(), doneOn: '2024-10-21' }
    const first = await answered(await send(code, entry), EntryAnswer, 201)
    expect(first).toMatchObject({
      areaName: 'floor',
      precision: 'day',
      data: { lot: null, minutesBetween: null },
    })
    const refused = await problem(await send(code, { ...entry, data: { ...entry.data, coats: 2 } }), 409)
    expect(refused.stored).toMatchObject({ id: entry.id, data: { coats: 1 }, areaName: 'floor' })
  })

  test('a move names the version that it saw; an old one is answered with what is so now', async () => {
    const { id, code } = await aMould()
    const move = (place: string, sawVersion?: number) =>
      send(code, { id: randomUUID(), kind: 'moved', doneOn: '2024-05-10', data: { place }, sawVersion })
    expect((await problem(await move('oven'), 422)).fields).toHaveProperty('sawVersion')
    await answered(await move('oven', 1), EntryAnswer, 201)
    const refused = await problem(await move('rack', 1), 409)
    expect(refused.current).toMatchObject({ version: 2, values: { place: 'oven' } })
    expect(await versionOf(id)).toBe(2)
  })

  test('faults are told by field, and nothing is written', async () => {
    const { id, code } = await aMould()
    await anArea(id)
    const coat = {
      id: randomUUID(),
      kind: 'coat',
      doneOn: '2024-05-10',
      data: { product: 'release', coats: 1 },
    }
    const told = async (changes: object) =>
      (await problem(await send(code, { ...coat, ...changes }), 422)).fields ?? {}
    expect(await told({ data: { product: 'release' } })).toEqual({ 'data.coats': 'Give a whole number' })
    expect((await told({ area: 'roof' })).area).toMatch(/has no area "roof"; there is floor/)
    expect(await told({ area: 'floor', areaId: randomUUID() })).toHaveProperty('area')
    expect(await told({ doneOn: undefined })).toHaveProperty('doneOn')
    expect(await told({ doneOn: '2999-01-01' })).toHaveProperty('doneOn')
    expect(await told({ doneAt: '2024-05-10 10:00' })).toHaveProperty('doneAt')
    expect(await told({ precision: 'minute' })).toHaveProperty('doneAt')
    expect(await told({ kind: 'patch-laid' })).toHaveProperty('kind')
    expect(await told({ id: 'one' })).toHaveProperty('id')
    const check = {
      kind: 'leak-check',
      data: { bagging: 'b', heat: 'cold', pins: 'out', startMbar: 20, endMbar: 10, minutes: 10 },
    }
    expect(await told(check)).toHaveProperty(['data.endMbar'])
    for (const nonsense of [null, 7, 'text', []]) expect((await send(code, nonsense)).status).toBe(422)
    expect(await logEntryCount(id)).toBe(0)
  })

  test("the gate stands here too: open stops refuse a laminator, and a lead's because is logged", async () => {
    const { id, code } = await aMould()
    await log(id, 'damage', { data: { what: 'a crack' } })
    const clear = {
      id: randomUUID(),
      kind: 'cleared',
      doneOn: (await answered(await mouldsRoute.GET(get('/')), MouldListAnswer)).today,
    }
    expect((await problem(await send(code, clear), 422)).detail).toMatch(/held: a crack/)
    const cleared = await answered(
      await send(code, { ...clear, data: { because: 'test' } }, tokens.lead),
      EntryAnswer,
      201,
    )
    expect(cleared.kind === 'cleared' && cleared.data.open).toContain('The mould is held: a crack')
  })

  test('is read newest first, by kind, and bounded', async () => {
    const { id, code } = await aMould()
    for (const doneOn of ['2024-05-01', '2024-05-03', '2024-05-02']) await log(id, 'pull', { doneOn })
    await log(id, 'coat', { doneOn: '2024-05-04' })
    const read = async (query: string) => {
      const { entries } = await answered(
        await logRoute.GET(get(`/api/v1/moulds/${code}/log${query}`), at(code)),
        LogAnswer,
      )
      return entries.map((entry) => `${entry.kind} ${entry.doneOn}`)
    }
    expect(await read('')).toEqual([
      'coat 2024-05-04',
      'pull 2024-05-03',
      'pull 2024-05-02',
      'pull 2024-05-01',
    ])
    expect(await read('?kind=pull&limit=2')).toEqual(['pull 2024-05-03', 'pull 2024-05-02'])
    expect(await read('?kind=coat&kind=strip')).toEqual(['coat 2024-05-04'])
    for (const query of ['?limit=0', '?limit=many', '?limit=', '?kind=pulls']) {
      await problem(await logRoute.GET(get(`/${query}`), at(code)), 422)
    }
  })
})
