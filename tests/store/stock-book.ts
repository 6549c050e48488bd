import { randomUUID } from 'node:crypto'
import type { ProductInput } from '#lib/schema/product'
import type { NewLot } from '#lib/schema/stock'
import { addLot, countLot, readLot, takeFromLot } from '#lib/services/stores-lots'
import { addProduct } from '#lib/services/stores-products'
import { ada, lam, surfaceId } from './book'

/** Stores of the test shop: rolls of its materials, and an agent with its tins. */

export async function anAgent(changes: Partial<ProductInput> = {}): Promise<ProductInput> {
  const product: ProductInput = {
    id: randomUUID(),
    name: `agent ${randomUUID().slice(0, 8)}`,
    use: 'release',
    unit: 'l',
    coats: 5,
    intervalMin: 15,
    flashMin: null,
    cureMin: null,
    cureC: null,
    potLifeMin: null,
    shelfLifeDays: null,
    openLifeDays: 180,
    storeAt: '',
    heatLimitC: null,
    lowBelow: null,
    cautions: '',
    note: '',
    sourceNote: '',
    retired: false,
    ...changes,
  }
  await addProduct(ada, product)
  return product
}

export function lotInput(changes: Partial<NewLot> = {}): NewLot {
  return {
    id: randomUUID(),
    subjectKind: 'material',
    subjectId: surfaceId,
    unit: 'm2',
    amount: 10,
    rollLengthM: null,
    lot: `R-${randomUUID().slice(0, 8)}`,
    container: 'roll',
    receivedOn: '2024-01-10',
    expiresOn: null,
    openedOn: null,
    place: '',
    note: '',
    ...changes,
  }
}

export async function aLot(changes: Partial<NewLot> = {}): Promise<NewLot> {
  const input = lotInput(changes)
  await addLot(lam, input)
  return input
}

export async function aTin(changes: Partial<NewLot> = {}, card: Partial<ProductInput> = {}): Promise<NewLot> {
  const { id, unit } = await anAgent(card)
  return aLot({ subjectKind: 'product', subjectId: id, unit, amount: 2, container: 'tin', ...changes })
}

export const take = (lot: NewLot, amount: number, changes: Partial<Parameters<typeof takeFromLot>[1]> = {}) =>
  takeFromLot(lam, {
    id: randomUUID(),
    lotId: lot.id,
    unit: lot.unit,
    amount,
    doneOn: '2024-05-10',
    note: '',
    because: '',
    ...changes,
  })

export const count = (lot: NewLot, amount: number, doneOn: string) =>
  countLot(lam, { id: randomUUID(), lotId: lot.id, unit: lot.unit, amount, doneOn, note: '' })

export const lotNow = async (lot: { readonly id: string }) => (await readLot(ada, { id: lot.id })).lot
export const movesOf = async (lot: { readonly id: string }) => (await readLot(ada, { id: lot.id })).moves
