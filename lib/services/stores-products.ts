import * as z from 'zod'
import { inForceOn } from '#lib/core/stores/index'
import { ProductInput } from '#lib/schema/product'
import { Refusal } from '#lib/store/errors'
import {
  hasLots,
  addProduct as insertProduct,
  readProduct as readOne,
  listProducts as readProducts,
  changeProduct as updateProduct,
} from '#lib/store/products'
import { listPrices } from '#lib/store/rates'
import { shopContext, told } from './shop'
import { lotsWithStanding } from './stores-lots'
import { asking, everyone, leads, verb } from './verb'

const rules = {
  product_name_key: { field: 'name', says: 'Another product has this name; names are compared without case' },
}

export const listProducts = verb('products.list', everyone, z.object({}), () => readProducts())

/** A product card with its lots and prices. */
export const readProduct = asking(
  'products.read',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const product = await readOne(id)
    if (!product) throw new Refusal('There is no such product', { status: 404 })
    const { today, shop } = await shopContext()
    const of = { kind: 'product', id } as const
    const [lots, prices] = await Promise.all([lotsWithStanding({ of }, today), listPrices(of)])
    const inUnit = prices.filter(({ unit }) => unit === product.unit)
    return { product, lots, prices, price: inForceOn(inUnit, today), today, currency: shop.currency }
  },
)

export const addProduct = verb('products.add', leads, ProductInput, (actor, input) =>
  told(insertProduct(actor, input), rules),
)

export const changeProduct = verb(
  'products.change',
  leads,
  ProductInput.safeExtend({ version: z.int() }),
  async (actor, { version, ...input }) => {
    const stored = await readOne(input.id)
    if (stored && stored.unit !== input.unit && (await hasLots(input.id))) {
      throw new Refusal('Lots of it are kept already, in the unit that it has', {
        fields: { unit: `Lots are kept in ${stored.unit}: make a new card for another unit` },
      })
    }
    await told(updateProduct(actor, version, input), rules)
  },
)
