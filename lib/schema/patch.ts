import * as z from 'zod'
import { defaultRepairRules, edges, type PatchInput, sides } from '#lib/core/repair/types'
import {
  angleDeg,
  choice,
  count,
  freeText,
  isoDate,
  lengthMm,
  loop,
  plainNumber,
  point,
  quantity,
  temperatureC,
  text,
  uuid,
} from './fields'
import { CureCycleSchema, PlyMaterialSchema } from './material'
import { FaceLineSchema, KeepOutSchema } from './mould'
import { RepairRulesSchema } from './shop'

const region = () => z.object({ outer: loop(), holes: z.array(loop()).max(100).prefault([]) })

export const TaperSchema = z.object({
  ratio: quantity('ratio', { min: 1, max: 500 }),
  mmPerPly: lengthMm({ min: 0.1, max: 500 }),
  use: choice(['ratio', 'mm-per-ply', 'longer']),
})

const heatLimit = () => temperatureC({ min: 20, max: 400 }).nullable().prefault(null)

const ply = () =>
  z.object({
    material: z.object({
      ...PlyMaterialSchema.shape,
      thickestCureMm: PlyMaterialSchema.shape.thickestCureMm.prefault(null),
    }),
    directionDeg: angleDeg({ min: -179.99, max: 180 }),
  })

/**
 * What `compute/patch` takes: everything the plan depends on, nothing from the database. What is left out is not
 * known (heat limits, cures), not there (lines, dowels, cover plies), or the default of a shop (rules).
 */
export const PatchInputSchema = z.object({
  side: choice(sides),
  edge: choice(edges),
  opening: region(),
  stack: z
    .array(ply())
    .min(1, { error: () => 'A stack has at least one ply' })
    .max(60),
  removedPlies: z.array(z.int().min(1)).min(1, { error: () => 'Say which plies are taken out' }),
  measuredThicknessMm: z
    .array(lengthMm({ min: 0.05, max: 100 }))
    .max(200)
    .prefault([]),
  taper: TaperSchema,
  coverPlies: z.array(ply()).max(10).prefault([]),
  area: z.object({
    name: text('the name of the area', 60),
    boundary: loop(),
    lines: z.array(FaceLineSchema).max(50).prefault([]),
    keepOuts: z.array(KeepOutSchema).max(50).prefault([]),
    dowels: z
      .array(
        z.object({
          tag: text('a tag', 40),
          at: point(),
          diameterMm: lengthMm({ min: 0.1, max: 500 }),
          bushDiameterMm: lengthMm({ min: 0.1, max: 500 }).nullable().prefault(null),
          through: z.boolean().prefault(false),
          isDatum: z.boolean().prefault(false),
        }),
      )
      .max(2000)
      .prefault([]),
    oldPatches: z
      .array(z.object({ name: text('a name', 120), face: loop(), footprint: loop() }))
      .max(500)
      .prefault([]),
    grid: z.object({ originMm: point(), cellMm: lengthMm({ min: 5, max: 1000 }) }),
  }),
  rules: RepairRulesSchema.prefault(defaultRepairRules),
  heat: z.object({ inUseC: heatLimit(), freeStandingC: heatLimit(), bondedC: heatLimit() }).prefault({}),
  cure: CureCycleSchema.nullable().prefault(null),
  postCure: CureCycleSchema.nullable().prefault(null),
  nextPartCureC: temperatureC({ min: 10, max: 400 }).nullable().prefault(null),
  /** False: no pattern to lay against, so a splash comes first. */
  patternAvailable: z.boolean().prefault(true),
}) satisfies z.ZodType<PatchInput, unknown>

/** Where an opening lies: mirrored about its own v axis first, then turned, then shifted. */
export const PlacementSchema = z.object({
  shiftMm: point(),
  turnDeg: angleDeg({ min: -360, max: 360 }),
  mirrored: z.boolean(),
})

/** Where the outline of an opening came from; stored with the plan. */
export const OpeningSource = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('circle'),
    diameterMm: lengthMm({ min: 1, max: 10_000 }),
    placement: PlacementSchema,
  }),
  z
    .object({
      kind: z.literal('rounded-rectangle'),
      lengthMm: lengthMm({ min: 1, max: 10_000 }),
      widthMm: lengthMm({ min: 1, max: 10_000 }),
      cornerRadiusMm: lengthMm({ min: 0, max: 5_000 }),
      placement: PlacementSchema,
    })
    .refine(
      ({ lengthMm: length, widthMm: width, cornerRadiusMm: radius }) => radius <= Math.min(length, width) / 2,
      {
        path: ['cornerRadiusMm'],
        error: () => 'At most half the shorter side',
      },
    ),
  z.object({
    kind: z.literal('outline'),
    /** Name of the file, or "pasted". */
    name: freeText(200),
    points: loop(),
    placement: PlacementSchema,
  }),
])
export type OpeningSource = z.output<typeof OpeningSource>

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

export const LayPatch = PlanAct.safeExtend({
  /** Id of the log entry to be written. */
  entryId: uuid(),
  doneOn: isoDate(),
  lots: z
    .array(z.object({ material: text('a material', 80), lot: text('the lot that was used', 80) }))
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
    .max(10 * 1024 * 1024, { error: () => 'At most 10 MB' }),
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
