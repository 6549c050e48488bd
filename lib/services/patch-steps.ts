import { mayMove, movesFrom, type PlanState } from '#lib/core/repair/index'
import type { Actor } from '#lib/schema/actor'
import { type LaidLot, LayPatch, PlanAct, ProvePatch, PutBy, SignPlan, TickLine } from '#lib/schema/patch'
import { Refusal, violatedConstraint } from '#lib/store/errors'
import type { LotUsing } from '#lib/store/lot-moves'
import { readLot } from '#lib/store/lots'
import { readPlan, type StoredPlan } from '#lib/store/patches'
import {
  didStep,
  stepPlanWithEntry,
  benchPlan as stepToBench,
  putByPlan as stepToPutBy,
  signPlan as stepToSigned,
  tickLine as writeTick,
} from '#lib/store/plan-steps'
import { orderInDay } from './log'
import { shopContext } from './shop'
import { hands, leads, verb } from './verb'

export const signPlan = verb('patches.sign', leads, SignPlan, (actor, { planId, sawVersion, becauses }) =>
  stepOnce(actor, planId, sawVersion, 'signed', async (plan) => {
    const given = Object.fromEntries(Object.entries(becauses).filter(([, because]) => because.trim() !== ''))
    mustMove({ ...plan, becauses: given }, 'signed', null)
    const selfChecked = plan.createdById !== null && plan.createdById === actor.id
    await stepToSigned(actor, planId, sawVersion, given, selfChecked)
  }),
)

export const benchPlan = verb('patches.bench', hands, PlanAct, (actor, { planId, sawVersion }) =>
  stepOnce(actor, planId, sawVersion, 'on the bench', async (plan) => {
    mustMove(plan, 'on the bench', null)
    try {
      await stepToBench(actor, planId, sawVersion)
    } catch (error) {
      if (violatedConstraint(error) !== 'patch_plan_in_work_key') throw error
      throw new Refusal('Another version of this patch is in work already', { status: 409 })
    }
  }),
)

export const putByPlan = verb('patches.put-by', leads, PutBy, (actor, { planId, sawVersion, reason }) =>
  stepOnce(actor, planId, sawVersion, 'put by', async (plan) => {
    mustMove(plan, 'put by', reason)
    await stepToPutBy(actor, planId, sawVersion, reason)
  }),
)

/** Takes a step once: sent again by the same person, also at the same moment, it is answered as done. */
async function stepOnce(
  actor: Actor,
  planId: string,
  sawVersion: number,
  to: 'signed' | 'on the bench' | 'put by',
  step: (plan: PlanWithPatch) => Promise<void>,
): Promise<void> {
  const plan = await planOf(planId)
  if (await didStep(actor, plan, sawVersion, to)) return
  try {
    await step(plan)
  } catch (error) {
    const conflict = error instanceof Refusal && error.status === 409
    if (!conflict || !(await didStep(actor, await planOf(planId), sawVersion, to))) throw error
  }
}

export const tickLine = verb(
  'patches.tick',
  hands,
  TickLine,
  async (actor, { planId, position, ticked, note }) => {
    const plan = await planOf(planId)
    if (plan.state !== 'on the bench' && plan.state !== 'laid') {
      throw new Refusal(`Lines are ticked on the bench; this plan is ${plan.state}`)
    }
    const line = plan.lines.find((candidate) => candidate.position === position)
    if (!line) throw new Refusal('There is no such line', { status: 404 })
    if (ticked && line.secondPerson && note.trim() === '') {
      throw new Refusal('A second person looks at this line: write who in the note', {
        fields: { note: 'Who looked?' },
      })
    }
    await writeTick(actor, planId, position, ticked, note)
  },
)

/** The patch is in the mould: writes the log entry with the lots, and the plan is laid. */
export const layPatch = verb('patches.lay', hands, LayPatch, async (actor, input) => {
  const plan = await planOf(input.planId)
  if (plan.laidEntryId !== input.entryId) mustMove(plan, 'laid', null)
  const names = plan.result.value.takeOff.map(({ material }) => material.name)
  const laid = await laidLots(names, input.lots)
  await writeStep(
    actor,
    plan,
    'laid',
    { ...input, note: [input.note, ...laid.becauses].filter((line) => line !== '').join('\n') },
    { kind: 'patch-laid', data: { planId: plan.id, number: plan.patch.number, lots: laid.lots } },
    laid.uses,
  )
})

