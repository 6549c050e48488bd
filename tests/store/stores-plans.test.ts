import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { layPatch } from '#lib/services/patch-steps'
import { planStock } from '#lib/services/stores-lots'
import { db } from '#lib/store/db'
import { ada, aMould, anArea, book, bulkId, lam, refusal } from './book'
import { aPatch, planOf, tickAll } from './patch-book'
import { aLot, lotNow, movesOf } from './stock-book'

book()

/** A patch on the bench with all lines ticked, and what its take-off needs of each material. */
async function onBench() {
  const mould = await aMould()
  const area = await anArea(mould.id)
  const { planId, patchId } = await aPatch(mould.id, area.id, 'on the bench')
  await tickAll(planId)
  const plan = await planOf(patchId, planId)
  const need = new Map(plan.result.value.takeOff.map((each) => [each.material.name, each.grossAreaM2]))
  const base = { planId, sawVersion: plan.version, entryId: randomUUID(), doneOn: '2024-06-01', note: 'well' }
  return { mould, planId, patchId, need, base }
}

const laidEntry = async (mouldId: string) => {
  const [row] = await db()
    .sql`select data, note from log_entry where mould_id = ${mouldId} and kind = 'patch-laid'`
  return row
}

const surface = '200 twill'
const bulk = '650 twill'

test('what a plan needs against what the stores have', async () => {
  const { planId, need } = await onBench()
  expect((await planStock(ada, { planId })).map((each) => each.stock)).toEqual([null, null])
  await aLot({ amount: 0.001, lot: 'rest' })
  await aLot({ subjectId: bulkId, amount: 50 })
  const covers = await planStock(ada, { planId })
  expect(covers.find((each) => each.material === surface)).toMatchObject({
    enough: false,
    needM2: need.get(surface),
  })
  expect(covers.find((each) => each.material === bulk)).toMatchObject({ enough: true, stock: { lots: 1 } })
})

test('laid from a lot of the stores and from one that they do not keep, in one act', async () => {
  const lot = await aLot({ amount: 40, lot: 'S2-1' })
  const { mould, base, planId, patchId } = await onBench()
  const lots = [
    { material: surface, lot: '', lotId: lot.id, areaM2: 1.5 },
    { material: bulk, lot: 'from the neighbours' },
  ]
  await layPatch(lam, { ...base, lots })
  await layPatch(lam, { ...base, lots })
  expect((await lotNow(lot)).remaining).toBe(38.5)
  expect(await movesOf(lot)).toMatchObject([
    { kind: 'used', amount: 1.5, mouldCode: mould.code, patchId, entryId: base.entryId, counts: true },
  ])
  const entry = await laidEntry(mould.id)
  expect(entry?.data).toMatchObject({
    lots: [
      { material: surface, lot: 'S2-1' },
      { material: bulk, lot: 'from the neighbours' },
    ],
  })
  expect((await planOf(patchId, planId)).state).toBe('laid')
})

test('every fault is told at its row and nothing is written', async () => {
  const lot = await aLot({ amount: 0.5 })
  const { base, mould } = await onBench()
  const rows = (first: object) => [
    { material: surface, lot: '', ...first },
    { material: bulk, lot: 'L1' },
  ]
  const fields = async (first: object) =>
    (await refusal(layPatch(lam, { ...base, lots: rows(first) }))).fields
  expect(await fields({})).toHaveProperty('lots.0.lot')
  expect(await fields({ lotId: lot.id })).toHaveProperty('lots.0.areaM2')
  expect(await fields({ lotId: lot.id, areaM2: 0.6 })).toHaveProperty('lots.0.areaM2')
  expect(await fields({ lotId: lot.id, areaM2: 0.1, lot: 'other' })).toHaveProperty('lots.0.lot')
  const wrong = await aLot({ subjectId: bulkId })
  expect(await fields({ lotId: wrong.id, areaM2: 0.1 })).toHaveProperty('lots.0.lotId')
  const [row] = await db().sql`select count(*)::int as n from log_entry where mould_id = ${mould.id}`
  expect(row?.n).toBe(0)
  expect((await lotNow(lot)).remaining).toBe(0.5)
})

test('a lot past its date is laid with a because, which stands in the log and with the move', async () => {
  const lot = await aLot({ expiresOn: '2024-05-31', lot: 'old' })
  const { base, mould } = await onBench()
  const lots = (because: string) => [
    { material: surface, lot: '', lotId: lot.id, areaM2: 1, because },
    { material: bulk, lot: 'L1' },
  ]
  const refused = await refusal(layPatch(lam, { ...base, lots: lots('') }))
  expect(refused.fields).toEqual({ 'lots.0.because': 'Give a because' })
  await layPatch(lam, { ...base, lots: lots('coupon cured well') })
  const entry = await laidEntry(mould.id)
  expect(entry?.note).toBe('well\nS200, lot old: coupon cured well')
  expect((await movesOf(lot))[0]?.note).toBe('Because: coupon cured well')
})

test('two benches that lay from the last of a roll: one is written, the other told', async () => {
  const lot = await aLot({ amount: 1.6 })
  const [one, two] = [await onBench(), await onBench()]
  const lay = ({ base }: typeof one) =>
    layPatch(lam, {
      ...base,
      lots: [
        { material: surface, lot: '', lotId: lot.id, areaM2: 1 },
        { material: bulk, lot: 'L1' },
      ],
    })
  const sent = await Promise.allSettled([lay(one), lay(two)])
  expect(sent.map((each) => each.status).sort()).toEqual(['fulfilled', 'rejected'])
  expect((await lotNow(lot)).remaining).toBeCloseTo(0.6, 9)
})
