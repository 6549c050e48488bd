import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { usualOperations } from '#lib/core/stores/index'
import { readMaterial } from '#lib/services/stores'
import { changeProduct, readProduct } from '#lib/services/stores-products'
import { addPrice, addRate, addUsualRates, listPricesOn, listRatesOn } from '#lib/services/stores-rates'
import { db } from '#lib/store/db'
import { ada, ben, book, bulkId, refusal, surfaceId } from './book'
import { aLot, anAgent, aTin } from './stock-book'

book()

const price = (minorPerUnit: number, fromOn: string, changes = {}) =>
  addPrice(ada, {
    id: randomUUID(),
    subjectKind: 'material',
    subjectId: surfaceId,
    unit: 'm2',
    currency: 'EUR',
    minorPerUnit,
    fromOn,
    sourceNote: '',
    ...changes,
  })

const on = async (day: string) =>
  (await listPricesOn(ada, { on: day })).rows.find((row) => row.id === surfaceId)?.price?.minorPerUnit

test('the price of a day is the latest that began by then; the same day written anew puts it right', async () => {
  await price(5400, '2024-10-01')
  await price(5800, '2025-09-15')
  await price(61, '2026-03-01')
  await price(6100, '2026-03-01')
  expect(await on('2024-09-30')).toBeUndefined()
  expect(await on('2024-10-01')).toBe(5400)
  expect(await on('2025-09-14')).toBe(5400)
  expect(await on('2025-09-15')).toBe(5800)
  expect(await on('2026-03-01')).toBe(6100)
  expect((await readMaterial(ada, { id: surfaceId })).prices).toHaveLength(4)
})

test('a price sent twice is written once; in another currency or unit it is refused', async () => {
  const id = randomUUID()
  await price(100, '2023-01-01', { id, subjectId: bulkId })
  await price(100, '2023-01-01', { id, subjectId: bulkId })
  expect((await readMaterial(ada, { id: bulkId })).prices).toHaveLength(1)
  expect((await refusal(price(100, '2023-01-01', { currency: 'USD' }))).fields).toHaveProperty('currency')
  expect((await refusal(price(100, '2023-01-01', { unit: 'l' }))).fields).toHaveProperty('unit')
  expect((await refusal(price(100, '2023-01-01', { subjectId: randomUUID() }))).status).toBe(404)
})

test('what the lots are worth: each currency for itself, what has no price is named', async () => {
  const [dear, old] = [await aTin({ amount: 1.5 }), await aTin({ amount: 2 })]
  const unpriced = await aTin()
  await price(333, '2026-01-01', { subjectKind: 'product', subjectId: dear.subjectId, unit: 'l' })
  // A price of the time when the shop counted in another currency.
  await db().sql`
    insert into price (product_id, minor_per_unit, unit, currency, from_on, by_name)
    values (${old.subjectId}, 250, 'l', 'JPY', '2020-01-01', 'Ada')`
  const { worth, unpriced: names } = await listPricesOn(ada, { on: null })
  // 1.5 l at 3.33: 499.5 minor units, rounded half up; two litres at 250 yen.
  expect(worth).toEqual([
    { currency: 'EUR', minor: 500 },
    { currency: 'JPY', minor: 500 },
  ])
  const { product } = await readProduct(ada, { id: unpriced.subjectId })
  expect(names).toContain(product.name)
  await aLot({ amount: 10 })
  expect((await listPricesOn(ada, { on: '2026-03-02' })).worth[0]).toEqual({ currency: 'EUR', minor: 61_500 })
})

test('a price in the unit that a card had before says nothing of what is kept in another', async () => {
  const { id } = await anAgent({ unit: 'l' })
  await price(2000, '2026-01-01', { subjectKind: 'product', subjectId: id, unit: 'l' })
  const { product } = await readProduct(ada, { id })
  await changeProduct(ada, { ...product, unit: 'kg' })
  await aLot({ subjectKind: 'product', subjectId: id, unit: 'kg', amount: 5, container: 'tin' })
  const { rows, unpriced } = await listPricesOn(ada, { on: null })
  expect(rows.find((row) => row.id === id)).toMatchObject({ price: null, inStock: 5, unit: 'kg' })
  expect(unpriced).toContain(product.name)
  expect((await readProduct(ada, { id })).price).toBeNull()
  expect((await readProduct(ada, { id })).prices).toHaveLength(1)
})

test('rates: by operation without case, with hours or money or both, in force from their day', async () => {
  const rate = (changes: object) =>
    addRate(ada, {
      id: randomUUID(),
      operation: 'lay',
      basis: 'ply m2',
      hours: 1.25,
      currency: 'EUR',
      minorPerBasis: null,
      fromOn: '2025-09-01',
      sourceNote: '',
      ...changes,
    })
  await rate({})
  await rate({ operation: 'Lay ', hours: 1.6, fromOn: '2026-09-01' })
  await rate({ operation: 'router', basis: 'hour', hours: null, minorPerBasis: 5500 })
  const lay = async (day: string) =>
    (await listRatesOn(ada, { on: day })).rates.find(({ lines }) =>
      lines.some((line) => line.operation === 'lay'),
    )
  expect((await lay('2025-08-31'))?.inForce).toBeNull()
  expect((await lay('2026-08-31'))?.inForce?.hours).toBe(1.25)
  expect((await lay('2026-09-01'))?.inForce?.hours).toBe(1.6)
  expect((await refusal(rate({ currency: 'GBP' }))).fields).toHaveProperty('currency')

  const usual = { id: randomUUID(), fromOn: '2026-11-01', currency: 'EUR' }
  await addUsualRates(ada, usual)
  const { rates } = await listRatesOn(ada, { on: '2026-11-25' })
  // Those that are known already (lay, router) are left as they are.
  expect(rates).toHaveLength(usualOperations.length)
  expect(rates.find(({ lines }) => lines[0]?.operation === 'router')?.inForce?.minorPerBasis).toBe(5500)
})

test('a card whose lots are kept keeps its unit; a second card of the name is refused; so is an old version', async () => {
  const product = await anAgent()
  expect((await refusal(anAgent({ name: product.name.toUpperCase() }))).fields).toHaveProperty('name')
  await changeProduct(ada, { ...product, unit: 'kg', version: 1 })
  await aLot({ subjectKind: 'product', subjectId: product.id, unit: 'kg', amount: 1, container: 'tin' })
  expect((await refusal(changeProduct(ada, { ...product, unit: 'l', version: 2 }))).fields).toHaveProperty(
    'unit',
  )
  const refused = await refusal(changeProduct(ben, { ...product, unit: 'kg', coats: 3, version: 1 }))
  expect(refused.current).toMatchObject({ version: 2, values: { unit: 'kg', coats: 5 } })
})
