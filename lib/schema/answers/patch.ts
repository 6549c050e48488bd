import * as z from 'zod'
import type { PatchPlan } from '#lib/core/repair/types'
import type { Result } from '#lib/core/result'
import { PlyMaterialSchema } from '../material'
import { BoundsAnswer, FindingAnswer, RegionAnswer, WorkingAnswer } from './shared'

const regions = () => z.array(RegionAnswer)

const PlannedPlyAnswer = z.object({
  layingOrder: z.int().meta({ description: '1 is laid first, at the bottom of the recess' }),
  replaces: z.int().nullable().meta({ description: 'The parent ply that it replaces; null: a cover ply' }),
  material: PlyMaterialSchema,
  directionDeg: z.number(),
  thicknessMm: z.number(),
  stepMm: z.number(),
  growthMm: z.number(),
  outline: regions(),
  areaMm2: z.number(),
  perimeterMm: z.number(),
  boundsMm: BoundsAnswer,
  acrossMm: z.tuple([z.number(), z.number()]),
  areaOutsideMm2: z.number(),
  distanceToEdgeMm: z.number(),
})

const LengthsAnswer = z.object({
  nominalThicknessMm: z.number(),
  measuredThicknessMm: z.number().nullable(),
  measuredSpreadMm: z.number().nullable(),
  differencePercent: z.number().nullable(),
  byRatioNominalMm: z.number(),
  byRatioMm: z.number(),
  byMmPerPlyMm: z.number(),
  lengthMm: z.number(),
  governs: z.enum(['ratio', 'mm-per-ply']),
  ratioReached: z.number(),
  shortByMm: z.number(),
  ratioOfMmPerPly: z.array(z.number()),
})

const TakeOffAnswer = z.object({
  material: PlyMaterialSchema,
  netAreaM2: z.number(),
  grossAreaM2: z.number(),
  rollLengthM: z.number(),
  massKg: z.number(),
  offcutShare: z.number(),
  strips: z.array(
    z.object({
      lengthMm: z.number(),
      usedWidthMm: z.number(),
      pieces: z.array(
        z.object({
          layingOrder: z.int(),
          alongMm: z.number(),
          acrossMm: z.number(),
          offsetAcrossMm: z.number(),
        }),
      ),
    }),
  ),
})

const JobLineAnswer = z.object({
  code: z.string(),
  title: z.string(),
  detail: z.string(),
  cautions: z.array(z.string()),
  secondPerson: z.boolean(),
})

const SectionAnswer = z.object({
  layingOrder: z.int(),
  fromMm: z.number(),
  toMm: z.number(),
  bottomMm: z.number(),
  topMm: z.number(),
  kind: z.enum(['ply', 'cover']),
})

/** A plan with its working and findings in one object. */
export const PatchAnswer = z.object({
  lengths: LengthsAnswer,
  plies: z.array(PlannedPlyAnswer),
  opening: RegionAnswer,
  openingAreaMm2: z.number(),
  face: regions().meta({ description: 'What breaks the tool face' }),
  footprint: regions().meta({ description: 'What must fit the back, cover plies included' }),
  footprintAreaMm2: z.number(),
  builtThicknessMm: z.number(),
  takeOff: z.array(TakeOffAnswer),
  jobLines: z.array(JobLineAnswer),
  section: z.array(SectionAnswer),
  place: z.string(),
  method: z.string(),
  working: z.array(WorkingAnswer),
  findings: z.array(FindingAnswer),
  calculationVersion: z.string(),
}) satisfies z.ZodType<PatchPlan & Omit<Result<unknown>, 'value'> & { calculationVersion: string }>
export type PatchAnswer = PatchPlan &
  Omit<Result<PatchPlan>, 'value'> & { readonly calculationVersion: string }
