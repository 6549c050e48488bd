import 'server-only'
import * as z from 'zod'
import { HomographyAnswer } from '#lib/schema/answers/homography'
import { JoinAnswer, PlateAnswer } from '#lib/schema/answers/mechanics'
import {
  EntryAnswer,
  HealthAnswer,
  LogAnswer,
  MouldAnswer,
  MouldListAnswer,
  SetLogAnswer,
} from '#lib/schema/answers/mould'
import { OffsetAnswer, OutlineAnswer } from '#lib/schema/answers/outline'
import { PatchAnswer } from '#lib/schema/answers/patch'
import { AddedPictureAnswer, PictureAnswer, PictureListAnswer } from '#lib/schema/answers/picture'
import { HitAnswer, SearchAnswerSchema } from '#lib/schema/answers/search'
import { FindingAnswer, ProblemAnswer, RegionAnswer, WorkingAnswer } from '#lib/schema/answers/shared'
import { HomographyRequest } from '#lib/schema/homography'
import { logRequest, setLogRequest } from '#lib/schema/log-request'
import { JoinRequest, PlateRequest } from '#lib/schema/mechanics'
import { OffsetRequest, OutlineRequest, PatchInputSchema } from '#lib/schema/patch'

/** What is sent, in numbers with the unit in the name: never the text of a form. */
const sent = {
  OutlineRequest,
  PatchRequest: PatchInputSchema,
  OffsetRequest,
  HomographyRequest,
  PlateRequest,
  JoinRequest,
  LogRequest: logRequest({}),
  SetLogRequest: setLogRequest({}),
} as const

const answered = {
  Finding: FindingAnswer,
  WorkingStep: WorkingAnswer,
  Region: RegionAnswer,
  Problem: ProblemAnswer,
  Outline: OutlineAnswer,
  Offsets: OffsetAnswer,
  Homography: HomographyAnswer,
  Plate: PlateAnswer,
  Join: JoinAnswer,
  Patch: PatchAnswer,
  MouldList: MouldListAnswer,
  Mould: MouldAnswer,
  Log: LogAnswer,
  LogEntry: EntryAnswer,
  SetLog: SetLogAnswer,
  SearchHit: HitAnswer,
  Search: SearchAnswerSchema,
  Picture: PictureAnswer,
  PictureList: PictureListAnswer,
  AddedPicture: AddedPictureAnswer,
  Health: HealthAnswer,
} as const

export type SchemaName = keyof typeof sent | keyof typeof answered

export const refTo = (name: SchemaName) => ({ $ref: `#/components/schemas/${name}` })

/** Every named schema as JSON Schema 2020-12, the dialect of OpenAPI 3.1. */
export function jsonSchemas(): Record<string, object> {
  return { ...converted(sent, 'input'), ...converted(answered, 'output') }
}

function converted(
  schemas: Readonly<Record<string, z.ZodType>>,
  io: 'input' | 'output',
): Record<string, object> {
  const registry = z.registry<{ id: string }>()
  for (const [id, schema] of Object.entries(schemas)) registry.add(schema, { id })
  const { schemas: made } = z.toJSONSchema(registry, {
    io,
    uri: (id) => `#/components/schemas/${id}`,
    unrepresentable: 'any',
    // Our own word goes by the name that OpenAPI keeps for such.
    override: ({ jsonSchema }) => {
      if (jsonSchema.quantity === undefined) return
      jsonSchema['x-quantity'] = jsonSchema.quantity
      delete jsonSchema.quantity
    },
  })
  return Object.fromEntries(
    Object.entries(made).map(([id, { $schema: _dialect, $id: _id, ...schema }]) => [id, schema]),
  )
}
