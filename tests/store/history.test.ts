import { describe, expect, test } from 'vitest'
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
