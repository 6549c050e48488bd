import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { readHistory, writeEntry } from '#lib/services/log'
import { readMouldPage } from '#lib/services/moulds'
import { benchPlan, layPatch, provePatch, putByPlan, signPlan, tickLine } from '#lib/services/patch-steps'
import { listPatches, sketchPatch } from '#lib/services/patches'
import { db } from '#lib/store/db'
import { ada, ben, book, countsOf, entry, lam, refusal } from './book'
import { aPatch, becausesOf, ground, lotsOf, planOf, sketch, sketched, tickAll } from './patch-book'

book()

describe('on the bench', () => {
  test('the mould is under repair, and lines can be ticked', async () => {
    const { mould, area } = await ground()
    const { planId, patchId } = await aPatch(mould.id, area.id, 'on the bench')
    const { standing } = await readMouldPage(ada, { code: mould.code })
    expect(standing).toMatchObject({
      state: 'under repair',
      reason: expect.stringMatching(/^Patch 1, floor/),
    })
    await tickLine(lam, { planId, position: 1, ticked: true, note: 'Vi looked' })
    const [line] = (await planOf(patchId, planId)).lines
    expect(line).toMatchObject({ tickedByName: 'Lam Hands', tickNote: 'Vi looked' })
    await tickLine(ada, { planId, position: 1, ticked: true, note: 'again' })
    expect((await planOf(patchId, planId)).lines[0]).toEqual(line)
    await tickLine(lam, { planId, position: 1, ticked: false, note: 'not done after all' })
    expect((await planOf(patchId, planId)).lines[0]).toMatchObject({ tickedAt: null, tickedByName: null })
    const rows = await db()
      .sql`select act from audit where record_id = ${planId} and act like '%tick%' order by id`
    expect(rows.map((row) => row.act)).toEqual(['ticked', 'took a tick back'])
  })

  test('two people tick a line at once: it carries one name, and the audit one line', async () => {
    const { mould, area } = await ground()
    const { planId, patchId } = await aPatch(mould.id, area.id, 'on the bench')
    await Promise.all(
      [ada, ben, lam].map((actor) => tickLine(actor, { planId, position: 2, ticked: true, note: 'Vi' })),
    )
    const rows = await db().sql`select by_name from audit where record_id = ${planId} and act = 'ticked'`
    expect(rows).toHaveLength(1)
    expect((await planOf(patchId, planId)).lines[1]?.tickedByName).toBe(rows[0]?.by_name)
  })

  test("a line for two people needs the second one's name", async () => {
    const { mould, area } = await ground()
    const { planId, patchId } = await aPatch(mould.id, area.id, 'on the bench')
    const line = (await planOf(patchId, planId)).lines.find((each) => each.secondPerson)
    if (!line) throw new Error('the sample plan has no line for two people')
    const tick = { planId, position: line.position, ticked: true }
    expect((await refusal(tickLine(lam, { ...tick, note: ' ' }))).fields).toHaveProperty('note')
    await tickLine(lam, { ...tick, note: 'Vi' })
  })

  test('not before: a signed plan has no ticks, and a sketch goes nowhere but to its signature', async () => {
    const { mould, area } = await ground()
    const { planId } = await aPatch(mould.id, area.id, 'signed')
    expect((await refusal(tickLine(lam, { planId, position: 1, ticked: true, note: '' }))).message).toMatch(
      /this plan is signed/,
    )
    const { planId: sketchId } = await sketched()
    expect((await refusal(benchPlan(lam, { planId: sketchId, sawVersion: 1 }))).status).toBe(409)
    expect((await refusal(tickLine(lam, { planId, position: 999, ticked: true, note: '' }))).status).toBe(422)
  })

  test('two versions of a patch: only one gets there, the other is refused in words', async () => {
    const { mould, area } = await ground()
    const first = await aPatch(mould.id, area.id, 'signed')
    const second = sketch(mould.id, area.id, { patchId: first.patchId })
    await sketchPatch(ada, second)
    await signPlan(ada, {
      planId: second.id,
      sawVersion: 1,
      becauses: await becausesOf(first.patchId, second.id),
    })
    await benchPlan(lam, { planId: second.id, sawVersion: 2 })
    const refused = await refusal(benchPlan(lam, { planId: first.planId, sawVersion: 2 }))
    expect(refused).toMatchObject({
      status: 409,
      message: 'Another version of this patch is in work already',
    })
    const third = await refusal(sketchPatch(ada, sketch(mould.id, area.id, { patchId: first.patchId })))
    expect(third).toMatchObject({
      status: 409,
      message: expect.stringMatching(/a change now is a new patch/),
    })
  })

  test('pressed twice by the same person: done once; by another: refused', async () => {
    const { mould, area } = await ground()
    const { planId, patchId } = await aPatch(mould.id, area.id, 'signed')
    await benchPlan(lam, { planId, sawVersion: 2 })
    await benchPlan(lam, { planId, sawVersion: 2 })
    expect((await planOf(patchId, planId)).version).toBe(3)
    expect((await refusal(benchPlan(ada, { planId, sawVersion: 2 }))).status).toBe(409)
  })
})

