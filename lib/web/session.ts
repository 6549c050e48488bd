import 'server-only'
import type { Route } from 'next'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { cache } from 'react'
import type { Actor } from '#lib/schema/actor'
import type { Role } from '#lib/schema/shop'
import { auth } from '#lib/store/auth'
import { hasPeople } from '#lib/store/people'

/** A signed-in person, with what the page head shows of them. */
export interface SignedIn extends Actor {
  readonly id: string
  readonly initials: string
}

/** Who is signed in by cookie, or null. Asked once a render. */
export const signedIn = cache(async (): Promise<SignedIn | null> => signedInBy(await headers()))

/** Who is signed in by the cookie among these headers, or null. */
export async function signedInBy(sent: Headers): Promise<SignedIn | null> {
  const session = await auth().api.getSession({ headers: sent })
  if (!session) return null
  const { id, name, role, initials, endedAt } = session.user
  if (endedAt) return null
  return { id, name, role: role as Role, initials: initials ?? '' }
}

/**
 * The actor of a page or an action; goes to the sign-in, or to the first lead's page on a new shop. A page that is
 * reached from a label or a sheet names itself in `here`: signing in leads back to it.
 */
export async function requireActor(here?: string): Promise<SignedIn> {
  const actor = await signedIn()
  if (actor) return actor
  const signIn = here ? `/sign-in?to=${encodeURIComponent(here)}` : '/sign-in'
  redirect(((await hasPeople()) ? signIn : '/first-lead') as Route)
}
