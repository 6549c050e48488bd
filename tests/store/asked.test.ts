import { describe, expect, test } from 'vitest'
import { listBuiltParts, readBuiltPart } from '#lib/services/built-parts'
import { readHistory, readLogEntry } from '#lib/services/log'
import { readMouldById, readMouldPage } from '#lib/services/moulds'
import { readPatch } from '#lib/services/patches'
import { readPatternPage } from '#lib/services/patterns'
import { listPictures, readPicture } from '#lib/services/pictures'
import { listRack } from '#lib/services/rack'
import { findInBook } from '#lib/services/search'
import { readSetPage } from '#lib/services/sets'
import { readMaterial } from '#lib/services/stores'
import { readLot } from '#lib/services/stores-lots'
import { readProduct } from '#lib/services/stores-products'
import { GET as findRoute } from '../../app/api/v1/find/route'
import { GET as rackRoute } from '../../app/api/v1/moulds/route'
import { ada, aMould, book, log, vi } from './book'
import { get, tokens, withTokens } from './calls'

book()
withTokens()

const nul = '\u0000'

describe('a sign that no text holds, in what is looked for', () => {
  test('counts as a blank in every list that is found by words', async () => {
    const mould = await aMould({ name: 'Wheel spat, rear' })
    const noted = await log(mould.id, 'note', { note: 'flange wiped twice' })
    const history = await readHistory(ada, { mouldId: mould.id, find: `flange${nul}twice` })
    expect(history.entries.map(({ id }) => id)).toEqual([noted])
    const rack = await listRack(ada, { find: `${mould.code}${nul}spat` })
    expect(rack.rows.map((row) => row.mould.id)).toEqual([mould.id])
    expect((await listBuiltParts(ada, { find: nul, part: nul, mould: nul })).total).toBe(0)
    expect((await findInBook(vi, { q: nul })).asked).toBe(false)
  })

  test('is no fault in the address of a route', async () => {
    for (const route of [findRoute, rackRoute]) {
      const answer = await route(
        get(`/api/v1/any?q=${encodeURIComponent(nul)}&find=${encodeURIComponent(nul)}`, {
          token: tokens.viewer,
        }),
      )
      expect(answer.status).toBe(200)
    }
  })
})

test.each<readonly [string, () => Promise<unknown>]>([
  ['the code of a mould', () => readMouldPage(ada, { code: nul })],
  ['the code of a pattern', () => readPatternPage(ada, { code: nul })],
  ['the code of a split mould', () => readSetPage(ada, { code: nul })],
  ['a serial', () => readBuiltPart(ada, { serial: nul })],
  ['the id of a mould', () => readMouldById(ada, { id: 'LH-P' })],
  ['the id of a patch', () => readPatch(ada, { id: 'LH-P' })],
  ['the id of an entry', () => readLogEntry(ada, { id: nul })],
  ['the id of a lot', () => readLot(ada, { id: 'LH-P' })],
  ['the id of a material', () => readMaterial(ada, { id: 'LH-P' })],
  ['the id of a product', () => readProduct(ada, { id: 'LH-P' })],
  ['the id of a picture', () => readPicture(ada, { id: 'LH-P' })],
  ['whose pictures', () => listPictures(ada, { on: 'mould', onId: 'LH-P' } as never)],
])('%s that can be nobody’s is told as not there', async (_what, read) => {
  await expect(read()).rejects.toMatchObject({ name: 'Refusal', status: 404 })
})
