import * as z from 'zod'
import type { CureCycle } from '#lib/core/laminate/types'
import {
  angleDeg,
  choice,
  code,
  durationMin,
  freeText,
  lengthMm,
  plainNumber,
  quantity,
  temperatureC,
  text,
  uuid,
} from './fields'

export const CureCycleSchema = z.object({
  name: text('a name for the cycle'),
  segments: z
    .array(
      z.object({
        rampCPerMin: plainNumber({ min: 0.01, max: 20 }),
        toC: temperatureC({ min: 10, max: 400 }),
        holdMin: durationMin({ min: 0, max: 6000 }),
      }),
    )
    .min(1, { error: () => 'A cycle has at least one ramp' })
    .max(20),
  tgAfterC: temperatureC({ min: 20, max: 400 }).nullable(),
}) satisfies z.ZodType<CureCycle>

const fibreContent = z.discriminatedUnion(
  'kind',
  [
    z.object({
      kind: z.literal('fibre-volume'),
      fibreVolumeFraction: quantity('fraction', { min: 0.05, max: 0.85 }),
    }),
    z.object({
      kind: z.literal('resin-mass'),
      resinMassFraction: quantity('fraction', { min: 0.05, max: 0.9 }),
      resinDensityGcm3: quantity('density', { min: 0.5, max: 3 }),
    }),
  ],
  { error: () => 'Give the fibre content as fibre-volume or resin-mass' },
)

/** The figures of a material that the calculations use. */
export const PlyMaterialSchema = z.object({
  name: text('the name of the material'),
  role: choice(['surface', 'bulk']),
  fibreArealWeightGsm: quantity('areal-weight', { min: 10, max: 3000 }),
  fibreDensityGcm3: quantity('density', { min: 0.5, max: 5 }),
  fibreContent,
  rollWidthMm: lengthMm({ min: 50, max: 5000 }),
  thickestCureMm: lengthMm({ min: 0.1, max: 200 }).nullable(),
})

export const MaterialInput = PlyMaterialSchema.safeExtend({
  id: uuid(),
  code: code('a code, for example S200'),
  cure: CureCycleSchema.nullable(),
  postCure: CureCycleSchema.nullable(),
  /** A lot is said to be low below it; null: never. */
  lowBelowM2: quantity('area', { min: 0, max: 10_000 }).nullable(),
  /** Hours out of the freezer that it stands in all; null: not kept frozen, or not known. */
  outLifeH: quantity('hours', { min: 1, max: 20_000 }).nullable(),
  sourceNote: freeText(500),
  /** No longer bought: not offered for new stacks and lots. */
  retired: z.boolean().prefault(false),
})
export type MaterialInput = z.output<typeof MaterialInput>

export const StackInput = z.object({
  id: uuid(),
  code: code('a code, for example M181'),
  name: text('the name of the stack'),
  note: freeText(),
  plies: z
    .array(z.object({ materialId: uuid(), directionDeg: angleDeg({ min: -179.99, max: 180 }) }))
    .min(1, { error: () => 'A stack has at least one ply' })
    .max(60, { error: () => 'At most 60 plies' }),
})
export type StackInput = z.output<typeof StackInput>
