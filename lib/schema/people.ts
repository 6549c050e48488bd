import * as z from 'zod'
import { text, uuid } from './fields'
import { currency, RoleSchema, timeZone } from './shop'

const email = () => z.email({ error: () => 'Give an e-mail address' }).max(200)
const password = () =>
  z
    .string()
    .min(12, { error: () => 'At least 12 signs; a short sentence is good' })
    .max(200, { error: () => 'At most 200 signs' })

export const FirstLead = z.object({
  code: text('the one-time code that the start printed', 100),
  shopName: text('the name of the shop'),
  timeZone: timeZone(),
  currency: currency(),
  name: text('your name'),
  initials: text('initials', 4),
  email: email(),
  password: password(),
})
export type FirstLead = z.output<typeof FirstLead>

export const NewPerson = z.object({
  id: uuid(),
  name: text('a name'),
  initials: text('initials', 4),
  email: email(),
  role: RoleSchema,
  password: password(),
})
export type NewPerson = z.output<typeof NewPerson>

export const PersonChange = z.object({
  id: uuid(),
  version: z.int(),
  name: text('a name'),
  initials: text('initials', 4),
  role: RoleSchema,
  ended: z.boolean(),
})
export type PersonChange = z.output<typeof PersonChange>

export const NewPassword = z.object({ id: uuid(), password: password() })
export type NewPassword = z.output<typeof NewPassword>
