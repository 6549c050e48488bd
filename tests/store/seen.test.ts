import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { listLog, writeEntry } from '#lib/services/log'
import {
  addArea,
  addMould,
  addPart,
  addPattern,
  addReadings,
  addSet,
  changeArea,
  changeMould,
  changePart,
  readMouldPage,
} from '#lib/services/moulds'
import {
  addMaterial,
  addStack,
  changeMaterial,
  changeStack,
  listMaterials,
  listStacks,
} from '#lib/services/stores'
import { db } from '#lib/store/db'
import {
  ada,
  aMould,
  anArea,
  areaInput,
  ben,
  book,
  bulkId,
  entry,
  lam,
  log,
  mouldInput,
  refusal,
  stackId,
  surfaceId,
  versionOf,
} from './book'

book()

test('T47: two people have the same mould open', async () => {
  const folder = 'tests/cases/T47a-concurrent-edits'
  const expected = JSON.parse(readFileSync(`${folder}/expected.json`, 'utf8'))
  const scenario = JSON.parse(readFileSync(`${folder}/scenario.json`, 'utf8'))
  const step = (number: number) => scenario.find((each: { step: number }) => each.step === number)
  // The case's words for a state, in ours: "in use" is fit for use, "in repair" is under repair.
  const ours: Readonly<Record<string, string>> = { 'in use': 'fit for use', 'in repair': 'under repair' }
  const mould = await aMould({ code: 'M-01T47' })
  await log(mould.id, 'moved', { doneOn: '2024-05-01', data: { place: step(1).sees.location } })
  await db().sql`update mould set version = ${step(1).sees.version} where id = ${mould.id}`
  const looks = async () => {
    const page = await readMouldPage(ada, { code: mould.code })
    return { version: page.mould.version, location: page.counts.place, status: page.standing.state }
  }
  const stateNow = async () => {
    const { location, status } = await looks()
    return { location, status }
  }
  const [seenByA, seenByB] = [await looks(), await looks()]
  expect(seenByA).toEqual({ ...step(1).sees, status: ours[step(1).sees.status] })
  const inOurs = (state: { location: string; status: string }) => ({ ...state, status: ours[state.status] })

  await writeEntry(
    ada,
    entry(mould.id, 'moved', { sawVersion: seenByA.version, data: { place: step(3).fields.location } }),
  )
  expect(await stateNow()).toEqual(inOurs(expected.after_step_3))

  const setState = (sawVersion: number) =>
    entry(mould.id, 'state', { sawVersion, data: { state: ours[step(4).fields.status], reason: 'a chip' } })
  const refused = await refusal(writeEntry(ben, setState(seenByB.version)))
  expect(expected.step_4).toBe('conflict, nothing written')
  expect(refused.status).toBe(409)
  expect(refused.message).toMatch(/Somebody else changed M-01T47 meanwhile/)
  expect(refused.current).toEqual({
    version: seenByB.version + 1,
    values: { place: expected.after_step_3.location, states: '' },
  })
  expect(await stateNow()).toEqual(inOurs(expected.after_step_3))

  await writeEntry(ben, setState(refused.current?.version ?? 0))
  expect(await stateNow()).toEqual(inOurs(expected.after_step_5))
  const history = await listLog(ada, { mouldId: mould.id, kinds: ['moved', 'state'], limit: 10 })
  const since = history.filter((each) => each.doneOn > '2024-05-01')
  expect(since).toHaveLength(expected.history_entries)
  expect(new Set(since.map((each) => each.byName)).size).toBe(2)
})

