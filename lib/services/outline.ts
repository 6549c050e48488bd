import * as z from 'zod'
import { grow, regionsArea } from '#lib/core/geometry/index'
import { readOutline as read } from '#lib/exchange/outline/index'
import { OffsetRequest, OutlineRequest } from '#lib/schema/patch'
import { everyone, verb } from './verb'

const OutlineFile = OutlineRequest.pick({ name: true, unit: true }).safeExtend({
  bytes: z.instanceof(Uint8Array),
})

/** Reads the outline of an opening from a file; keeps nothing. */
export const readOutline = verb('outline.read', everyone, OutlineFile, async (_actor, file) => read(file))

/** Reads the outline of an opening from pasted text; keeps nothing. */
export const readOutlineText = verb('outline.read-text', everyone, OutlineRequest, async (_actor, pasted) =>
  read(pasted),
)

/** Grows and shrinks an outline by true offsets with round corners; keeps nothing. */
export const computeOffsets = verb('outline.offset', everyone, OffsetRequest, async (_actor, request) => ({
  offsets: request.growMm.map((growMm) => {
    const regions = grow([{ outer: request.outer, holes: request.holes }], growMm)
    return { growMm, pieces: regions.length, areaMm2: regionsArea(regions), regions }
  }),
}))
