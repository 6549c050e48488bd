import { randomUUID } from 'node:crypto'
import { becauseKey } from '#lib/core/repair/index'
import type { PatchSketch } from '#lib/schema/patch'
import { addReadings } from '#lib/services/moulds'
import { benchPlan, layPatch, provePatch, signPlan } from '#lib/services/patch-steps'
import { readPatch, sketchPatch } from '#lib/services/patches'
import { db } from '#lib/store/db'
import { ada, aMould, anArea, lam } from './book'

/** Patches of the test shop and their plans. */

export function sketch(mouldId: string, areaId: string, changes: Partial<PatchSketch> = {}): PatchSketch {
  return {
    id: randomUUID(),
    patchId: randomUUID(),
    mouldId,
    areaId,
    title: 'Opening round D02',
    reason: 'D02 moved',
    side: 'pattern-back',
    edge: 'scarf',
    taper: { ratio: 20, mmPerPly: 12.7, use: 'ratio' },
    opening: { kind: 'circle', diameterMm: 60, placement: { shiftMm: [0, 0], turnDeg: 0, mirrored: false } },
    measuredThicknessMm: [],
    pliesFromFace: null,
    coverPlies: [],
    nextPartCureC: null,
    note: '',
    ...changes,
  }
}

/** Becauses for every look of a plan. */
export async function becausesOf(patchId: string, planId: string): Promise<Record<string, string>> {
  const plan = await planOf(patchId, planId)
  const looks = plan.result.findings.filter((finding) => finding.severity === 'look')
  return Object.fromEntries(looks.map((look) => [becauseKey(look), 'seen and accepted']))
}

export async function planOf(patchId: string, planId: string) {
  const plan = (await readPatch(ada, { id: patchId })).plans.find((each) => each.id === planId)
  if (!plan) throw new Error('no such plan')
  return plan
}

/** Ticks every line at once; line by line it is tested with the plans. */
export async function tickAll(planId: string): Promise<void> {
  await db().sql`
    update job_line set ticked_by_id = ${lam.id}, ticked_by_name = ${lam.name}, ticked_at = now(), tick_note = 'Vi looked'
    where plan_id = ${planId}`
}

export async function lotsOf(patchId: string, planId: string) {
  const plan = await planOf(patchId, planId)
  return plan.result.value.takeOff.map(({ material }) => ({ material: material.name, lot: 'L1' }))
}

export type Reach = 'sketched' | 'signed' | 'on the bench' | 'laid' | 'proved'

/** A patch on this mould, taken as far as a state. */
export async function aPatch(
  mouldId: string,
  areaId: string,
  upTo: Reach,
  { on = '2024-06-01', changes = {} as Partial<PatchSketch> } = {},
): Promise<{ patchId: string; planId: string; entryId: string }> {
  const wanted = sketch(mouldId, areaId, changes)
  const { planId, patchId } = await sketchPatch(ada, wanted)
  const entryId = randomUUID()
  const version = async () => (await planOf(patchId, planId)).version
  const steps: readonly [Reach, () => Promise<void>][] = [
    [
      'signed',
      async () =>
        signPlan(ada, { planId, sawVersion: await version(), becauses: await becausesOf(patchId, planId) }),
    ],
    ['on the bench', async () => benchPlan(lam, { planId, sawVersion: await version() })],
    [
      'laid',
      async () => {
        await tickAll(planId)
        await layPatch(lam, {
          planId,
          sawVersion: await version(),
          entryId,
          doneOn: on,
          lots: await lotsOf(patchId, planId),
          note: '',
        })
      },
    ],
    [
      'proved',
      async () =>
        provePatch(lam, { planId, sawVersion: await version(), entryId: randomUUID(), doneOn: on, note: '' }),
    ],
  ]
  const reach = ['sketched', ...steps.map(([state]) => state)].indexOf(upTo)
  for (const [, step] of steps.slice(0, reach)) await step()
  return { patchId, planId, entryId }
}

/** A mould with one measured area. */
export async function ground() {
  const mould = await aMould()
  const area = await anArea(mould.id)
  await readings(area.id, [2.9, 3.0, 3.1])
  return { mould, area }
}

/** A plan that is only sketched. */
export async function sketched() {
  const { mould, area } = await ground()
  const { planId, patchId } = await sketchPatch(ada, sketch(mould.id, area.id))
  return { mould, area, planId, patchId }
}

/** A sketch that runs off its area: the opening itself leaves it, which is a stop. */

async function readings(areaId: string, thicknessMm: readonly number[]): Promise<void> {
  await addReadings(ada, {
    areaId,
    measuredOn: '2024-03-01',
    readings: thicknessMm.map((mm, index) => ({
      id: randomUUID(),
      uMm: index * 10,
      vMm: 0,
      thicknessMm: mm,
    })),
  })
}
