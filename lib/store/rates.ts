import 'server-only'
import type { StockUnit } from '#lib/core/stores/amount'
import type { DatedLine } from '#lib/core/stores/dated'
import type { UsualOperation } from '#lib/core/stores/operations'
import type { Basis } from '#lib/core/stores/words'
import type { Actor } from '#lib/schema/actor'
import type { NewPrice, NewRate } from '#lib/schema/rates'
import { db } from './db'
import { createOnce, dateColumn, dayOf } from './once'

export interface StoredPrice extends DatedLine {
  readonly subjectKind: 'material' | 'product'
  readonly subjectId: string
  readonly minorPerUnit: number
  readonly unit: StockUnit
  readonly currency: string
  readonly sourceNote: string
  readonly byName: string
}

export interface StoredRate extends DatedLine {
  readonly operation: string
  readonly basis: Basis
  readonly hours: number | null
  readonly minorPerBasis: number | null
  readonly currency: string
  readonly sourceNote: string
  readonly byName: string
}

/** Every price of one material or product, or of all; newest first. */
export async function listPrices(
  of: { readonly kind: 'material' | 'product'; readonly id: string } | null,
): Promise<StoredPrice[]> {
  const rows = await db().prisma.price.findMany({
    where: of === null ? {} : of.kind === 'material' ? { materialId: of.id } : { productId: of.id },
    orderBy: [{ fromOn: 'desc' }, { writtenAt: 'desc' }, { id: 'desc' }],
  })
  return rows.map(({ materialId, productId, unit, fromOn, writtenAt, ...row }) => ({
    ...row,
    subjectKind: materialId === null ? 'product' : 'material',
    subjectId: materialId ?? productId ?? '',
    unit: unit as StockUnit,
    fromOn: dayOf(fromOn),
    writtenAt: writtenAt.toISOString(),
  }))
}

export const addPrice = (actor: Actor, { subjectKind, subjectId, fromOn, ...price }: NewPrice) =>
  createOnce(actor, 'price', price.id, { ...price, subjectKind, subjectId, fromOn }, (tx) =>
    tx.price.create({
      data: {
        ...price,
        materialId: subjectKind === 'material' ? subjectId : null,
        productId: subjectKind === 'product' ? subjectId : null,
        fromOn: dateColumn(fromOn),
        byName: actor.name,
      },
    }),
  )

/** Every rate, by operation, newest first. */
export async function listRates(): Promise<StoredRate[]> {
  const rows = await db().prisma.rate.findMany({
    orderBy: [
      { operation: 'asc' },
      { basis: 'asc' },
      { fromOn: 'desc' },
      { writtenAt: 'desc' },
      { id: 'desc' },
    ],
  })
  return rows.map(({ basis, fromOn, writtenAt, ...row }) => ({
    ...row,
    basis: basis as Basis,
    fromOn: dayOf(fromOn),
    writtenAt: writtenAt.toISOString(),
  }))
}

export const addRate = (actor: Actor, { fromOn, ...rate }: NewRate) =>
  createOnce(actor, 'rate', rate.id, { ...rate, fromOn }, (tx) =>
    tx.rate.create({ data: { ...rate, fromOn: dateColumn(fromOn), byName: actor.name } }),
  )

/** Several rates in one act, under one id. */
export const addRates = (
  actor: Actor,
  id: string,
  rates: readonly UsualOperation[],
  shared: { readonly fromOn: string; readonly currency: string; readonly sourceNote: string },
) =>
  createOnce(actor, 'rates', id, shared, (tx) =>
    tx.rate.createMany({
      data: rates.map((rate) => ({
        ...rate,
        ...shared,
        fromOn: dateColumn(shared.fromOn),
        byName: actor.name,
      })),
    }),
  )
