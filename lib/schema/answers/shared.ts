import * as z from 'zod'
import type { Finding, WorkingStep } from '#lib/core/result'

/** What the routes answer, for their description and for tests: the same things as the core's types, as schemas. */

export const severity = z.enum(['stop', 'look', 'note'])

export const FindingAnswer = z.object({
  code: z.string().meta({ description: 'Stable name of the kind of finding' }),
  severity,
  text: z.string(),
  place: z.string().nullable(),
  cure: z.string().nullable(),
  figures: z.record(z.string(), z.union([z.number(), z.array(z.number())])).exactOptional(),
}) satisfies z.ZodType<Finding>

export const WorkingAnswer = z.object({
  symbol: z.string(),
  label: z.string(),
  formula: z.string(),
  numbers: z.string().meta({ description: 'The formula with the figures put in' }),
  value: z.number(),
  unit: z.string(),
  sourceId: z.string(),
}) satisfies z.ZodType<WorkingStep>

export const PointAnswer = z.tuple([z.number(), z.number()]).meta({ description: '[u, v] in mm' })
export const LoopAnswer = z.array(PointAnswer)
export const RegionAnswer = z.object({ outer: LoopAnswer, holes: z.array(LoopAnswer) })
export const BoundsAnswer = z
  .tuple([z.number(), z.number(), z.number(), z.number()])
  .meta({ description: '[uMin, vMin, uMax, vMax] in mm' })

/** RFC 9457 */
export const ProblemAnswer = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  fields: z
    .record(z.string(), z.string())
    .optional()
    .meta({ description: 'What is wrong, by the path of the field' }),
  current: z
    .object({ version: z.int(), values: z.record(z.string(), z.unknown()) })
    .optional()
    .meta({ description: 'On a conflict: what is stored now' }),
  stored: z
    .record(z.string(), z.unknown())
    .optional()
    .meta({ description: 'When an id comes again with other content: what was stored first' }),
  findings: z.array(FindingAnswer).optional(),
})
