import * as z from 'zod'
import { momentOf } from '#lib/core/dates'
import {
  byUse,
  hoursBetween,
  type LotStanding,
  lotStanding,
  lotStates,
  rollAreaM2,
  stockCover,
  stockMatters,
  takingFindings,
} from '#lib/core/stores/index'
import {
  CloseLot,
  CorrectMove,
  CountLot,
  FreezerHours,
  LotEdit,
  NewLot,
  ReopenLot,
  StockSubjectRef,
  TakeFromLot,
} from '#lib/schema/stock'
import { Refusal } from '#lib/store/errors'
import { listMoves, partsOfLot, readMove, closeLot as shutLot, writeMove } from '#lib/store/lot-moves'
import {
  addLot as insertLot,
  listLots as readLots,
  readLot as readOne,
  type StoredLot,
  stockSubjects,
  storesCounts,
  changeLot as updateLot,
} from '#lib/store/lots'
import { readPlan } from '#lib/store/patches'
import { readProduct } from '#lib/store/products'
import { readMaterial } from '#lib/store/stores'
import { shopContext, told } from './shop'
import { asking, everyone, hands, verb } from './verb'

export type LotOnDay = StoredLot & { readonly standing: LotStanding }

/** Lots with how they stand on a day, those to be used first in front. */
export async function lotsWithStanding(
  filter: Parameters<typeof readLots>[0],
  today: string,
): Promise<LotOnDay[]> {
  const lots = (await readLots(filter)).map((lot) => ({ ...lot, standing: lotStanding(lot, today) }))
  return lots.sort((a, b) => Number(a.closedOn !== null) - Number(b.closedOn !== null) || byUse(a, b))
}

/** Low, late and soon late stock, for the Bench and the head of Stores. */
export const readStockMatters = verb('stores.matters', everyone, z.object({}), async () => {
  const [{ today }, subjects] = await Promise.all([shopContext(), stockSubjects()])
  return { today, matters: stockMatters(subjects, today) }
})

/** The first page of Stores: what is low or late, the lots, and how many of each there are. */
export const readStores = verb(
  'stores.read',
  everyone,
  z.object({ closed: z.boolean() }),
  async (_actor, { closed }) => {
    const { today } = await shopContext()
    const [subjects, lots, counts] = await Promise.all([
      stockSubjects(),
      lotsWithStanding({ open: !closed }, today),
      storesCounts(),
    ])
    // What is late or empty stands first here; where a lot is chosen, what is to be used first does.
    const weight = (lot: LotOnDay) => lotStates.indexOf(lot.standing.state)
    lots.sort((a, b) => weight(a) - weight(b))
    return { today, matters: stockMatters(subjects, today), lots, counts }
  },
)

export const countStores = verb('stores.count', everyone, z.object({}), () => storesCounts())

/** A lot with its moves, where it was used, and how it stands. */
export const readLot = asking('lots.read', everyone, z.object({ id: z.uuid() }), async (_actor, { id }) => {
  const lot = await readOne(id)
  if (!lot) throw new Refusal('There is no such lot', { status: 404 })
  const { today, shop } = await shopContext()
  const [moves, parts] = await Promise.all([listMoves(id), partsOfLot(id)])
  return { lot: { ...lot, standing: lotStanding(lot, today) }, moves, parts, today, timeZone: shop.timeZone }
})

/** Open lots to choose from, those to be used first in front; of one material or product, or of these uses. */
export const openLots = verb(
  'lots.open',
  everyone,
  z.object({
    of: StockSubjectRef.nullable().prefault(null),
    /** surface, bulk, sealer, release ...; empty: all. */
    uses: z.array(z.string()).prefault([]),
  }),
  async (_actor, { of, uses }) => {
    const { today } = await shopContext()
    const lots = await lotsWithStanding({ open: true, ...(of ? { of } : {}) }, today)
    return lots.filter((lot) => uses.length === 0 || uses.includes(lot.subjectUse))
  },
)

const lotRules = (field = 'lot') => ({
  stock_lot_material_lot_key: { field, says: 'This lot of it is in the stores already; open that one' },
  stock_lot_product_lot_key: { field, says: 'This lot of it is in the stores already; open that one' },
  stock_lot_check: { field: 'expiresOn', says: 'The date on it lies more than ten years before it came' },
})

export const addLot = verb('lots.add', hands, NewLot, async (actor, input) => {
  const { subjectKind, subjectId, unit, amount, rollLengthM, ...rest } = input
  const { today } = await shopContext()
  if (rest.receivedOn > today) {
    throw new Refusal('It has not come yet', { fields: { receivedOn: `In the future; today is ${today}` } })
  }
  const quantity =
    subjectKind === 'material'
      ? await materialQuantity(subjectId, amount, rollLengthM)
      : await productQuantity(subjectId, amount, unit)
  await told(
    insertLot(actor, {
      ...rest,
      subjectKind,
      subjectId,
      quantity,
      unit: subjectKind === 'material' ? 'm2' : unit,
    }),
    lotRules(),
  )
})

