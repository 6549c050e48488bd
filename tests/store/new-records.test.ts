import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { addArea, addMould, addReadings, readMouldPage } from '#lib/services/moulds'
import { addPart } from '#lib/services/parts'
import { addPattern } from '#lib/services/patterns'
import { addSet } from '#lib/services/sets'
import { addMaterial, addStack, listMaterials, listStacks } from '#lib/services/stores'
import { db } from '#lib/store/db'
import {
  ada,
  aMould,
  anArea,
  areaInput,
  ben,
  book,
  lam,
  mouldInput,
  pattern,
  refusal,
  splitMould,
  stackId,
  surfaceId,
} from './book'

book()

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
    await addPattern(ada, pattern({ code: 'C1' }))
    await addSet(ada, splitMould({ code: 'C1' }))
    const [material] = await listMaterials(ada, {})
    if (!material) throw new Error('no material')
    const { version: _seen, ...figures } = material
    const tries = [
      () => addPart(ada, { id: one(), code: 'c1', name: 'b', note: '' }),
      () => addPattern(ada, pattern({ code: 'c1' })),
      () => addSet(ada, splitMould({ code: 'c1' })),
      () => addMaterial(ada, { ...figures, id: one(), code: material.code.toLowerCase() }),
      () =>
        addStack(ada, {
          id: one(),
          code: 'm141',
          name: 'b',
          note: '',
          plies: [{ materialId: surfaceId, directionDeg: 0 }],
        }),
    ]
    for (const each of tries) expect((await refusal(each())).fields).toHaveProperty('code')
  })

  test('area names within a mould, and piece numbers within a split mould', async () => {
    const mould = await aMould()
    await anArea(mould.id, { name: 'Floor' })
    expect((await refusal(addArea(ada, areaInput(mould.id, { name: 'floor' })))).fields).toHaveProperty(
      'name',
    )
    await anArea((await aMould()).id, { name: 'floor' })
    const setId = randomUUID()
    await addSet(ada, splitMould({ id: setId, code: 'SET-1' }))
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
