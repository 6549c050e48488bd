import { randomUUID } from 'node:crypto'
import type { NewPatternEntry } from '#lib/schema/log'
import type { MouldInput } from '#lib/schema/mould'
import { db } from '#lib/store/db'
import { aMould } from './book'

/** What the tests of the log need beside moulds: patterns, split moulds, lots. */

export async function aPattern(): Promise<string> {
  const id = randomUUID()
  await db().sql`insert into pattern (id, code, name) values (${id}, ${`PT-${id.slice(0, 8)}`}, 'pattern')`
  return id
}

/** A split mould of as many pieces, in the order of their numbers. */
export async function aSet(pieces: number, partId: string | null = null) {
  const setId = randomUUID()
  await db().sql`
    insert into mould_set (id, code, name, part_id) values (${setId}, ${`SET-${setId.slice(0, 8)}`}, 'split', ${partId})`
  const moulds: MouldInput[] = []
  for (let pieceNo = 1; pieceNo <= pieces; pieceNo += 1) moulds.push(await aMould({ setId, pieceNo }))
  return { setId, pieces: moulds }
}

/** A tin of release agent with so many litres. */
export async function aLot(quantity: number): Promise<string> {
  const [productId, id] = [randomUUID(), randomUUID()]
  const { sql } = db()
  await sql`insert into product (id, name, use, unit) values (${productId}, ${`agent ${productId}`}, 'release', 'l')`
  await sql`
    insert into stock_lot (id, product_id, lot, container, quantity, received_on)
    values (${id}, ${productId}, ${`lot ${id.slice(0, 8)}`}, 'tin', ${quantity}, '2024-01-01')`
  return id
}

export async function leftIn(lotId: string): Promise<number> {
  const [row] = await db().sql`select remaining from lot_state where lot_id = ${lotId}`
  return row?.remaining as number
}

type Loose = Partial<Omit<NewPatternEntry, 'kind' | 'data'>>

export function patternEntry(
  patternId: string,
  kind: NewPatternEntry['kind'],
  data: object,
  changes: Loose = {},
): NewPatternEntry {
  return {
    id: randomUUID(),
    patternId,
    doneOn: '2024-05-10',
    doneAt: null,
    precision: 'day',
    correctsId: null,
    note: '',
    sawVersion: null,
    ...changes,
    kind,
    data,
  } as NewPatternEntry
}
