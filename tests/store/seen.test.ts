import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readHistory, writeEntry } from '#lib/services/log'
import { changeArea, changeMould, readMouldPage } from '#lib/services/moulds'
import { addPart, changePart } from '#lib/services/parts'
import { addStack, changeMaterial, changeStack, listMaterials, listStacks } from '#lib/services/stores'
import { db } from '#lib/store/db'
import {
  ada,
  aMould,
  anArea,
  ben,
  book,
  bulkId,
  entry,
  lam,
  log,
  mouldInput,
  refusal,
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
  const { entries: history } = await readHistory(ada, {
    mouldId: mould.id,
    kinds: ['moved', 'state'],
    limit: 10,
  })
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
    await changeMaterial(ada, { ...material, lowBelowM2: 12 })
    expect((await refusal(changeMaterial(ben, { ...material, rollWidthMm: 1000 }))).current).toMatchObject({
      version: material.version + 1,
      values: { lowBelowM2: 12, rollWidthMm: 1250, fibreContent: { kind: 'resin-mass' } },
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
