import * as z from 'zod'
import { choice, lengthMm, plainNumber, point, text } from './fields'

/** [x, y] in pixels. Farther than a million pixels off is taken for a slip. */
const pixel = () => z.tuple([plainNumber({ min: -1e6, max: 1e6 }), plainNumber({ min: -1e6, max: 1e6 })])

const mark = z.object({
  tag: text('the tag of the mark, for example D02', 40),
  atPx: pixel(),
  atMm: point(),
})

const radiusMm = lengthMm({ min: 1, max: 1e6 })

/** What `compute/homography` takes. */
export const HomographyRequest = z.object({
  marks: z
    .array(mark)
    .min(4, { error: () => 'Give at least four marks' })
    .max(60, { error: () => 'At most 60 marks' })
    .superRefine((marks, context) => {
      const seen = new Set<string>()
      for (const [index, { tag }] of marks.entries()) {
        if (seen.has(tag)) {
          context.addIssue({ code: 'custom', path: [index, 'tag'], message: `${tag} is there twice` })
        }
        seen.add(tag)
      }
    })
    .meta({ description: 'What is seen in the picture and known on the face' }),
  outlinePx: z
    .array(pixel())
    .min(3, { error: () => 'An outline needs at least three points' })
    .max(20_000, { error: () => 'An outline has at most 20000 points' })
    .nullable()
    .prefault(null),
  pointsPx: z.array(pixel()).max(20_000).prefault([]).meta({ description: 'To be placed on the face' }),
  placesMm: z.array(point()).max(20_000).prefault([]).meta({ description: 'To be found in the picture' }),
  mirrored: z
    .boolean()
    .prefault(false)
    .meta({ description: 'The picture shows the face from the back, or was turned over' }),
  curvature: z
    .discriminatedUnion('kind', [
      z.object({ kind: z.literal('flat') }),
      z.object({ kind: choice(['single', 'double']), radiusMm }),
    ])
    .prefault({ kind: 'flat' })
    .meta({ description: 'How the area is bent; double: the smaller of the two radii' }),
})
export type HomographyRequest = z.output<typeof HomographyRequest>
