import type { Role } from './shop'

/** Who acts: a signed-in person, or a script by its token (then there is no person id). */
export interface Actor {
  readonly id: string | null
  readonly name: string
  readonly role: Role
}
