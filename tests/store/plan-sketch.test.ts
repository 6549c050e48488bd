import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import type { OpeningSource } from '#lib/schema/patch'
import { changeMould } from '#lib/services/moulds'
import { signPlan } from '#lib/services/patch-steps'
import { listPatches, previewPatch, readPatch, sketchPatch } from '#lib/services/patches'
import { ada, aMould, anArea, ben, book, refusal } from './book'
import { aPatch, becausesOf, ground, planOf, sketch, sketched } from './patch-book'

book()

const offTheEdge: OpeningSource = {
  kind: 'circle',
  diameterMm: 60,
  placement: { shiftMm: [595, 0], turnDeg: 0, mirrored: false },
}

describe('sketching', () => {
  test("the first sketch makes the patch with the mould's next number, and keeps input, result and working", async () => {
    const { mould, area, planId, patchId } = await sketched()
    const plan = await planOf(patchId, planId)
    expect(plan).toMatchObject({
      state: 'sketched',
      versionNo: 1,
      version: 1,
      createdByName: 'Ada Lead',
      calculationVersion: '1',
    })
    expect([...plan.input.measuredThicknessMm].sort()).toEqual([2.9, 3, 3.1])
    expect(plan.input.stack).toHaveLength(6)
    expect(plan.input.heat).toEqual({ inUseC: 120, freeStandingC: 150, bondedC: 140 })
    expect(plan.result.working.length).toBeGreaterThan(5)
    expect(plan.lines.map((line) => line.title)).toEqual(plan.result.value.jobLines.map((line) => line.title))
    const second = await sketchPatch(ada, sketch(mould.id, area.id))
    expect((await readPatch(ada, { id: second.patchId })).number).toBe(2)
  })

  test('sent twice, also at once: one plan', async () => {
    const { mould, area } = await ground()
    const wanted = sketch(mould.id, area.id)
    await Promise.all(Array.from({ length: 5 }, () => sketchPatch(ada, wanted)))
    await sketchPatch(ada, wanted)
    expect((await readPatch(ada, { id: wanted.patchId })).plans).toHaveLength(1)
    const other = await refusal(sketchPatch(ada, { ...wanted, title: 'another title' }))
    expect(other).toMatchObject({ status: 409, stored: { title: 'Opening round D02' } })
  })

  test('patches sketched at the same moment get numbers of their own', async () => {
    const { mould, area } = await ground()
    await Promise.all(Array.from({ length: 5 }, () => sketchPatch(ada, sketch(mould.id, area.id))))
    const numbers = (await listPatches(ada, { mouldId: mould.id })).rows.map((patch) => patch.number)
    expect(numbers).toEqual([5, 4, 3, 2, 1])
  })

  test('a new version stands beside the earlier ones', async () => {
    const { mould, area, planId, patchId } = await sketched()
    const next = sketch(mould.id, area.id, { patchId, taper: { ratio: 30, mmPerPly: 12.7, use: 'ratio' } })
    await sketchPatch(ada, next)
    const { plans } = await readPatch(ada, { id: patchId })
    expect(plans.map((plan) => [plan.versionNo, plan.id])).toEqual([
      [2, next.id],
      [1, planId],
    ])
  })

  test('a new version stays on its mould and area', async () => {
    const { patchId } = await sketched()
    const other = await ground()
    expect(
      (await refusal(sketchPatch(ada, sketch(other.mould.id, other.area.id, { patchId })))).message,
    ).toMatch(/stays on its mould/)
  })

  test('the stored plan is computed from the mould as it was then', async () => {
    const { mould, planId, patchId } = await sketched()
    await changeMould(ada, { ...mould, heatFreeC: 100, version: 1 })
    expect((await planOf(patchId, planId)).input.heat.freeStandingC).toBe(150)
  })

  test("what can't be planned is refused with the reason, and nothing is kept", async () => {
    const { mould, area } = await ground()
    const wanted = sketch(mould.id, area.id, { pliesFromFace: 2 })
    expect((await refusal(sketchPatch(ada, wanted))).message).toMatch(
      /Worked from the back the cut begins with ply 6/,
    )
    expect(await listPatches(ada, { mouldId: mould.id })).toEqual({ rows: [], matching: 0 })
    const preview = await previewPatch(ada, wanted)
    expect(preview.outcome).toMatchObject({ ok: false })
  })

  test.each([
    ['areaId', { areaId: randomUUID() }],
    ['coverPlies.0.materialId', { coverPlies: [{ materialId: randomUUID(), directionDeg: 0 }] }],
    ['pliesFromFace', { pliesFromFace: 7 }],
  ])('%s that is not there is told at its field', async (field, changes) => {
    const { mould, area } = await ground()
    expect((await refusal(previewPatch(ada, sketch(mould.id, area.id, changes)))).fields).toHaveProperty([
      field,
    ])
  })

  test('a mould without a stack says what is missing', async () => {
    const mould = await aMould({ stackId: null })
    const area = await anArea(mould.id)
    expect((await refusal(previewPatch(ada, sketch(mould.id, area.id)))).message).toMatch(/has no stack yet/)
  })

  test('a patch in the mould is ground for the next one: too near, and both say so', async () => {
    const { mould, area } = await ground()
    await aPatch(mould.id, area.id, 'laid')
    const { outcome } = await previewPatch(ada, sketch(mould.id, area.id))
    const findings = outcome.ok ? outcome.result.findings : []
    expect(findings.some((finding) => finding.text.includes('Patch 1'))).toBe(true)
  })
})

