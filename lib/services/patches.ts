import * as z from 'zod'
import type { Loop, Region } from '#lib/core/geometry/types'
import { mayMove, movesFrom, type PlanState, planPatch } from '#lib/core/repair/index'
import { openingRegion } from '#lib/core/repair/opening'
import type { OldPatch, PatchArea, PatchInput, PatchPlan } from '#lib/core/repair/types'
import { CALCULATION_VERSION, type Outcome, type Result } from '#lib/core/result'
import type { Actor } from '#lib/schema/actor'
import {
  LayPatch,
  type OpeningSource,
  PatchInputSchema,
  PatchSketch,
  PlanAct,
  ProvePatch,
  PutBy,
  SignPlan,
  TickLine,
} from '#lib/schema/patch'
import { Refusal, violatedConstraint } from '#lib/store/errors'
import { currentPoints, type PointIssue, readArea, type StoredArea } from '#lib/store/face'
import { readMould } from '#lib/store/moulds'
import {
  addPlan,
  didStep,
  patchesOnMould,
  listPatches as readPatches,
  readPlan,
  readPatch as readStoredPatch,
  type StoredPlan,
  stepPlanWithEntry,
  benchPlan as stepToBench,
  putByPlan as stepToPutBy,
  signPlan as stepToSigned,
  tickLine as writeTick,
} from '#lib/store/patches'
import { listMaterials, plyMaterial, readStack, stackPlies } from '#lib/store/stores'
import { orderInDay } from './log'
import { shopContext } from './shop'
import { everyone, hands, leads, verb } from './verb'

/** Computes a plan from what is sent alone; reads and writes nothing. */
export const computePatch = verb('patches.compute', everyone, PatchInputSchema, async (_actor, input) =>
  planPatch(input),
)

/** Works out what a sketch would give, from the mould's real stack and face; saves nothing. */
export const previewPatch = verb('patches.preview', everyone, PatchSketch, async (_actor, sketch) => {
  const input = await inputOf(sketch)
  return { input, outcome: planPatch(input) }
})

/** Saves a sketch as a plan: the first version makes the patch, a later one stands beside the earlier ones. */
export const sketchPatch = verb('patches.sketch', leads, PatchSketch, async (actor, sketch) => {
  const input = await inputOf(sketch)
  const result = answered(planPatch(input))
  await addPlan(actor, sketch, { ...sketch, input, result, calculationVersion: CALCULATION_VERSION })
  return { planId: sketch.id, patchId: sketch.patchId }
})

function answered(outcome: Outcome<PatchPlan>): Result<PatchPlan> {
  if (!outcome.ok) throw new Refusal(outcome.reason)
  return outcome.result
}

export const listPatches = verb(
  'patches.list',
  everyone,
  z.object({ mouldId: z.uuid().nullable() }),
  (_actor, { mouldId }) => readPatches(mouldId),
)

export const readPatch = verb(
  'patches.read',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const patch = await readStoredPatch(id)
    if (!patch) throw new Refusal('There is no such patch', { status: 404 })
    return patch
  },
)

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
  const needed = new Set(plan.result.value.takeOff.map((material) => material.material.name))
  for (const lot of input.lots) needed.delete(lot.material)
  if (needed.size > 0) {
    throw new Refusal(`Give the lot of ${[...needed].join(' and ')}`, {
      fields: { lots: 'Every material needs its lot' },
    })
  }
  await writeStep(actor, plan, 'laid', input, {
    kind: 'patch-laid',
    data: { planId: plan.id, number: plan.patch.number, lots: input.lots },
  })
})

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
): Promise<void> {
  const context = await shopContext()
  const day = { doneOn: input.doneOn, doneAt: null }
  await stepPlanWithEntry(actor, plan.id, input.sawVersion, to, {
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
  })
}

