import * as z from 'zod'
import type { JoinFigures } from '#lib/core/joint/index'
import type { PlateFigures } from '#lib/core/laminate/plate/index'
import type { Result } from '#lib/core/result'
import { FindingAnswer, WorkingAnswer } from './shared'

const row = z.tuple([z.number(), z.number(), z.number()])
const matrix = z.tuple([row, row, row])
const told = {
  method: z.string(),
  working: z.array(WorkingAnswer),
  findings: z.array(FindingAnswer),
  calculationVersion: z.string(),
}
type Told<Value> = Value & Omit<Result<Value>, 'value'> & { readonly calculationVersion: string }

/** Stiffness, constants, expansion and warp of a stack, with working and findings; rows in the order u, v, shear. */
export const PlateAnswer = z.object({
  thicknessMm: z.number(),
  a: matrix,
  b: matrix,
  d: matrix,
  constants: z.object({
    exMPa: z.number(),
    eyMPa: z.number(),
    gxyMPa: z.number(),
    nuXy: z.number(),
    nuYx: z.number(),
    exBendingMPa: z.number(),
    eyBendingMPa: z.number(),
    gxyBendingMPa: z.number(),
  }),
  expansionPerK: row,
  thermal: z.object({ forcesNPerMm: row, momentsN: row, strains: row, curvaturesPerMm: row }).nullable(),
  ...told,
}) satisfies z.ZodType<Told<PlateFigures>>

/** Figures of a joint by name, unit in the name, with working and findings. */
export const JoinAnswer = z.object({
  figures: z.record(z.string(), z.number().nullable()),
  ...told,
}) satisfies z.ZodType<Told<JoinFigures>>
