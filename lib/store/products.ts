import 'server-only'
import type { StockUnit } from '#lib/core/stores/amount'
import type { ProductUse } from '#lib/core/stores/words'
import type { Actor } from '#lib/schema/actor'
import type { ProductInput } from '#lib/schema/product'
import { db } from './db'
import type { ProductModel } from './generated/models'
import { changeSeen, createOnce } from './once'

/** A product card as it is kept. */
export interface StoredProduct extends ProductInput {
  readonly version: number
}

function toProduct({ retiredAt, use, unit, ...row }: ProductModel): StoredProduct {
  return { ...row, use: use as ProductUse, unit: unit as StockUnit, retired: retiredAt !== null }
}

function productColumns({ id: _id, retired, ...rest }: ProductInput) {
  return { ...rest, retiredAt: retired ? new Date() : null }
}

export async function listProducts(): Promise<StoredProduct[]> {
  const rows = await db().prisma.product.findMany({ orderBy: { name: 'asc' } })
  return rows.map(toProduct)
}

export async function readProduct(id: string): Promise<StoredProduct | null> {
  const row = await db().prisma.product.findUnique({ where: { id } })
  return row && toProduct(row)
}

export const addProduct = (actor: Actor, input: ProductInput) =>
  createOnce(actor, 'product', input.id, input, (tx) =>
    tx.product.create({ data: { id: input.id, ...productColumns(input) } }),
  )

export const changeProduct = (actor: Actor, sawVersion: number, input: ProductInput) =>
  changeSeen(
    actor,
    'product',
    input.id,
    async (tx) => {
      const row = await tx.product.findUnique({ where: { id: input.id } })
      return row && toProduct(row)
    },
    (tx) =>
      tx.product.updateMany({
        where: { id: input.id, version: sawVersion },
        data: { ...productColumns(input), version: { increment: 1 } },
      }),
  )

/** Whether lots of a product are kept: their amounts are in its unit, which then stays. */
export async function hasLots(productId: string): Promise<boolean> {
  return (await db().prisma.stockLot.count({ where: { productId } })) > 0
}
