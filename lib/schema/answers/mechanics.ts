import * as z from 'zod'
import { FindingAnswer, WorkingAnswer } from './shared'

const row = z.tuple([z.number(), z.number(), z.number()])
const matrix = z.tuple([row, row, row])
const told = { method: z.string(), working: z.array(WorkingAnswer), findings: z.array(FindingAnswer) }

/** Stiffness, constants, expansion and warp of a stack; rows in the order u, v, shear. */
export const PlateAnswer = z.object({
  value: z.object({
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
  }),
  ...told,
})

/** Figures of a joint by name, unit in the name. */
export const JoinAnswer = z.object({ value: z.record(z.string(), z.number().nullable()), ...told })
