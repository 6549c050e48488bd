import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { cellOf } from '#lib/core/geometry/index'
import { readHistory } from '#lib/services/log'
import { addPointIssue } from '#lib/services/moulds'
import { countEntries, listEntries } from '#lib/store/history'
import { ada, aMould, anArea, book, entry, log, write } from './book'

book()

describe('words looked for in a history', () => {
  test('are found with or without accents, whichever side has them', async () => {
    const { id } = await aMould()
    const stained = await log(id, 'note', { note: 'Hülle: Größe geprüft' })
    await log(id, 'note', { note: 'flange wiped' })
    const found = async (find: string) =>
      (await listEntries({ mouldId: id }, { find })).map((each) => each.id)
    for (const find of ['hulle', 'HÜLLE', 'Hu\u0308lle', 'hùlle', 'grosse', 'hulle grosse']) {
      expect(await found(find), find).toEqual([stained])
      expect((await countEntries({ mouldId: id }, { find })).fitting, find).toBe(1)
    }
    expect(await found('hulle flange')).toEqual([])
  })

  test('are found so in the name of the area and of who wrote it', async () => {
    const { id } = await aMould()
    const area = await anArea(id, { name: 'Rückwand' })
    const onArea = await log(id, 'note', { areaId: area.id })
    const [byZoe] = await write(id, [entry(id, 'note')], { ...ada, name: 'Zoë Łukasz' })
    const found = async (find: string) =>
      (await listEntries({ mouldId: id }, { find })).map((each) => each.id)
    expect(await found('ruckwand')).toEqual([onArea])
    expect(await found('RÜCKWAND')).toEqual([onArea])
    expect(await found('zoe lukasz')).toEqual([byZoe])
    expect(await found('zoé')).toEqual([byZoe])
  })

  test('signs of patterns stand for themselves', async () => {
    const { id } = await aMould()
    const written = await log(id, 'note', { note: 'Hülle 50 %, B_4 \\ C' })
    await log(id, 'note', { note: 'Hülle 50, BX4' })
    const found = async (find: string) =>
      (await listEntries({ mouldId: id }, { find })).map((each) => each.id)
    for (const find of ['%', 'b_4', '\\', 'hulle %']) expect(await found(find), find).toEqual([written])
    expect(await found('h%e')).toEqual([])
  })
})

describe('the page of a history that holds an entry', () => {
  test('is the newest lines where it stands among them, else the whole page that it is on', async () => {
    const { id } = await aMould()
    const ids: string[] = []
    for (let n = 0; n < 205; n += 1) {
      const [written] = await write(id, [
        entry(id, n % 2 === 0 ? 'note' : 'pull', n % 2 === 0 ? { note: `no ${n}` } : {}),
      ])
      ids.push(written ?? '')
    }
    const newest = ids.toReversed()
    const page = (holding: string | undefined, more: object = {}) =>
      readHistory(ada, { mouldId: id, limit: 40, ...(holding ? { holding } : {}), ...more })
    const told = ({ entries, above, next }: Awaited<ReturnType<typeof page>>) => [
      entries[0]?.id,
      entries.length,
      above,
      next,
    ]
    expect(told(await page(newest[39]))).toEqual([newest[0], 40, 0, newest[39]])
    expect(told(await page(newest[40]))).toEqual([newest[0], 200, 0, newest[199]])
    expect(told(await page(newest[199]))).toEqual([newest[0], 200, 0, newest[199]])
    expect(told(await page(newest[200]))).toEqual([newest[200], 5, 200, null])
    // Of one kind alone it stands higher up.
    expect((await page(newest[204], { kinds: ['note'] })).above).toBe(0)
    // An entry of another mould, and one that is not there, show the newest.
    const other = await log((await aMould()).id, 'note', { note: 'elsewhere' })
    expect(told(await page(other))).toEqual(told(await page(undefined)))
    expect(told(await page('00000000-0000-4000-8000-000000000999'))).toEqual(told(await page(undefined)))
  })
})

test('a place on a face is named by the grid and the nearest point of today, a changed dowel by another', async () => {
  const { id } = await aMould()
  const area = await anArea(id)
  const told = async (entryId: string) => {
    const history = await readHistory(ada, { mouldId: id })
    return history.entries.find((each) => each.id === entryId)?.place
  }
  const cell = cellOf({ originMm: area.gridOriginMm, cellMm: area.gridCellMm }, [-380, 330])
  const crack = await log(id, 'damage', {
    areaId: area.id,
    data: { what: 'a crack', uMm: -380, vMm: 330 },
  })
  const note = await log(id, 'note', { areaId: area.id, note: 'no place' })
  expect(await told(crack)).toBe(`${area.name} ${cell}`)
  expect(await told(note)).toBeNull()
  const point = (tag: string, uMm: number) => ({
    tag,
    areaName: '',
    kind: 'dowel' as const,
    uMm,
    vMm: 330,
    diameterMm: 8,
    bushDiameterMm: null,
    through: false,
    isDatum: false,
    toleranceMm: null,
    notYetFixed: false,
  })
  const issue = (name: string, points: ReturnType<typeof point>[]) =>
    addPointIssue(ada, { id: randomUUID(), mouldId: id, name, issuedOn: '2024-01-10', note: '', points })
  await issue('First', [point('D01', -379), point('D02', -300)])
  await issue('Second', [point('D01', -340), point('D02', -300)])
  expect(await told(crack)).toBe(`${area.name} ${cell}, 40 mm from D01`)
  const moved = await log(id, 'dowel-changed', {
    data: { tag: 'D01', what: 'set new', uMm: -350, vMm: 330, diameterMm: null },
  })
  expect(await told(crack)).toBe(`${area.name} ${cell}, 30 mm from D01`)
  expect(await told(moved)).toMatch(/, 50 mm from D02$/)
})