/** What the rows of the form say was laid; every fault is told at its field. */
async function laidLots(materials: readonly string[], rows: readonly LaidLot[]) {
  const fields: Record<string, string> = {}
  const lots: { material: string; lot: string }[] = []
  const uses: LotUsing[] = []
  const becauses: string[] = []
  for (const [index, row] of rows.entries()) {
    const at = (name: string) => `lots.${index}.${name}`
    const lotId = row.lotId ?? null
    const areaM2 = row.areaM2 ?? null
    if (lotId === null) {
      if (row.lot !== '') lots.push({ material: row.material, lot: row.lot })
      continue
    }
    const kept = await readLot(lotId)
    if (!kept || kept.subjectName !== row.material) {
      fields[at('lotId')] = `Not a lot of ${row.material}; choose again`
      continue
    }
    if (row.lot !== '') fields[at('lot')] = 'Either a lot of the stores, or the words of another one'
    if (areaM2 === null) fields[at('areaM2')] = 'Give the area that was taken from it'
    const because = row.because?.trim() ?? ''
    if (because !== '') becauses.push(`${kept.subjectCode ?? row.material}, lot ${kept.lot}: ${because}`)
    lots.push({ material: row.material, lot: kept.lot })
    uses.push({
      lotId,
      amount: areaM2 ?? 0,
      because,
      fields: { amount: at('areaM2'), because: at('because') },
    })
  }
  const given = new Set([
    ...lots.map((lot) => lot.material),
    ...rows.filter((row) => row.lotId).map((row) => row.material),
  ])
  const missing = materials.filter((name) => !given.has(name))
  for (const name of missing) {
    const index = rows.findIndex((row) => row.material === name)
    fields[index < 0 ? 'lots' : `lots.${index}.lot`] = 'Every material needs its lot'
  }
  if (missing.length > 0) throw new Refusal(`Give the lot of ${missing.join(' and ')}`, { fields })
  if (Object.keys(fields).length > 0) throw new Refusal('The lots need attention', { fields })
  return { lots, uses, becauses }
}

/** The first pull came off well: the patch is trusted from now on. */
export const provePatch = verb('patches.prove', hands, ProvePatch, async (actor, input) => {
  const plan = await planOf(input.planId)
  if (plan.provedEntryId !== input.entryId) mustMove(plan, 'proved', null)
  await writeStep(actor, plan, 'proved', input, {
    kind: 'proved',
    data: { planId: plan.id, number: plan.patch.number },
  })
})

type PlanWithPatch = NonNullable<Awaited<ReturnType<typeof readPlan>>>

async function planOf(planId: string): Promise<PlanWithPatch> {
  const plan = await readPlan(planId)
  if (!plan) throw new Refusal('There is no such plan', { status: 404 })
  return plan
}

/** Refuses a move that the plan's state does not allow (409), or that its findings, ticks or reason don't yet (422). */
function mustMove(plan: StoredPlan, to: PlanState, reason: string | null): void {
  const allowed = mayMove(plan.state, to, {
    findings: plan.result.findings,
    becauses: plan.becauses,
    jobLines: plan.lines,
    ticked: plan.lines.filter((line) => line.tickedAt !== null).map((line) => line.code),
    reason,
  })
  if (allowed.ok) return
  const possible = movesFrom(plan.state).some((move) => move.to === to)
  throw new Refusal(allowed.reason, { status: possible ? 422 : 409 })
}

async function writeStep(
  actor: Actor,
  plan: PlanWithPatch,
  to: 'laid' | 'proved',
  input: {
    readonly sawVersion: number
    readonly entryId: string
    readonly doneOn: string
    readonly note: string
  },
  what:
    | {
        readonly kind: 'patch-laid'
        readonly data: { planId: string; number: number; lots: { material: string; lot: string }[] }
      }
    | { readonly kind: 'proved'; readonly data: { planId: string; number: number } },
  uses: readonly LotUsing[] = [],
): Promise<void> {
  const context = await shopContext()
  const day = { doneOn: input.doneOn, doneAt: null }
  await stepPlanWithEntry(
    actor,
    plan.id,
    input.sawVersion,
    to,
    {
      dayOrder: orderInDay(day, context),
      entry: {
        id: input.entryId,
        mouldId: plan.patch.mouldId,
        areaId: plan.patch.areaId,
        patchId: plan.patch.id,
        ...day,
        precision: 'day',
        correctsId: null,
        note: input.note,
        sawVersion: null,
        ...what,
      },
    },
    uses,
  )
}
