import * as z from 'zod'
import { edges, sides } from '#lib/core/repair/types'
import {
  angleDeg,
  choice,
  count,
  freeText,
  isoDate,
  lengthMm,
  loop,
  plainNumber,
  quantity,
  temperatureC,
  text,
  uuid,
} from './fields'
import { OpeningSource } from './opening'

/** The request of compute/patch and the source of an opening, which are long enough for files of their own. */
export { OpeningSource } from './opening'
export { PatchInputSchema } from './patch-request'

export const TaperSchema = z.object({
  ratio: quantity('ratio', { min: 1, max: 500 }),
  mmPerPly: lengthMm({ min: 0.1, max: 500 }),
  use: choice(['ratio', 'mm-per-ply', 'longer']),
})

/** What a person asks for when sketching a plan. */
export const PatchSketch = z.object({
  /** Id of the plan version to be written. */
  id: uuid(),
  /** Id of the patch: a new one, or the one that gets a new version. */
  patchId: uuid(),
  mouldId: uuid(),
  areaId: uuid(),
  title: text('a title, for example Opening round D02', 120),
  reason: freeText(1000),
  side: choice(sides),
  edge: choice(edges),
  taper: TaperSchema,
  opening: OpeningSource,
  /** Taken from the stored readings when empty. */
  measuredThicknessMm: z.array(lengthMm({ min: 0.05, max: 100 })).max(200),
  /** How many plies are taken out, counted from the face when worked from it; null: all of them. */
  pliesFromFace: z.int().min(1).max(60).nullable(),
  coverPlies: z
    .array(z.object({ materialId: uuid(), directionDeg: angleDeg({ min: -179.99, max: 180 }) }))
    .max(10),
  nextPartCureC: temperatureC({ min: 10, max: 400 }).nullable(),
  note: freeText(2000),
})
export type PatchSketch = z.output<typeof PatchSketch>

/** A look is signed with a because, filed under the finding's code and place (`becauseKey`). */
export const SignPlan = z.object({
  planId: uuid(),
  sawVersion: z.int(),
  becauses: z.record(z.string(), freeText(500)),
})
export type SignPlan = z.output<typeof SignPlan>

export const PlanAct = z.object({ planId: uuid(), sawVersion: z.int() })
export type PlanAct = z.output<typeof PlanAct>

export const PutBy = PlanAct.safeExtend({ reason: text('a reason', 500) })
export type PutBy = z.output<typeof PutBy>

export const TickLine = z.object({
  planId: uuid(),
  position: count({ min: 1, max: 500 }),
  ticked: z.boolean(),
  note: freeText(300),
})
export type TickLine = z.output<typeof TickLine>

/**
 * What a material was laid from: a lot of the stores with the area that was taken, or the words of a lot that the
 * stores don't keep. A row with neither says nothing.
 */
const LaidLot = z.object({
  material: text('a material', 80),
  lot: freeText(80),
  lotId: uuid().nullable().optional(),
  areaM2: quantity('area', { min: 0.0001, max: 1000 }).nullable().optional(),
  /** Said of a lot that is out of life. */
  because: freeText(500).optional(),
})
export type LaidLot = z.output<typeof LaidLot>

export const LayPatch = PlanAct.safeExtend({
  /** Id of the log entry to be written. */
  entryId: uuid(),
  doneOn: isoDate(),
  lots: z
    .array(LaidLot)
    .min(1, { error: () => 'Give the lot of each material' })
    .max(20),
  note: freeText(2000),
})
export type LayPatch = z.output<typeof LayPatch>

export const ProvePatch = PlanAct.safeExtend({
  entryId: uuid(),
  doneOn: isoDate(),
  note: freeText(2000),
})
export type ProvePatch = z.output<typeof ProvePatch>

/** What `read/outline` takes as JSON; a file can also be sent as multipart form data or as the body itself. */
export const OutlineRequest = z.object({
  name: text('the name of the file', 200),
  text: z
    .string({ error: () => 'Give the text of the file' })
    .max(8 * 1024 * 1024, { error: () => 'At most 8 MB' }),
  unit: choice(['mm', 'cm', 'm', 'in']).nullable().prefault(null),
})

export const OffsetRequest = z.object({
  unit: z.literal('mm').prefault('mm'),
  outer: loop(),
  holes: z.array(loop()).max(100).prefault([]),
  growMm: z
    .array(plainNumber({ min: -10_000, max: 10_000 }))
    .min(1)
    .max(100),
})
