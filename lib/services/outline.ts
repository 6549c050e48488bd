import * as z from 'zod'
import { grow, regionsArea } from '#lib/core/geometry/index'
import { readLoops as readAll, readOutline as readOne } from '#lib/exchange/outline/index'
import { OffsetRequest, OutlineRequest } from '#lib/schema/patch'
import { everyone, verb } from './verb'

const OutlineFile = OutlineRequest.pick({ name: true, unit: true }).safeExtend({
  bytes: z.instanceof(Uint8Array),
})

/** Reads all loops of a file with their roles; keeps nothing. */
export const readLoops = verb('outline.read', everyone, OutlineFile, async (_actor, file) => readAll(file))

/** Reads a file for what is kept as one loop (an opening, a boundary): holes are refused; keeps nothing. */
export const readOutline = verb('outline.read-one', everyone, OutlineFile, async (_actor, file) =>
  readOne(file),
)

/** Reads all loops of pasted text with their roles; keeps nothing. */
export const readLoopsText = verb('outline.read-text', everyone, OutlineRequest, async (_actor, pasted) =>
  readAll(pasted),
)

/** Grows and shrinks an outline by true offsets with round corners; keeps nothing. */
export const computeOffsets = verb('outline.offset', everyone, OffsetRequest, async (_actor, request) => ({
  offsets: request.growMm.map((growMm) => {
    const regions = grow([{ outer: request.outer, holes: request.holes }], growMm)
    return { growMm, pieces: regions.length, areaMm2: regionsArea(regions), regions }
  }),
}))
