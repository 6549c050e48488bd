import * as z from 'zod'
import { inForceOn, sumByCurrency, usualOperations } from '#lib/core/stores/index'
import { NewPrice, NewRate, UsualRates } from '#lib/schema/rates'
import { Refusal } from '#lib/store/errors'
import { listLots } from '#lib/store/lots'
import { listProducts, readProduct } from '#lib/store/products'
import {
  addRates,
  addPrice as insertPrice,
  addRate as insertRate,
  listPrices,
  listRates,
} from '#lib/store/rates'
import { listMaterials, readMaterial } from '#lib/store/stores'
import { shopContext } from './shop'
import { everyone, leads, verb } from './verb'

/** Money is written in the shop's currency; what was written in another one stays in that. */
async function ownCurrency(currency: string): Promise<void> {
  const { shop } = await shopContext()
  if (currency !== shop.currency) {
    throw new Refusal(`The shop's money is ${shop.currency}; ${currency} can't be written down beside it`, {
      fields: { currency: `The shop counts in ${shop.currency}` },
    })
  }
}

export const addPrice = verb('prices.add', leads, NewPrice, async (actor, price) => {
  await ownCurrency(price.currency)
  const unit =
    price.subjectKind === 'material'
      ? (await readMaterial(price.subjectId)) && 'm2'
      : ((await readProduct(price.subjectId))?.unit ?? null)
  if (unit === null) throw new Refusal('There is no such material or product', { status: 404 })
  if (unit !== price.unit) {
    throw new Refusal(`It is counted in ${unit}; load the page again`, { fields: { unit: `In ${unit}` } })
  }
  await insertPrice(actor, price)
})

/** What everything costs on a day, and what the open lots are worth at it, by currency. */
export const listPricesOn = verb(
  'prices.list',
  everyone,
  z.object({ on: z.iso.date().nullable() }),
  async (_actor, { on }) => {
    const { today, shop } = await shopContext()
    const day = on ?? today
    const [prices, materials, products, lots] = await Promise.all([
      listPrices(null),
      listMaterials(),
      listProducts(),
      listLots({ open: true }),
    ])
    const subjects = [
      ...materials.map(({ id, code, name, retired }) => ({
        kind: 'material' as const,
        id,
        code,
        name,
        unit: 'm2' as const,
        retired,
      })),
      ...products.map(({ id, name, unit, retired }) => ({
        kind: 'product' as const,
        id,
        code: null,
        name,
        unit,
        retired,
      })),
    ]
    const rows = subjects.map((subject) => {
      // A card may have been counted in another unit before it had lots: such a price says nothing of what is kept.
      const own = prices.filter((price) => price.subjectId === subject.id && price.unit === subject.unit)
      const inStock = lots
        .filter((lot) => lot.subjectId === subject.id)
        .reduce((sum, lot) => sum + Math.max(0, lot.remaining), 0)
      const price = inForceOn(own, day)
      return { ...subject, price, times: own.length, inStock }
    })
    const worth = sumByCurrency(
      rows.flatMap(({ price, inStock }) =>
        price === null || inStock === 0
          ? []
          : [{ minor: price.minorPerUnit * inStock, currency: price.currency }],
      ),
    )
    const unpriced = rows.filter((row) => row.price === null && row.inStock > 0).map((row) => row.name)
    return { day, today, currency: shop.currency, rows, worth, unpriced }
  },
)

/** Rates by operation: what is in force on a day, and all that was written. */
export const listRatesOn = verb(
  'rates.list',
  everyone,
  z.object({ on: z.iso.date().nullable() }),
  async (_actor, { on }) => {
    const { today, shop } = await shopContext()
    const day = on ?? today
    const groups = new Map<string, Awaited<ReturnType<typeof listRates>>>()
    for (const rate of await listRates()) {
      const key = `${rate.operation.trim().toLowerCase()} ${rate.basis}`
      groups.set(key, [...(groups.get(key) ?? []), rate])
    }
    const rates = [...groups.values()].map((lines) => ({ lines, inForce: inForceOn(lines, day) }))
    return { day, today, currency: shop.currency, rates }
  },
)

export const addRate = verb('rates.add', leads, NewRate, async (actor, rate) => {
  await ownCurrency(rate.currency)
  await insertRate(actor, rate)
})

/** Writes the usual operations that the shop has no rate for yet, with hours from memory. */
export const addUsualRates = verb(
  'rates.usual',
  leads,
  UsualRates,
  async (actor, { id, fromOn, currency }) => {
    await ownCurrency(currency)
    const known = new Set(
      (await listRates()).map((rate) => `${rate.operation.trim().toLowerCase()} ${rate.basis}`),
    )
    const missing = usualOperations.filter(({ operation, basis }) => !known.has(`${operation} ${basis}`))
    await addRates(actor, id, missing, {
      fromOn,
      currency,
      sourceNote: 'from memory; put right by own timing',
    })
  },
)
