import * as z from 'zod'
import { hitKinds, longestAsked } from '#lib/core/search/index'
import { asked, choice, count } from './fields'

/** What is sent to search: the words, and where only one kind is wanted, which. */
export const SearchInput = z.object({
  q: asked(longestAsked),
  in: choice(hitKinds).optional(),
  /** Most hits of each kind. */
  limit: count({ min: 1, max: 100 }).optional(),
  /** Only what has a name or a code, few of each, and no look at what else may have been meant: for suggestions. */
  brief: z.boolean().optional(),
})
export type SearchInput = z.output<typeof SearchInput>
