import 'server-only'
import type { PullGrade } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import type { BuiltPartInput } from '#lib/schema/built-part'
import { db, type Sql, type Transaction } from './db'
import { Refusal } from './errors'
import { audit, changeSeen } from './once'

/** A pull that names a part. */
export interface PullOfPart {
  readonly id: string
  readonly mouldId: string
  readonly mouldCode: string
  readonly pieceNo: number | null
  readonly doneOn: string
  readonly byName: string
  readonly went: PullGrade
  readonly partFate: 'good' | 'rework' | 'scrapped'
  readonly mouldFate: 'unharmed' | 'marked' | 'damaged'
  readonly cureC: number | null
  readonly note: string
}

/** A built part in a list. */
export interface BuiltPartRow {
  readonly id: string
  readonly serial: string
  readonly partCode: string | null
  readonly partName: string | null
  readonly cure: string
  readonly whereNow: string
  readonly note: string
  /** By piece number, then code; empty: no pull names it. */
  readonly pulls: readonly PullOfPart[]
}

export interface StoredLot {
  readonly lotId: string | null
  readonly material: string
  readonly lot: string
}

export interface StoredBuiltPart extends BuiltPartRow {
  readonly partId: string | null
  readonly lots: readonly StoredLot[]
  readonly pictures: number
  readonly version: number
}

/** What a list of parts is asked for; all that is given must hold. */
export interface PartFilter {
  readonly partId?: string | undefined
  readonly mouldId?: string | undefined
  readonly lotId?: string | undefined
  /** Off the mould of this entry, later than the entry. */
  readonly sinceEntryId?: string | undefined
  /** Words within the serial. */
  readonly find?: string | undefined
}

const pullsColumn = (sql: Sql) => sql`
  coalesce((select jsonb_agg(jsonb_build_object('id', p.id, 'mouldId', p.mould_id, 'mouldCode', m.code, 'pieceNo', m.piece_no,
      'doneOn', p.done_on, 'byName', p.by_name, 'went', p.data ->> 'went', 'partFate', p.data ->> 'partFate',
      'mouldFate', p.data ->> 'mouldFate', 'cureC', (p.data ->> 'cureC')::float8, 'note', p.note)
      order by m.piece_no nulls last, m.code, p.done_on)
    from part_pull p join mould m on m.id = p.mould_id where p.serial_key = lower(btrim(b.serial))), '[]'::jsonb) as pulls`

/** Built parts by the day on which they came out, latest first; those that no pull names stand last. */
export async function listBuiltParts(
  filter: PartFilter,
  limit: number,
): Promise<{ rows: BuiltPartRow[]; total: number }> {
  const { sql } = db()
  const like = filter.find
    ? `%${filter.find
        .trim()
        .toLowerCase()
        .replace(/[\\%_]/g, '\\$&')}%`
    : null
  const conditions = sql`
    ${filter.partId ? sql`b.part_id = ${filter.partId}` : sql`true`}
    and ${like === null ? sql`true` : sql`lower(b.serial) like ${like}`}
    and ${
      filter.mouldId
        ? sql`lower(btrim(b.serial)) in (select serial_key from part_pull where mould_id = ${filter.mouldId})`
        : sql`true`
    }
    and ${
      filter.lotId
        ? sql`exists (select 1 from built_part_lot l where l.built_part_id = b.id and l.lot_id = ${filter.lotId})`
        : sql`true`
    }
    and ${
      filter.sinceEntryId
        ? sql`lower(btrim(b.serial)) in (select p.serial_key from part_pull p join effective_entry e on e.mould_id = p.mould_id
            where e.id = ${filter.sinceEntryId}
              and (p.done_on, p.day_order, p.written_at, p.id) > (e.done_on, e.day_order, e.written_at, e.id))`
        : sql`true`
    }`
  const rows = await sql<(BuiltPartRow & { total: number })[]>`
    with chosen as (
      select b.*, count(*) over ()::int as total, row_number() over (order by p.done_on desc nulls last, b.serial desc) as place
      from built_part b
      left join lateral (select max(l.done_on) as done_on from part_pull l where l.serial_key = lower(btrim(b.serial))) p on true
      where ${conditions}
      order by p.done_on desc nulls last, b.serial desc limit ${limit})
    select b.id, b.serial, b.cure, b.where_now as "whereNow", b.note, a.code as "partCode", a.name as "partName", b.total,
      ${pullsColumn(sql)}
    from chosen b left join part a on a.id = b.part_id order by b.place`
  return { rows: rows.map(({ total: _total, ...row }) => row), total: rows[0]?.total ?? 0 }
}

/** By its serial, compared without case or outer blanks. */
export async function readBuiltPart(serial: string): Promise<StoredBuiltPart | null> {
  const { sql } = db()
  const [found] = await sql<(BuiltPartRow & { partId: string | null; version: number; pictures: number })[]>`
    select b.id, b.serial, b.part_id as "partId", b.cure, b.where_now as "whereNow", b.note, b.version,
      a.code as "partCode", a.name as "partName",
      (select count(*)::int from picture x where x.built_part_id = b.id) as pictures, ${pullsColumn(sql)}
    from built_part b left join part a on a.id = b.part_id
    where lower(btrim(b.serial)) = lower(btrim(${serial}))`
  if (!found) return null
  return { ...found, lots: await lotsOf(found.id) }
}

