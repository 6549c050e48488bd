import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { Role } from '#lib/schema/shop'
import { auth } from '#lib/store/auth'

/** A signed-in person, with what the page head shows of them. */
export interface SignedIn extends Actor {
  readonly id: string
  readonly initials: string
}

/** Who is signed in by the cookie among these headers, or null. */
export async function signedInBy(sent: Headers): Promise<SignedIn | null> {
  const session = await auth().api.getSession({ headers: sent })
  if (!session) return null
  const { id, name, role, initials, endedAt } = session.user
  if (endedAt) return null
  return { id, name, role: role as Role, initials: initials ?? '' }
}