describe('laid', () => {
  async function onTheBench() {
    const { mould, area } = await ground()
    const made = await aPatch(mould.id, area.id, 'on the bench')
    const act = { planId: made.planId, sawVersion: 3, entryId: randomUUID(), doneOn: '2024-06-01', note: '' }
    return { mould, area, ...made, act }
  }

  test('needs its lines ticked, and the lot of each material', async () => {
    const { patchId, planId, act } = await onTheBench()
    const lots = await lotsOf(patchId, planId)
    expect(lots.map((lot) => lot.material).sort()).toEqual(['200 twill', '650 twill'])
    const early = await refusal(layPatch(lam, { ...act, lots }))
    expect(early).toMatchObject({
      status: 422,
      message: expect.stringMatching(/Not laid while job lines are open/),
    })
    await tickAll(planId)
    const short = await refusal(layPatch(lam, { ...act, lots: lots.slice(0, 1) }))
    expect(short.message).toBe(`Give the lot of ${lots[1]?.material}`)
    expect(short.fields).toHaveProperty('lots')
    await layPatch(lam, { ...act, lots })
    expect((await planOf(patchId, planId)).state).toBe('laid')
  })

  test('writes plan and log together: entry with the lots, proof pull only', async () => {
    const { mould, patchId, planId, act } = await onTheBench()
    await tickAll(planId)
    await layPatch(lam, { ...act, note: 'two debulks more', lots: await lotsOf(patchId, planId) })
    const [written] = (await readHistory(ada, { mouldId: mould.id, kinds: ['patch-laid'], limit: 5 })).entries
    expect(written).toMatchObject({
      id: act.entryId,
      patchId,
      patchNumber: 1,
      byName: 'Lam Hands',
      note: 'two debulks more',
      data: { planId, number: 1, lots: [{ lot: 'L1' }, { lot: 'L1' }] },
    })
    const { standing } = await readMouldPage(ada, { code: mould.code })
    expect(standing.state).toBe('proof pull only')
    expect(await countsOf(mould.id)).toMatchObject({ lastRepairOn: '2024-06-01', planOnBench: null })
  })

  test('sent twice, also at once: one entry; with other content: refused', async () => {
    const { mould, patchId, planId, act } = await onTheBench()
    await tickAll(planId)
    const lots = await lotsOf(patchId, planId)
    const sent = await Promise.allSettled(Array.from({ length: 5 }, () => layPatch(lam, { ...act, lots })))
    expect(sent.filter((each) => each.status === 'rejected').map((each) => each.reason.message)).toEqual([])
    await layPatch(lam, { ...act, lots })
    expect(
      (await readHistory(ada, { mouldId: mould.id, kinds: ['patch-laid'], limit: 5 })).entries,
    ).toHaveLength(1)
    const other = await refusal(layPatch(lam, { ...act, lots, note: 'something else' }))
    expect(other.status).toBe(409)
    expect(other.stored).toMatchObject({ id: act.entryId, note: '' })
  })

  test('two people with entries of their own: one is written', async () => {
    const { mould, patchId, planId, act } = await onTheBench()
    await tickAll(planId)
    const lots = await lotsOf(patchId, planId)
    const sent = await Promise.allSettled(
      [lam, ada].map((actor) => layPatch(actor, { ...act, entryId: randomUUID(), lots })),
    )
    expect(sent.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    expect(
      (await readHistory(ada, { mouldId: mould.id, kinds: ['patch-laid'], limit: 5 })).entries,
    ).toHaveLength(1)
  })

  test('in the future: refused, and the plan stays on the bench', async () => {
    const { patchId, planId, act } = await onTheBench()
    await tickAll(planId)
    const lots = await lotsOf(patchId, planId)
    expect((await refusal(layPatch(lam, { ...act, doneOn: '2999-01-01', lots }))).fields).toHaveProperty(
      'doneOn',
    )
    expect((await planOf(patchId, planId)).state).toBe('on the bench')
  })

  test('what a plan wrote is not put right in the log', async () => {
    const { mould, area } = await ground()
    const { entryId } = await aPatch(mould.id, area.id, 'laid')
    const refused = await refusal(writeEntry(ada, entry(mould.id, 'correction', { correctsId: entryId })))
    expect(refused.message).toMatch(/put right by a new version of the plan/)
    const forged = entry(mould.id, 'patch-laid', { data: { planId: randomUUID(), number: 1, lots: [] } })
    expect((await refusal(writeEntry(ada, forged))).message).toMatch(/written by the plan of the patch/)
  })
})

describe('proved', () => {
  test('after the last line: the patch is part of the mould', async () => {
    const { mould, area } = await ground()
    const { planId, patchId } = await aPatch(mould.id, area.id, 'laid')
    const act = { planId, sawVersion: 4, entryId: randomUUID(), doneOn: '2024-06-02', note: '' }
    const last = (await planOf(patchId, planId)).lines.at(-1)
    await tickLine(lam, { planId, position: last?.position ?? 0, ticked: false, note: '' })
    expect((await refusal(provePatch(lam, act))).message).toMatch(/Not proved while job lines are open/)
    await tickLine(lam, { planId, position: last?.position ?? 0, ticked: true, note: 'Vi' })
    await provePatch(lam, act)
    await provePatch(lam, act)
    expect((await planOf(patchId, planId)).state).toBe('proved')
    const { standing } = await readMouldPage(ada, { code: mould.code })
    expect(standing.state).toBe('fit for use')
    expect((await readHistory(ada, { mouldId: mould.id, kinds: ['proved'], limit: 5 })).entries).toHaveLength(
      1,
    )
  })
})

describe('put by', () => {
  test.each(['sketched', 'signed', 'on the bench'] as const)('from %s, with a reason', async (state) => {
    const { mould, area } = await ground()
    const { planId, patchId } = await aPatch(mould.id, area.id, state)
    const { version } = await planOf(patchId, planId)
    await putByPlan(ada, { planId, sawVersion: version, reason: 'the point moved back' })
    await putByPlan(ada, { planId, sawVersion: version, reason: 'the point moved back' })
    expect(await planOf(patchId, planId)).toMatchObject({
      state: 'put by',
      putByReason: 'the point moved back',
      version: version + 1,
    })
    expect((await countsOf(mould.id)).planOnBench).toBeNull()
    // A new version may follow.
    await sketchPatch(ada, sketch(mould.id, area.id, { patchId }))
  })

  test.each(['laid', 'proved'] as const)('not from %s: the patch is in the mould', async (state) => {
    const { mould, area } = await ground()
    const { planId, patchId } = await aPatch(mould.id, area.id, state)
    const { version } = await planOf(patchId, planId)
    expect((await refusal(putByPlan(ada, { planId, sawVersion: version, reason: 'no' }))).status).toBe(409)
  })
})

test('a list tells each patch by the version that matters: in work, else the newest that is not put by', async () => {
  const { mould, area } = await ground()
  const { patchId, planId } = await aPatch(mould.id, area.id, 'sketched')
  const second = sketch(mould.id, area.id, { patchId })
  await sketchPatch(ada, second)
  const versions = async () =>
    (await listPatches(ada, { mouldId: mould.id })).rows.map((patch) => [patch.planId, patch.state])
  expect(await versions()).toEqual([[second.id, 'sketched']])
  await putByPlan(ada, { planId: second.id, sawVersion: 1, reason: 'no' })
  expect(await versions()).toEqual([[planId, 'sketched']])
  await putByPlan(ada, { planId, sawVersion: 1, reason: 'no' })
  expect(await versions()).toEqual([[second.id, 'put by']])
})
