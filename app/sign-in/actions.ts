'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { signInBy, signOutHere } from '#lib/web/door'
import type { FormAnswer } from '../ui/action-form'

/** Signs in by e-mail and password; open to everyone. */
export async function signIn(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const email = String(form.get('email') ?? '').trim()
  const password = String(form.get('password') ?? '')
  const to = String(form.get('to') ?? '')
  const refused = { ok: false, typed: { email, to }, fields: {} } as const
  if (email === '' || password === '')
    return { ...refused, message: 'Give your e-mail address and your password' }
  const signedIn = await signInBy(email, password)
  if (!signedIn.ok) {
    return {
      ...refused,
      message:
        signedIn.waitS === null
          ? 'E-mail address and password do not go together, or the access was ended'
          : `That was tried too often. Wait ${signedIn.waitS} ${signedIn.waitS === 1 ? 'second' : 'seconds'}, then sign in again.`,
    }
  }
  redirect((ownPage(to) ? to : '/') as Route)
}

/** A page of this shop, and not an address of somebody else's; a browser drops tabs and line ends from an address. */
function ownPage(to: string): boolean {
  return /^\/(?![/\\])[^\t\n\r]*$/.test(to)
}

/** Ends the session of whoever asks. */
export async function signOut(): Promise<void> {
  await signOutHere()
  redirect('/sign-in')
}
