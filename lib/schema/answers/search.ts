import * as z from 'zod'
import { type Hit, hitFits, hitKinds } from '#lib/core/search/index'

export const HitAnswer = z.object({
  kind: z.enum(hitKinds),
  id: z.string(),
  title: z.string().meta({ description: 'By what it is known: a code, "Patch 7", a tag, a serial, a name' }),
  name: z.string(),
  state: z.string().meta({ description: 'How it stands; blank where it has no state' }),
  place: z.string().meta({ description: 'Where it is; blank when that is not known' }),
  detail: z.string(),
  on: z.string().nullable().meta({ description: 'Calendar date in the shop, where it has one' }),
  of: z
    .object({ kind: z.enum(['mould', 'pattern', 'set', 'built-part']), code: z.string() })
    .nullable()
    .meta({ description: 'What it belongs to; null for what stands by itself' }),
  fit: z.enum(hitFits),
}) satisfies z.ZodType<Hit>

export const SearchAnswerSchema = z.object({
  q: z.string(),
  today: z.string().meta({ description: 'Calendar date in the shop' }),
  asked: z.boolean().meta({ description: 'False: no letter and no figure to look for' }),
  groups: z.array(
    z.object({
      kind: z.enum(hitKinds),
      hits: z.array(HitAnswer).meta({ description: 'The best first' }),
      more: z
        .boolean()
        .meta({ description: 'There is more of this kind: ask with `in` and a larger `limit`' }),
    }),
  ),
  exact: HitAnswer.nullable().meta({ description: 'The one thing whose code was typed' }),
  meant: z
    .string()
    .nullable()
    .meta({ description: 'Nothing was found as typed: what was looked for instead' }),
})
