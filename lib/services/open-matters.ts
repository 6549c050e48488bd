import 'server-only'
import * as z from 'zod'
import { countOpenMatters, listOpenMatters, type NamedMatter } from '#lib/store/open-matters'
import { shopContext } from './shop'
import { everyone, verb } from './verb'

/** Open matters of some moulds or of a pattern, the most overdue on top. */
export const openMatters = verb(
  'matters.open',
  everyone,
  z.union([z.object({ mouldIds: z.array(z.uuid()) }), z.object({ patternId: z.uuid() })]),
  (_actor, of): Promise<NamedMatter[]> => listOpenMatters(of),
)

export interface MattersPage {
  readonly matters: readonly NamedMatter[]
  readonly total: number
  readonly page: number
  readonly pages: number
  /** The shop's day. */
  readonly today: string
}

/** Open matters of the whole shop, a page at a time, the most overdue on top. */
export const listMatters = verb(
  'matters.list',
  everyone,
  z.object({ page: z.int().min(1).optional(), size: z.int().min(1).max(200).optional() }),
  async (_actor, { page = 1, size = 60 }): Promise<MattersPage> => {
    const [matters, total, { today }] = await Promise.all([
      listOpenMatters(null, { limit: size, offset: (page - 1) * size }),
      countOpenMatters(),
      shopContext(),
    ])
    return { matters, total, page, pages: Math.max(1, Math.ceil(total / size)), today }
  },
)
