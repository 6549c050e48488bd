import 'server-only'
import * as z from 'zod'
import { listOpenMatters, type NamedMatter } from '#lib/store/open-matters'
import { everyone, verb } from './verb'

/** Open matters of some moulds, of a pattern, or of the whole shop; the most overdue on top. */
export const openMatters = verb(
  'matters.open',
  everyone,
  z.object({ mouldIds: z.array(z.uuid()).optional(), patternId: z.uuid().optional() }),
  (_actor, { mouldIds, patternId }): Promise<NamedMatter[]> =>
    listOpenMatters(mouldIds ? { mouldIds } : patternId ? { patternId } : null),
)