/** A lot that Stores knows is named as Stores names it. */
async function lotsOf(builtPartId: string): Promise<StoredLot[]> {
  return db().sql<StoredLot[]>`
    select lot_id as "lotId", material, lot from built_part_lot where built_part_id = ${builtPartId} order by position`
}

async function lotRows(tx: Transaction, { id, lots }: BuiltPartInput) {
  const known = await tx.stockLot.findMany({
    where: { id: { in: lots.flatMap((row) => (row.lotId === null ? [] : [row.lotId])) } },
    include: { material: { select: { code: true } }, product: { select: { name: true } } },
  })
  return lots.map((row, index) => {
    const stock = known.find((lot) => lot.id === row.lotId)
    if (row.lotId !== null && !stock) {
      throw new Refusal('A lot is not in Stores any more; load the page again and choose anew', {
        fields: { [`lots.${index}.lotId`]: 'Not in Stores' },
      })
    }
    const named = stock
      ? { material: stock.material?.code ?? stock.product?.name ?? '', lot: stock.lot }
      : { material: row.material, lot: row.lot }
    return { builtPartId: id, position: index + 1, lotId: row.lotId, ...named }
  })
}

async function withLots(tx: Transaction, id: string) {
  const row = await tx.builtPart.findUnique({
    where: { id },
    include: { lots: { orderBy: { position: 'asc' }, select: { lotId: true, material: true, lot: true } } },
  })
  return row && { ...row, createdAt: row.createdAt.toISOString() }
}

export const changeBuiltPart = (actor: Actor, sawVersion: number, input: BuiltPartInput) => {
  const { id, lots: _rows, ...columns } = input
  return changeSeen(
    actor,
    'built-part',
    id,
    (tx) => withLots(tx, id),
    (tx) =>
      tx.builtPart.updateMany({
        where: { id, version: sawVersion },
        data: { ...columns, version: { increment: 1 } },
      }),
    async (tx) => {
      await tx.builtPartLot.deleteMany({ where: { builtPartId: id } })
      await tx.builtPartLot.createMany({ data: await lotRows(tx, input) })
    },
  )
}

/**
 * Takes a part out of the book that no pull names and on which nothing hangs: what is left of a serial that was typed
 * wrong and put right at its pull.
 */
export async function removeBuiltPart(actor: Actor, id: string): Promise<void> {
  await db().prisma.$transaction(async (tx) => {
    // No pull may name it, and nobody else take it out, while it is looked at.
    await tx.$executeRaw`lock table log_entry in share row exclusive mode`
    const row = await withLots(tx, id)
    if (!row) return
    const pulls = await tx.$queryRaw<{ code: string }[]>`
      select m.code from part_pull p join mould m on m.id = p.mould_id where p.serial_key = lower(btrim(${row.serial})) order by m.code`
    const pictures = await tx.picture.count({ where: { builtPartId: id } })
    const hangs = [
      ...pulls.map(({ code }) => `a pull of ${code}`),
      ...(row.lots.length > 0 ? ['its lots'] : []),
      ...(pictures > 0 ? ['its photos'] : []),
      ...(row.cure || row.whereNow || row.note ? ['what was written about it'] : []),
    ]
    if (hangs.length > 0) {
      throw new Refusal(`${row.serial} stays in the book: ${hangs.join(', ')} would be lost`, { status: 409 })
    }
    await tx.builtPart.delete({ where: { id } })
    await audit(tx, actor, 'removed', 'built-part', id, row, null)
  })
}

/** The entry by which a patch was laid; null: it is not laid. */
export async function laidEntryOf(patchId: string): Promise<string | null> {
  const [row] = await db().sql`
    select laid_entry_id as id from patch_plan where patch_id = ${patchId} and laid_entry_id is not null
    order by version_no desc limit 1`
  return (row?.id as string | undefined) ?? null
}

export interface LotName {
  readonly id: string
  readonly material: string
  readonly lot: string
  readonly closed: boolean
}

const lotColumns = (sql: Sql) => sql`
  select l.id, coalesce(m.code, p.name) as material, l.lot, l.closed_on is not null as closed
  from stock_lot l left join material m on m.id = l.material_id left join product p on p.id = l.product_id`

export async function lotName(id: string): Promise<LotName | null> {
  const { sql } = db()
  const [row] = await sql<LotName[]>`${lotColumns(sql)} where l.id = ${id}`
  return row ?? null
}

/** Lots of materials and products that a part can be laid from, open ones first. */
export async function lotNames(): Promise<LotName[]> {
  const { sql } = db()
  return sql<LotName[]>`
    ${lotColumns(sql)} order by l.closed_on is not null, coalesce(m.code, p.name), l.received_on desc, l.lot`
}