describe('place and state', () => {
  test('of several at once with the same version seen, one is written', async () => {
    const { id } = await aMould()
    const sent = await Promise.allSettled(
      ['A', 'B', 'C', 'D'].map((place) =>
        writeEntry(lam, entry(id, 'moved', { sawVersion: 1, data: { place } })),
      ),
    )
    expect(sent.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    expect(await versionOf(id)).toBe(2)
  })

  test('the refusal tells the states that were set meanwhile', async () => {
    const { id } = await aMould()
    await log(id, 'moved', { data: { place: 'oven' } })
    await log(id, 'state', { data: { state: 'away', reason: 'lent' } })
    const refused = await refusal(
      writeEntry(ada, entry(id, 'moved', { sawVersion: 1, data: { place: 'rack' } })),
    )
    expect(refused.current).toEqual({ version: 3, values: { place: 'oven', states: 'away: lent' } })
  })

  test("other entries don't raise the version: a pull disturbs nobody's form", async () => {
    const { id } = await aMould()
    await log(id, 'pull')
    await log(id, 'damage')
    expect(await versionOf(id)).toBe(1)
  })

  test('striking out a move changes the place, so it raises the version', async () => {
    const { id, code } = await aMould()
    await log(id, 'moved', { data: { place: 'rack A1' } })
    const wrong = await log(id, 'moved', { data: { place: 'the pond' } })
    await log(id, 'correction', { correctsId: wrong })
    expect(await versionOf(id)).toBe(4)
    expect((await readMouldPage(ada, { code })).counts.place).toBe('rack A1')
  })

  test('a state is taken back by an entry that says so', async () => {
    const { id, code } = await aMould()
    await log(id, 'state', { data: { state: 'away', reason: 'lent' } })
    await log(id, 'state', { data: { state: 'away', on: false, reason: 'came back' } })
    expect((await readMouldPage(ada, { code })).standing.state).toBe('fit for use')
  })

  test('an edit of the mould and a move exclude each other too', async () => {
    const mould = await aMould()
    await log(mould.id, 'moved', { data: { place: 'oven' } })
    const refused = await refusal(changeMould(ada, { ...mould, name: 'new name', version: 1 }))
    expect(refused.status).toBe(409)
  })
})

describe('a change of a record that was seen in an older version', () => {
  test('a mould: nothing is written, and the refusal carries all that is stored now', async () => {
    const mould = await aMould()
    await changeMould(ada, { ...mould, owner: 'the university', massKg: 42, version: 1 })
    const refused = await refusal(changeMould(ben, { ...mould, owner: 'the team', version: 1 }))
    expect(refused.status).toBe(409)
    expect(refused.current?.version).toBe(2)
    expect(refused.current?.values).toMatchObject({ ...mould, owner: 'the university', massKg: 42 })
    expect(refused.current?.values).not.toHaveProperty('version')
    expect((await readMouldPage(ada, { code: mould.code })).mould.owner).toBe('the university')
  })

  test('an area, a part, a material, a stack', async () => {
    const mould = await aMould()
    const area = await anArea(mould.id)
    await changeArea(ada, { ...area, gridCellMm: 100, version: 1 })
    expect((await refusal(changeArea(ben, { ...area, gridCellMm: 25, version: 1 }))).current).toMatchObject({
      version: 2,
      values: { gridCellMm: 100, boundary: area.boundary, mouldId: mould.id },
    })

    const part = { id: randomUUID(), code: 'NC', name: 'nose cone', note: '' }
    await addPart(ada, part)
    await changePart(ada, { ...part, name: 'nose', version: 1 })
    expect((await refusal(changePart(ben, { ...part, version: 1 }))).current?.values).toMatchObject({
      name: 'nose',
    })

    const [material] = (await listMaterials(ada, {})).filter((each) => each.id === bulkId)
    if (!material) throw new Error('no material')
    await changeMaterial(ada, { ...material, priceMinorPerM2: 5600 })
    expect((await refusal(changeMaterial(ben, { ...material, rollWidthMm: 1000 }))).current).toMatchObject({
      version: material.version + 1,
      values: { priceMinorPerM2: 5600, rollWidthMm: 1250, fibreContent: { kind: 'resin-mass' } },
    })

    const plies = [{ materialId: surfaceId, directionDeg: 0 }]
    const stack = { id: randomUUID(), code: 'ONE', name: 'one ply', note: '', plies }
    await addStack(ada, stack)
    await changeStack(ada, {
      ...stack,
      plies: [...plies, { materialId: bulkId, directionDeg: 90 }],
      version: 1,
    })
    expect((await refusal(changeStack(ben, { ...stack, name: 'mine', version: 1 }))).current).toMatchObject({
      version: 2,
      values: {
        name: 'one ply',
        plies: [{ materialId: surfaceId }, { materialId: bulkId, directionDeg: 90 }],
      },
    })
    expect((await listStacks(ada, {})).find((each) => each.id === stack.id)?.plies).toHaveLength(2)
  })

  test('at the same moment: one is written, the others refused', async () => {
    const mould = await aMould()
    const sent = await Promise.allSettled(
      ['A', 'B', 'C', 'D', 'E', 'F'].map((owner) => changeMould(ada, { ...mould, owner, version: 1 })),
    )
    expect(sent.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    expect(await versionOf(mould.id)).toBe(2)
  })

  test("what was never saved can't be changed", async () => {
    expect((await refusal(changeMould(ada, { ...mouldInput(), version: 1 }))).status).toBe(404)
  })

  test('the audit has both sides of a change', async () => {
    const mould = await aMould()
    await changeMould(ada, { ...mould, owner: 'the university', version: 1 })
    const rows = await db().sql`
      select act, by_name, before ->> 'owner' as before, after ->> 'owner' as after from audit where record_id = ${mould.id} order by id`
    expect([...rows]).toEqual([
      { act: 'made', by_name: 'Ada Lead', before: null, after: '' },
      { act: 'changed', by_name: 'Ada Lead', before: '', after: 'the university' },
    ])
  })
})

describe('a new record', () => {
  test('sent twice, also twenty times at once: there once, answered alike', async () => {
    const mould = mouldInput()
    const answers = await Promise.all(Array.from({ length: 20 }, () => addMould(ada, mould)))
    expect(answers.filter(Boolean)).toHaveLength(1)
    expect(await addMould(ada, mould)).toBe(false)
    const [row] = await db().sql`select count(*)::int as rows from audit where record_id = ${mould.id}`
    expect(row?.rows).toBe(1)
  })

  test('with other content under the same id: refused, and what was stored first is shown', async () => {
    const mould = await aMould({ name: 'nose, port' })
    const refused = await refusal(addMould(ben, { ...mould, name: 'nose, starboard' }))
    expect(refused.status).toBe(409)
    expect(refused.stored).toMatchObject({ id: mould.id, name: 'nose, port' })
  })

  test('the id of another kind of record is refused', async () => {
    const mould = await aMould()
    const part = { id: mould.id, code: 'P-77', name: 'part', note: '' }
    expect((await refusal(addPart(ada, part))).status).toBe(409)
  })

  test('what was refused may be sent again with the same id once it is right', async () => {
    const taken = await aMould()
    const mould = mouldInput({ code: taken.code })
    expect((await refusal(addMould(ada, mould))).fields).toHaveProperty('code')
    await addMould(ada, { ...mould, code: `${taken.code}-b` })
  })
})

describe('codes', () => {
  test.each(['lh-P2x', ' LH-p2X ', 'LH-P2X'])('LH-P2x is taken for %j', async (code) => {
    await addMould(
      ada,
      mouldInput({ id: '00000000-0000-4000-8000-0000000000aa', code: 'LH-P2x', name: 'hull' }),
    ).catch(() => null)
    const refused = await refusal(addMould(ada, mouldInput({ code: code.trim() })))
    expect(refused.fields.code).toMatch(/has this code; codes are compared without case/)
    expect((await readMouldPage(ada, { code })).mould.name).toBe('hull')
  })

  test('letters of other alphabets are compared without case as well', async () => {
    const mould = await aMould({ code: 'BÜG-Ö1' })
    expect((await readMouldPage(ada, { code: 'büg-ö1' })).mould.id).toBe(mould.id)
    expect((await refusal(addMould(ada, mouldInput({ code: 'büg-ö1' })))).fields).toHaveProperty('code')
  })

  test('an underscore stands for itself only', async () => {
    await aMould({ code: 'AX1' })
    const mould = await aMould({ code: 'A_1' })
    expect((await readMouldPage(ada, { code: 'a_1' })).mould.id).toBe(mould.id)
    expect((await refusal(readMouldPage(ada, { code: 'A%' }))).status).toBe(404)
  })

  test('every kind of record tells a taken code at its field', async () => {
    const one = () => randomUUID()
    await addPart(ada, { id: one(), code: 'C1', name: 'a', note: '' })
    const pattern = { name: 'a', condition: '', place: '', available: true, canBeMadeAgain: true, note: '' }
    await addPattern(ada, { id: one(), code: 'C1', ...pattern })
    await addSet(ada, { id: one(), code: 'C1', name: 'a', note: '' })
    const [material] = await listMaterials(ada, {})
    if (!material) throw new Error('no material')
    const { version: _seen, ...figures } = material
    const tries = [
      addPart(ada, { id: one(), code: 'c1', name: 'b', note: '' }),
      addPattern(ada, { id: one(), code: 'c1', ...pattern }),
      addSet(ada, { id: one(), code: 'c1', name: 'b', note: '' }),
      addMaterial(ada, { ...figures, id: one(), code: material.code.toLowerCase() }),
      addStack(ada, {
        id: one(),
        code: 'm141',
        name: 'b',
        note: '',
        plies: [{ materialId: surfaceId, directionDeg: 0 }],
      }),
    ]
    for (const each of tries) expect((await refusal(each)).fields).toHaveProperty('code')
  })

  test('area names within a mould, and piece numbers within a split mould', async () => {
    const mould = await aMould()
    await anArea(mould.id, { name: 'Floor' })
    expect((await refusal(addArea(ada, areaInput(mould.id, { name: 'floor' })))).fields).toHaveProperty(
      'name',
    )
    await anArea((await aMould()).id, { name: 'floor' })
    const setId = randomUUID()
    await addSet(ada, { id: setId, code: 'SET-1', name: 'split', note: '' })
    await aMould({ setId, pieceNo: 1 })
    expect((await refusal(addMould(ada, mouldInput({ setId, pieceNo: 1 })))).fields).toHaveProperty('pieceNo')
  })
})

test('areas made at once get positions of their own', async () => {
  const { id, code } = await aMould()
  await Promise.all(['a', 'b', 'c', 'd', 'e'].map((name) => anArea(id, { name })))
  const { areas } = await readMouldPage(ada, { code })
  expect(areas.map((area) => area.position)).toEqual([1, 2, 3, 4, 5])
})

describe('a reference to something that is not there is refused in words', () => {
  const nowhere = '00000000-0000-4000-8000-00000000eeee'

  test.each([
    ['partId', () => addMould(ada, mouldInput({ partId: nowhere }))],
    ['stackId', () => addMould(ada, mouldInput({ stackId: nowhere }))],
    ['mouldId', () => addArea(ada, areaInput(nowhere))],
    [
      'materialId',
      () =>
        addStack(ada, {
          id: randomUUID(),
          code: 'GAP',
          name: 'gap',
          note: '',
          plies: [{ materialId: nowhere, directionDeg: 0 }],
        }),
    ],
    [
      'areaId',
      () =>
        addReadings(ada, {
          areaId: nowhere,
          measuredOn: '2024-05-01',
          readings: [{ id: randomUUID(), uMm: 0, vMm: 0, thicknessMm: 4 }],
        }),
    ],
  ])('%s', async (field, work) => {
    expect((await refusal(work())).fields).toHaveProperty(field)
  })
})

test('a reading of tomorrow is refused, and one that was sent before under another list too', async () => {
  const area = await anArea((await aMould()).id)
  const reading = { id: randomUUID(), uMm: 0, vMm: 0, thicknessMm: 4.2 }
  const given = { areaId: area.id, measuredOn: '2024-05-01', readings: [reading] }
  await addReadings(lam, given)
  await addReadings(lam, given)
  const again = { ...given, readings: [{ ...reading, id: randomUUID() }, reading] }
  expect((await refusal(addReadings(lam, again))).fields).toHaveProperty('readings')
  expect((await refusal(addReadings(lam, { ...given, measuredOn: '2999-01-01' }))).fields).toHaveProperty(
    'measuredOn',
  )
})

test('the stack of the sample is as it was written', async () => {
  const stack = (await listStacks(ada, {})).find((each) => each.id === stackId)
  expect(stack?.plies.map((ply) => [ply.material.code, ply.directionDeg])).toEqual([
    ['S200', 0],
    ['B650', 0],
    ['B650', 45],
    ['B650', 45],
    ['B650', 0],
    ['S200', 0],
  ])
})
