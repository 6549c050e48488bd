import * as z from 'zod'
import { counterClockwise, grow } from '#lib/core/geometry/index'
import { Refusal } from '#lib/store/errors'
import { everyone, verb } from './verb'

const InsetRequest = z.object({
  boundary: z.array(z.tuple([z.number(), z.number()])).min(3),
  insetMm: z.number().positive(),
})

/** A line inside a boundary at a fixed distance: the usual trim line. Refused where nothing is left. */
export const insetLine = verb(
  'areas.inset',
  everyone,
  InsetRequest,
  async (_actor, { boundary, insetMm }) => {
    const pieces = grow([{ outer: counterClockwise(boundary), holes: [] }], -insetMm)
    const [only] = pieces
    if (!only || pieces.length > 1) {
      throw new Refusal(
        pieces.length === 0
          ? `Nothing is left ${insetMm} mm inside the boundary`
          : `The boundary falls into ${pieces.length} pieces ${insetMm} mm inside; draw the line by its points`,
      )
    }
    return only.outer
  },
)