async function materialQuantity(
  id: string,
  amountM2: number | null,
  rollLengthM: number | null,
): Promise<number> {
  const material = await readMaterial(id)
  if (!material) throw notKept
  return amountM2 ?? rollAreaM2(rollLengthM ?? 0, material.rollWidthMm)
}

async function productQuantity(id: string, amount: number | null, unit: string): Promise<number> {
  const product = await readProduct(id)
  if (!product) throw notKept
  if (product.unit !== unit) {
    throw new Refusal(`${product.name} is counted in ${product.unit}; load the page again`, {
      fields: { amount: `Give it in ${product.unit}` },
    })
  }
  return amount ?? 0
}

const notKept = new Refusal('There is no such material or product', {
  status: 404,
  fields: { subjectId: 'Choose what came' },
})

export const changeLot = verb('lots.change', hands, LotEdit, (actor, input) =>
  told(updateLot(actor, input), lotRules()),
)

/** Nothing is taken or counted on a day that has not come. */
async function mustHaveHappened(doneOn: string): Promise<Awaited<ReturnType<typeof shopContext>>> {
  const context = await shopContext()
  if (doneOn > context.today) {
    throw new Refusal(`${doneOn} is in the future: today is ${context.today} in the shop`, {
      fields: { doneOn: `In the future; today is ${context.today}` },
    })
  }
  return context
}

export const takeFromLot = verb('lots.take', hands, TakeFromLot, async (actor, move) => {
  await mustHaveHappened(move.doneOn)
  await writeMove(actor, { ...move, kind: 'used' })
})

export const countLot = verb('lots.count', hands, CountLot, async (actor, move) => {
  await mustHaveHappened(move.doneOn)
  await writeMove(actor, { ...move, kind: 'counted' })
})

export const freezerHours = verb('lots.freezer', hands, FreezerHours, async (actor, input) => {
  const { shop } = await mustHaveHappened(input.doneOn)
  const { hours, outAt, backOn, backAt, ...move } = input
  const backDay = backOn ?? input.doneOn
  await mustHaveHappened(backDay)
  const amount = hours ?? spanHours(input.doneOn, outAt ?? '', backDay, backAt ?? '', shop.timeZone)
  const note = hours === null ? [`${outAt} to ${backAt}`, move.note].filter(Boolean).join('; ') : move.note
  await writeMove(actor, { ...move, kind: 'out of freezer', amount, unit: null, note })
})

function spanHours(outOn: string, outAt: string, backOn: string, backAt: string, timeZone: string): number {
  const [out, back] = [momentOf(outOn, outAt, timeZone), momentOf(backOn, backAt, timeZone)]
  if (out === null || back === null)
    throw new Refusal('The clock skips that time on that day; give the hours')
  if (Date.parse(back) <= Date.parse(out)) {
    throw new Refusal('It went back before it came out', {
      fields: { backAt: 'Later than it came out; give the day it went back' },
    })
  }
  return hoursBetween(out, back)
}

/** Strikes a move out. What an entry of the log took is put right with that entry. */
export const correctMove = verb('lots.correct', hands, CorrectMove, async (actor, input) => {
  const wrong = await readMove(input.correctsId)
  if (!wrong || wrong.lotId !== input.lotId)
    throw new Refusal('There is no such move of this lot', { status: 404 })
  if (wrong.kind === 'correction') {
    throw new Refusal('What was struck out is not brought back by striking out the strike: write it anew')
  }
  if (wrong.entryId !== null) {
    throw new Refusal('An entry of the log took this: put that entry right, and the lot follows')
  }
  const { today } = await shopContext()
  await writeMove(actor, { ...input, kind: 'correction', amount: 0, unit: null, doneOn: today })
})

export const closeLot = verb('lots.close', hands, CloseLot, async (actor, input) => {
  await mustHaveHappened(input.closedOn)
  await shutLot(actor, input.lotId, input.version, { on: input.closedOn, why: input.closedWhy })
})

export const reopenLot = verb('lots.reopen', hands, ReopenLot, (actor, { lotId, version }) =>
  shutLot(actor, lotId, version, null),
)

/** What the stores have of each material of a plan's take-off: stock, lots to choose from, and what to tell of them. */
export const planStock = verb(
  'lots.plan',
  everyone,
  z.object({ planId: z.uuid() }),
  async (_actor, { planId }) => {
    const plan = await readPlan(planId)
    if (!plan) throw new Refusal('There is no such plan', { status: 404 })
    const { today } = await shopContext()
    const materials = (await lotsWithStanding({}, today)).filter((lot) => lot.subjectKind === 'material')
    return plan.result.value.takeOff.map(({ material, grossAreaM2 }) => {
      const own = materials.filter((lot) => lot.subjectName === material.name)
      const cover = stockCover(material.name, grossAreaM2, own, today)
      const open = own.filter((lot) => lot.closedOn === null)
      return {
        ...cover,
        lots: open.map((lot) => ({
          ...lot,
          findings: takingFindings([{ subjectName: lot.subjectCode ?? '', lot, amount: grossAreaM2 }], today),
        })),
      }
    })
  },
)
