import * as z from 'zod'
import { text, uuid } from './fields'
import { RoleSchema } from './shop'

/** What a token looks like: the sign of the shop and 32 random bytes. */
export const tokenPattern = /^mw_[A-Za-z0-9_-]{43}$/

/**
 * A token is made with the form that asks for it, so that a form sent twice makes one token and both answers show it. Only
 * its hash is stored.
 */
export const NewToken = z.object({
  id: uuid(),
  name: text('what it is for', 80),
  role: RoleSchema,
  token: z.string().regex(tokenPattern, { error: () => 'Load the page again: this form has no token' }),
})
export type NewToken = z.output<typeof NewToken>

export const TokenRef = z.object({ id: uuid() })