describe('signing', () => {
  test("a stop can't be signed, with any because", async () => {
    const { mould, area } = await ground()
    const { planId, patchId } = await sketchPatch(ada, sketch(mould.id, area.id, { opening: offTheEdge }))
    const becauses = await becausesOf(patchId, planId)
    const refused = await refusal(signPlan(ada, { planId, sawVersion: 1, becauses }))
    expect(refused).toMatchObject({ status: 422, message: expect.stringMatching(/Can't be signed/) })
    expect((await planOf(patchId, planId)).state).toBe('sketched')
  })

  test('every look needs its because; blanks are none', async () => {
    const { planId, patchId } = await sketched()
    const becauses = await becausesOf(patchId, planId)
    const [first] = Object.keys(becauses)
    if (!first) throw new Error('the sample plan has no look')
    expect((await refusal(signPlan(ada, { planId, sawVersion: 1, becauses: {} }))).message).toMatch(
      /Needs a because/,
    )
    const blank = { ...becauses, [first]: '   ' }
    expect((await refusal(signPlan(ada, { planId, sawVersion: 1, becauses: blank }))).status).toBe(422)
    await signPlan(ada, { planId, sawVersion: 1, becauses })
    expect(await planOf(patchId, planId)).toMatchObject({
      state: 'signed',
      signedByName: 'Ada Lead',
      becauses,
    })
  })

  test('by the one who sketched it: marked as self-checked; by another lead: not', async () => {
    const own = await sketched()
    await signPlan(ada, {
      planId: own.planId,
      sawVersion: 1,
      becauses: await becausesOf(own.patchId, own.planId),
    })
    expect((await planOf(own.patchId, own.planId)).selfChecked).toBe(true)
    const other = await sketched()
    await signPlan(ben, {
      planId: other.planId,
      sawVersion: 1,
      becauses: await becausesOf(other.patchId, other.planId),
    })
    expect((await planOf(other.patchId, other.planId)).selfChecked).toBe(false)
  })

  test('sent twice by the same person: signed once, answered alike', async () => {
    const { planId, patchId } = await sketched()
    const becauses = await becausesOf(patchId, planId)
    await Promise.all([1, 2, 3].map(() => signPlan(ada, { planId, sawVersion: 1, becauses })))
    await signPlan(ada, { planId, sawVersion: 1, becauses })
    expect(await planOf(patchId, planId)).toMatchObject({ state: 'signed', version: 2 })
  })

  test('by a second lead at the same version: refused with the state it is in now', async () => {
    const { planId, patchId } = await sketched()
    const becauses = await becausesOf(patchId, planId)
    await signPlan(ada, { planId, sawVersion: 1, becauses })
    const refused = await refusal(signPlan(ben, { planId, sawVersion: 1, becauses }))
    expect(refused.status).toBe(409)
    expect((await planOf(patchId, planId)).signedByName).toBe('Ada Lead')
  })

  test('two leads at once: one signature', async () => {
    const { planId, patchId } = await sketched()
    const becauses = await becausesOf(patchId, planId)
    const sent = await Promise.allSettled(
      [ada, ben].map((lead) => signPlan(lead, { planId, sawVersion: 1, becauses })),
    )
    expect(sent.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    const refused = sent.find((each) => each.status === 'rejected')
    expect(refused?.reason).toMatchObject({ name: 'Refusal', status: 409 })
  })

  test.each(['signed', 'on the bench', 'laid', 'proved'] as const)(
    'a plan that is %s is refused in words, not by an error',
    async (state) => {
      const { mould, area } = await ground()
      const { planId, patchId } = await aPatch(mould.id, area.id, state)
      const { version } = await planOf(patchId, planId)
      const refused = await refusal(
        signPlan(ben, { planId, sawVersion: version, becauses: { anything: 'at all' } }),
      )
      expect(refused).toMatchObject({
        status: 409,
        message: expect.stringMatching(`A plan that is ${state} can't become signed`),
      })
    },
  )

  test('of a plan that is not there: not found', async () => {
    expect((await refusal(signPlan(ada, { planId: randomUUID(), sawVersion: 1, becauses: {} }))).status).toBe(
      404,
    )
  })
})
