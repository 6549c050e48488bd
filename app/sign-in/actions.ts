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
  const refused = { ok: false, typed: { email }, fields: {} } as const
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
  redirect('/' as Route)
}

/** Ends the session of whoever asks. */
export async function signOut(): Promise<void> {
  await auth().api.signOut({ headers: await headers() })
  redirect('/sign-in')
}
