'use server'
import type { Route } from 'next'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { auth } from '#lib/store/auth'
import type { FormAnswer } from '../ui/action-form'

/** Signs in by e-mail and password; open to everyone. */
export async function signIn(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const email = String(form.get('email') ?? '').trim()
  const password = String(form.get('password') ?? '')
  const to = String(form.get('to') ?? '')
  const refused = { ok: false, typed: { email, to }, fields: {} } as const
  if (email === '' || password === '')
    return { ...refused, message: 'Give your e-mail address and your password' }
  try {
    await auth().api.signInEmail({ body: { email, password }, headers: await headers() })
  } catch (error) {
    if (typeof error === 'object' && error !== null && 'status' in error) {
      return {
        ...refused,
        message: 'E-mail address and password do not go together, or the access was ended',
      }
    }
    throw error
  }
  redirect((ownPage(to) ? to : '/') as Route)
}

/** A page of this shop, and not an address of somebody else's. */
function ownPage(to: string): boolean {
  return /^\/(?![/\\])/.test(to)
}

/** Ends the session of whoever asks. */
export async function signOut(): Promise<void> {
  await auth().api.signOut({ headers: await headers() })
  redirect('/sign-in')
}
