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
