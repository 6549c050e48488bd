import { NewPrice, NewRate } from '#lib/schema/rates'
import { NewLot } from '#lib/schema/stock'
import { addLot, closeLot } from '#lib/services/stores-lots'
import { addProduct } from '#lib/services/stores-products'
import { addPrice, addRate } from '#lib/services/stores-rates'
import { db } from '#lib/store/db'
import { momentOf } from '../base/calendar'
import { idOf } from '../base/ids'
import { type LotStory, lots } from '../data/lots'
import { materials } from '../data/materials'
import { prices, rates } from '../data/money'
import { personOf } from '../data/people'
import { products } from '../data/products'
import { shopSettings } from '../data/shop'
import { actorOf } from './people'

const { currency } = shopSettings

function subjectOf(name: string) {
  const material = materials.find((each) => each.code === name)
  if (material) return { subjectKind: 'material' as const, subjectId: material.id, unit: 'm2' as const }
  const product = products.find((each) => each.name === name)
  if (!product) throw new Error(`The stores of the demo have no ${name}`)
  return { subjectKind: 'product' as const, subjectId: product.id, unit: product.unit }
}

/** Product cards, prices over the seasons, and rates. */
export async function writeCards(): Promise<void> {
  const lead = actorOf('MO')
  for (const product of products) await addProduct(lead, product)
  for (const [name, lines] of Object.entries(prices)) {
    for (const [fromOn, minorPerUnit, sourceNote] of lines) {
      const id = idOf(`price/${name}/${fromOn}`)
      await addPrice(
        lead,
        NewPrice.parse({ id, ...subjectOf(name), currency, minorPerUnit, fromOn, sourceNote }),
      )
    }
  }
  for (const { operation, basis, hours, minor, from, where } of rates) {
    const id = idOf(`rate/${operation}/${basis}/${from}`)
    await addRate(
      lead,
      NewRate.parse({
        id,
        operation,
        basis,
        hours,
        currency,
        minorPerBasis: minor,
        fromOn: from,
        sourceNote: where,
      }),
    )
  }
}

const lotId = ({ of, lot }: LotStory) => idOf(`lot/${of}/${lot}`)

/** Rolls and tins with all that was taken from them; after the log, whose coats and patches they went into. */
export async function writeLots(): Promise<void> {
  const lead = actorOf('MO')
  for (const story of lots) {
    const { lot, container, quantity, came, goodUntil, opened, place, note } = story
    await addLot(
      lead,
      NewLot.parse({
        id: lotId(story),
        ...subjectOf(story.of),
        amount: quantity,
        rollLengthM: null,
        lot,
        container,
        receivedOn: came,
        expiresOn: goodUntil ?? null,
        openedOn: opened ?? null,
        place,
        note: note ?? '',
      }),
    )
  }
  await writeMoves()
  for (const story of lots) {
    if (!story.closed) continue
    await closeLot(lead, {
      lotId: lotId(story),
      version: 1,
      closedOn: story.closed.on,
      closedWhy: story.closed.why,
    })
  }
}

interface Move {
  readonly id: string
  readonly lotId: string
  readonly kind: string
  readonly amount: number
  readonly on: string
  readonly at: string
  readonly entryId: string | null
  readonly planId: string | null
  readonly byId: string
  readonly byName: string
  readonly note: string
}

/** Litres that one coat of a mould of this shop takes; invented. */
const litresPerCoat = { coat: 0.09, seal: 0.05 } as const

async function writeMoves(): Promise<void> {
  const told: Move[] = lots.flatMap((story) =>
    (story.moves ?? []).map(({ on, by, kind, amount, note }, index) => ({
      id: idOf(`move/${story.of}/${story.lot}/${index}`),
      lotId: lotId(story),
      kind,
      amount,
      on,
      at: momentOf(on, 17 * 60),
      entryId: null,
      planId: null,
      byId: personOf(by).id,
      byName: personOf(by).name,
      note: note ?? '',
    })),
  )
  const rows = [...told, ...(await coatMoves()), ...(await patchMoves())]
  const { sql } = db()
  await sql`
    insert into lot_move (id, lot_id, kind, amount, done_on, written_at, entry_id, plan_id, by_id, by_name, note)
    select r.id, r."lotId", r.kind, r.amount, r.on, r.at, r."entryId", r."planId", r."byId", r."byName", r.note
    from jsonb_to_recordset(${sql.json(rows as never)}) as r(id uuid, "lotId" uuid, kind text, amount float8, "on" date,
      at timestamptz, "entryId" uuid, "planId" uuid, "byId" uuid, "byName" text, note text)
    order by r.at, r.id`
}

interface Entry {
  readonly id: string
  readonly on: string
  readonly at: string
  readonly byId: string
  readonly byName: string
}

const entryMove = (entry: Entry, story: LotStory, amount: number, planId: string | null): Move => ({
  id: idOf(`move/${story.of}/${story.lot}/${entry.id}`),
  lotId: lotId(story),
  kind: 'used',
  amount,
  on: entry.on,
  at: entry.at,
  entryId: entry.id,
  planId,
  byId: entry.byId,
  byName: entry.byName,
  note: '',
})

/** What the coats of the diaries took from the tins that they name. */
async function coatMoves(): Promise<Move[]> {
  const entries = await db().sql`
    select id, done_on as "on", to_json(written_at) #>> '{}' as at, by_id as "byId", by_name as "byName", kind,
      data ->> 'product' as product, data ->> 'lot' as lot, (data ->> 'coats')::int as coats
    from log_entry where kind in ('coat', 'seal') and data ->> 'lot' is not null`
  return entries.flatMap((entry) => {
    const story = lots.find((each) => each.of === entry.product && each.lot === entry.lot)
    if (!story || entry.coats === 0) return []
    const litres = entry.coats * litresPerCoat[entry.kind as 'coat' | 'seal']
    return [entryMove(entry as unknown as Entry, story, Math.round(litres * 1000) / 1000, null)]
  })
}

/** What laid patches took from the rolls that they name, as their take-off has it. */
async function patchMoves(): Promise<Move[]> {
  const entries = await db().sql`
    select e.id, e.done_on as "on", to_json(e.written_at) #>> '{}' as at, e.by_id as "byId", e.by_name as "byName",
      e.data ->> 'planId' as "planId", l ->> 'material' as material, l ->> 'lot' as lot,
      (select (t ->> 'grossAreaM2')::float8 from jsonb_array_elements(p.result -> 'value' -> 'takeOff') t
        where t -> 'material' ->> 'name' = l ->> 'material') as area
    from log_entry e cross join jsonb_array_elements(e.data -> 'lots') l
    join patch_plan p on p.id = (e.data ->> 'planId')::uuid
    where e.kind = 'patch-laid'`
  return entries.flatMap((entry) => {
    const code = materials.find((each) => each.name === entry.material)?.code
    const story = lots.find((each) => each.of === code && each.lot === entry.lot)
    if (!story || entry.area === null) return []
    return [
      entryMove(entry as unknown as Entry, story, Math.round(entry.area * 100) / 100, entry.planId as string),
    ]
  })
}
