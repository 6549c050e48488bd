import * as z from 'zod'
import { angleDeg, freeText, lengthMm, loop, point } from './fields'

/** Where an opening lies: mirrored about its own v axis first, then turned, then shifted. */
export const PlacementSchema = z.object({
  shiftMm: point(),
  turnDeg: angleDeg({ min: -360, max: 360 }),
  mirrored: z.boolean(),
})

/** A round opening about the origin, with where it lies. */
export function circleOpening<Placement extends z.ZodType>(placement: Placement) {
  return z.object({ kind: z.literal('circle'), diameterMm: lengthMm({ min: 1, max: 10_000 }), placement })
}

/** A rectangle about the origin with round corners, with where it lies. */
export function roundedRectangleOpening<Placement extends z.ZodType>(placement: Placement) {
  return z
    .object({
      kind: z.literal('rounded-rectangle'),
      lengthMm: lengthMm({ min: 1, max: 10_000 }),
      widthMm: lengthMm({ min: 1, max: 10_000 }),
      cornerRadiusMm: lengthMm({ min: 0, max: 5_000 }),
      placement,
    })
    .refine((box) => box.cornerRadiusMm <= Math.min(box.lengthMm, box.widthMm) / 2, {
      path: ['cornerRadiusMm'],
      error: () => 'At most half the shorter side',
    })
}

/** Where the outline of an opening came from; stored with the plan. */
export const OpeningSource = z.discriminatedUnion('kind', [
  circleOpening(PlacementSchema),
  roundedRectangleOpening(PlacementSchema),
  z.object({
    kind: z.literal('outline'),
    /** Name of the file, or "pasted". */
    name: freeText(200),
    points: loop(),
    placement: PlacementSchema,
  }),
])
export type OpeningSource = z.output<typeof OpeningSource>
