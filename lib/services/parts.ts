import * as z from 'zod'
import { PartInput } from '#lib/schema/mould'
import {
  addPart as insertPart,
  listPartRows as readPartRows,
  listParts as readParts,
  changePart as updatePart,
} from '#lib/store/parts'
import { codeTaken, told } from './shop'
import { everyone, leads, verb } from './verb'

const partRules = { part_code_key: codeTaken('part') }

export const listParts = verb('parts.list', everyone, z.object({}), () => readParts())

/** The same with what each is made in, and how many the book has of it. */
export const listPartRows = verb('parts.rows', everyone, z.object({}), () => readPartRows())

export const addPart = verb('parts.add', leads, PartInput, (actor, input) =>
  told(insertPart(actor, input), partRules),
)
export const changePart = verb(
  'parts.change',
  leads,
  PartInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updatePart(actor, version, input), partRules),
)