/** What the calculation is given: the sketch, and the mould as the book knows it. */
async function inputOf(sketch: PatchSketch): Promise<PatchInput> {
  const [mould, area, points, materials, others, context] = await Promise.all([
    readMould(sketch.mouldId),
    readArea(sketch.areaId),
    currentPoints(sketch.mouldId),
    listMaterials(),
    patchesOnMould(sketch.mouldId),
    shopContext(),
  ])
  if (!mould) throw new Refusal('There is no such mould', { status: 404 })
  if (!area || area.mouldId !== mould.id) {
    throw new Refusal('Choose an area of this mould', { fields: { areaId: 'Choose an area of this mould' } })
  }
  const stackId = area.stackId ?? mould.stackId
  const stack = stackId ? await readStack(stackId) : null
  if (!stack) {
    throw new Refusal(
      `${mould.code} has no stack yet: give the mould or the area ${area.name} one, so that the plies are known`,
      {
        fields: { areaId: 'No stack known here' },
      },
    )
  }
  const plies = stackPlies(stack)
  const cured = stack.plies.map((ply) => ply.material)
  const removed = sketch.pliesFromFace ?? plies.length
  if (removed > plies.length) {
    throw new Refusal(`The stack has ${plies.length} plies`, {
      fields: { pliesFromFace: `At most ${plies.length}` },
    })
  }
  const readings = area.readings.map((reading) => reading.thicknessMm)
  return {
    side: sketch.side,
    edge: sketch.edge,
    opening: openingOf(sketch.opening),
    stack: plies,
    removedPlies: plies.slice(0, removed).map((_ply, index) => index + 1),
    measuredThicknessMm: sketch.measuredThicknessMm.length > 0 ? sketch.measuredThicknessMm : readings,
    taper: sketch.taper,
    coverPlies: sketch.coverPlies.map(({ materialId, directionDeg }, index) => {
      const material = materials.find((candidate) => candidate.id === materialId)
      if (!material)
        throw new Refusal('There is no such material', {
          fields: { [`coverPlies.${index}.materialId`]: 'Choose a material' },
        })
      return { material: plyMaterial(material), directionDeg }
    }),
    area: patchArea(area, points, others, sketch.patchId),
    rules: context.shop.rules.repair,
    heat: { inUseC: mould.heatInUseC, freeStandingC: mould.heatFreeC, bondedC: mould.heatBondedC },
    cure: cured.find((material) => material.cure)?.cure ?? null,
    postCure: cured.find((material) => material.postCure)?.postCure ?? null,
    nextPartCureC: sketch.nextPartCureC ?? mould.partCureC,
    patternAvailable: mould.pattern?.available ?? false,
  }
}

function openingOf(source: OpeningSource): Region {
  try {
    return openingRegion(source)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    const field = source.kind === 'rounded-rectangle' ? 'opening.cornerRadiusMm' : 'opening.diameterMm'
    throw new Refusal(`The opening can't be drawn: ${error.message}`, { fields: { [field]: error.message } })
  }
}

function patchArea(
  area: StoredArea,
  points: PointIssue | null,
  others: Awaited<ReturnType<typeof patchesOnMould>>,
  ownPatchId: string,
): PatchArea {
  const inTheMould = others.filter(
    ({ patch, plan }) =>
      patch.areaId === area.id &&
      patch.id !== ownPatchId &&
      (plan.state === 'laid' || plan.state === 'proved'),
  )
  return {
    name: area.name,
    boundary: area.boundary,
    lines: area.lines,
    keepOuts: area.keepOuts,
    dowels: (points?.points ?? [])
      .filter((point) => point.areaId === area.id && !point.notYetFixed)
      .map((point) => ({
        tag: point.tag,
        at: [point.uMm, point.vMm] as const,
        diameterMm: point.diameterMm,
        bushDiameterMm: point.bushDiameterMm,
        through: point.through,
        isDatum: point.isDatum,
      })),
    oldPatches: inTheMould.flatMap(({ patch, plan }) =>
      pairs(plan.result.value).map(
        ({ face, footprint }): OldPatch => ({ name: `Patch ${patch.number}`, face, footprint }),
      ),
    ),
    grid: { originMm: area.gridOriginMm, cellMm: area.gridCellMm },
  }
}

/** The face and the footprint of a patch, piece by piece; a piece that has no partner is its own. */
function pairs(plan: PatchPlan): { face: Loop; footprint: Loop }[] {
  const count = Math.max(plan.face.length, plan.footprint.length)
  return Array.from({ length: count }, (_, index) => {
    const footprint = plan.footprint[index]?.outer ?? plan.face[index]?.outer ?? []
    return { face: plan.face[index]?.outer ?? footprint, footprint }
  })
}

export { planStates } from '#lib/core/repair/index'
