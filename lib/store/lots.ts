import 'server-only'
import type { StockUnit } from '#lib/core/stores/amount'
import type { LotFacts } from '#lib/core/stores/lot'
import type { StockSubject } from '#lib/core/stores/matters'
import type { Container } from '#lib/core/stores/words'
import type { Actor } from '#lib/schema/actor'
import type { LotEdit } from '#lib/schema/stock'
import { db, type Sql } from './db'
import { Refusal } from './errors'
import { changeSeen, createOnce, dateColumn, dayOf } from './once'

/** A lot with what its material or product says of it, and what is left by the book. */
export interface StoredLot extends LotFacts {
  readonly id: string
  readonly subjectKind: 'material' | 'product'
  readonly subjectId: string
  /** Code of a material; null for a product. */
  readonly subjectCode: string | null
  readonly subjectName: string
  /** Of a material: surface, bulk; of a product: sealer, release ... */
  readonly subjectUse: string
  readonly container: Container
  readonly place: string
  readonly note: string
  readonly version: number
  /** The day of the last count that what is left rests on. */
  readonly countedOn: string | null
}

function lotColumns(sql: Sql) {
  return sql`
    l.id, l.lot, l.container, l.quantity, l.received_on as "receivedOn", l.expires_on as "expiresOn", l.opened_on as "openedOn",
    l.closed_on as "closedOn", l.closed_why as "closedWhy", l.place, l.note, l.version,
    case when l.material_id is null then 'product' else 'material' end as "subjectKind",
    coalesce(l.material_id, l.product_id) as "subjectId", m.code as "subjectCode", coalesce(m.name, p.name) as "subjectName",
    coalesce(m.role, p.use) as "subjectUse", coalesce(p.unit, 'm2') as unit,
    m.out_life_h as "outLifeH", p.shelf_life_days as "shelfLifeDays", p.open_life_days as "openLifeDays",
    coalesce(m.low_below_m2, p.low_below) as "lowBelow",
    s.remaining::float8 as remaining, s.out_hours::float8 as "outHours", s.counted_on as "countedOn"
    from stock_lot l
    left join material m on m.id = l.material_id
    left join product p on p.id = l.product_id
    join lot_state s on s.lot_id = l.id`
}

/** Lots, the oldest first: open ones, closed ones, or those of one material or product. */
export async function listLots(filter: {
  readonly of?: { readonly kind: 'material' | 'product'; readonly id: string }
  readonly open?: boolean
}): Promise<StoredLot[]> {
  const { sql } = db()
  const { of, open } = filter
  const rows = await sql`
    select ${lotColumns(sql)} where true
    ${of ? (of.kind === 'material' ? sql`and l.material_id = ${of.id}` : sql`and l.product_id = ${of.id}`) : sql``}
    ${open === undefined ? sql`` : open ? sql`and l.closed_on is null` : sql`and l.closed_on is not null`}
    order by l.received_on, l.lot, l.id`
  return rows as unknown as StoredLot[]
}

export async function readLot(id: string, sql: Sql = db().sql): Promise<StoredLot | null> {
  const rows = await sql`select ${lotColumns(sql)} where l.id = ${id}`
  return (rows[0] as unknown as StoredLot | undefined) ?? null
}

/** Holds lots until the end of a transaction and answers them as they then are, in the order asked for. */
export async function holdLots(sql: Sql, ids: readonly string[]): Promise<StoredLot[]> {
  // One order for everybody, so that two who take from the same lots wait for each other and don't lock up.
  await sql`select id from stock_lot where id in ${sql([...ids])} order by id for update`
  const rows = (await sql`select ${lotColumns(sql)} where l.id in ${sql([...ids])}`) as unknown as StoredLot[]
  return ids.map((id) => {
    const lot = rows.find((row) => row.id === id)
    if (!lot) throw new Refusal('That lot is not in the stores; load the page again', { status: 404 })
    return lot
  })
}

/** Every material and product with its open lots. */
export async function stockSubjects(): Promise<StockSubject[]> {
  const { sql } = db()
  const [subjects, lots] = await Promise.all([
    sql`
      select 'material' as kind, id, code || ' ' || name as name, 'm2' as unit, low_below_m2 as "lowBelow", retired_at is not null as retired
      from material
      union all
      select 'product', id, name, unit, low_below, retired_at is not null from product order by name`,
    listLots({ open: true }),
  ])
  const lotsOf = new Map<string, StoredLot[]>()
  for (const lot of lots) lotsOf.set(lot.subjectId, [...(lotsOf.get(lot.subjectId) ?? []), lot])
  return subjects.map((row) => ({
    ...(row as unknown as StockSubject),
    lots: lotsOf.get(row.id as string) ?? [],
  }))
}

/** How many of each the stores have, for the heads of their pages. */
export async function storesCounts(): Promise<{
  readonly lots: number
  readonly closedLots: number
  readonly materials: number
  readonly products: number
  readonly prices: number
  readonly rates: number
  readonly stacks: number
}> {
  const [row] = await db().sql`
    select (select count(*)::int from stock_lot where closed_on is null) as lots,
      (select count(*)::int from stock_lot where closed_on is not null) as "closedLots",
      (select count(*)::int from material) as materials, (select count(*)::int from product) as products,
      (select count(distinct coalesce(material_id, product_id))::int from price) as prices,
      (select count(*)::int from (select distinct lower(operation), basis from rate) r) as rates, (select count(*)::int from stack) as stacks`
  return row as unknown as Awaited<ReturnType<typeof storesCounts>>
}

/** What is stored of a new lot: its quantity worked out, in the unit of its material or product. */
export interface LotToAdd extends Omit<LotEdit, 'version'> {
  readonly subjectKind: 'material' | 'product'
  readonly subjectId: string
  readonly quantity: number
  readonly unit: StockUnit
}

export const addLot = (actor: Actor, lot: LotToAdd) =>
  createOnce(actor, 'stock-lot', lot.id, lot, (tx) => {
    const { subjectKind, subjectId, unit: _unit, receivedOn, expiresOn, openedOn, ...rest } = lot
    return tx.stockLot.create({
      data: {
        ...rest,
        materialId: subjectKind === 'material' ? subjectId : null,
        productId: subjectKind === 'product' ? subjectId : null,
        receivedOn: dateColumn(receivedOn),
        expiresOn: expiresOn === null ? null : dateColumn(expiresOn),
        openedOn: openedOn === null ? null : dateColumn(openedOn),
      },
    })
  })

const dayOrNull = (column: Date | null) => (column === null ? null : dayOf(column))

export const changeLot = (actor: Actor, { version, id, ...lot }: LotEdit) =>
  changeSeen(
    actor,
    'stock-lot',
    id,
    async (tx) => {
      const row = await tx.stockLot.findUnique({ where: { id } })
      return (
        row && {
          id,
          lot: row.lot,
          container: row.container,
          receivedOn: dayOf(row.receivedOn),
          expiresOn: dayOrNull(row.expiresOn),
          openedOn: dayOrNull(row.openedOn),
          place: row.place,
          note: row.note,
          version: row.version,
        }
      )
    },
    (tx) =>
      tx.stockLot.updateMany({
        where: { id, version },
        data: {
          ...lot,
          receivedOn: dateColumn(lot.receivedOn),
          expiresOn: lot.expiresOn === null ? null : dateColumn(lot.expiresOn),
          openedOn: lot.openedOn === null ? null : dateColumn(lot.openedOn),
          version: { increment: 1 },
        },
      }),
  )
