import type { Role } from '#lib/schema/shop'
import accounts from '../accounts.json'
import { idOf } from '../base/ids'

export interface DemoPerson {
  readonly id: string
  readonly name: string
  readonly initials: string
  readonly email: string
  readonly role: Role
}

/** Those who can sign in; the start makes their passwords. */
export const accountPeople: readonly DemoPerson[] = accounts.map((account) => ({
  ...account,
  id: idOf(`person/${account.initials}`),
  role: account.role as Role,
}))

/** Who has left: their names stay on what they wrote. */
export const leavers: readonly (DemoPerson & { readonly endedAt: string })[] = [
  {
    id: idOf('person/AW'),
    name: 'Aldo Wren',
    initials: 'AW',
    email: 'aldo.wren@example.org',
    role: 'lead',
    endedAt: '2024-08-30T15:00:00Z',
  },
  {
    id: idOf('person/JR'),
    name: 'Jonna Reims',
    initials: 'JR',
    email: 'jonna.reims@example.org',
    role: 'laminator',
    endedAt: '2025-07-31T15:00:00Z',
  },
]

/** Initials of those who write in the book. */
export type Who = 'MO' | 'SL' | 'TA' | 'RN' | 'AW' | 'JR'

export function personOf(who: Who): DemoPerson {
  const person = [...accountPeople, ...leavers].find(({ initials }) => initials === who)
  if (!person) throw new Error(`accounts.json has nobody with the initials ${who}`)
  return person
}
