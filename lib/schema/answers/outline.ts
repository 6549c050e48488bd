import * as z from 'zod'
import { BoundsAnswer, FindingAnswer, LoopAnswer, RegionAnswer } from './shared'

export const OutlineAnswer = z.object({
  verdict: z.enum(['accept', 'accept-with-notice', 'ask', 'refuse']),
  unit: z
    .string()
    .nullable()
    .meta({ description: 'Found in the file or chosen; null when nothing tells it' }),
  loops: z.array(
    z.object({
      role: z.enum(['outer', 'hole']),
      points: LoopAnswer,
      areaMm2: z.number(),
      perimeterMm: z.number(),
      boundsMm: BoundsAnswer,
    }),
  ),
  dropped: z.int().meta({ description: 'Doubled and empty pieces that were left out' }),
  layers: z
    .array(
      z.object({
        name: z.string(),
        pieces: z.int(),
        state: z.enum(['read', 'off', 'frozen', 'not-chosen']),
      }),
    )
    .optional()
    .meta({ description: 'Of a DXF: its layers, how much lies on each, and whether that was read' }),
  findings: z.array(FindingAnswer),
})

export const OffsetAnswer = z.object({
  offsets: z.array(
    z.object({
      growMm: z.number(),
      pieces: z.int(),
      areaMm2: z.number(),
      regions: z.array(RegionAnswer),
    }),
  ),
})
