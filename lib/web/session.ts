import 'server-only'
import type { Route } from 'next'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { cache } from 'react'
import { hasPeople } from '#lib/store/people'
import { type SignedIn, signedInBy } from './signed-in'

export type { SignedIn }

/** Who is signed in by cookie, or null. Asked once a render. */
export const signedIn = cache(async (): Promise<SignedIn | null> => signedInBy(await headers()))

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
