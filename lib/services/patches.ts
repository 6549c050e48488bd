import * as z from 'zod'
import { planPatch, planStates } from '#lib/core/repair/index'
import type { PatchPlan } from '#lib/core/repair/types'
import { CALCULATION_VERSION, type Outcome, type Result } from '#lib/core/result'
import { PatchInputSchema, PatchSketch } from '#lib/schema/patch'
import { Refusal } from '#lib/store/errors'
import { addPlan, listPatches as readPatches, readPatch as readStoredPatch } from '#lib/store/patches'
import { inputOf } from './patch-input'
import { asking, everyone, leads, verb } from './verb'

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
  z.object({
    mouldId: z.uuid().nullable(),
    states: z.array(z.enum(planStates)).optional(),
    page: z.int().min(1).optional(),
    size: z.int().min(1).max(500).optional(),
  }),
  (_actor, { mouldId, states = [], page = 1, size = 100 }) => readPatches({ mouldId, states, page, size }),
)

export const readPatch = asking(
  'patches.read',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const patch = await readStoredPatch(id)
    if (!patch) throw new Refusal('There is no such patch', { status: 404 })
    return patch
  },
)

export { planStates }
