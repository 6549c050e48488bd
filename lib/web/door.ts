import 'server-only'
import { headers } from 'next/headers'
import { fieldErrors, formOf } from '#lib/schema/form'
import { FirstLead } from '#lib/schema/people'
import { setUpShop } from '#lib/services/door'
import { auth } from '#lib/store/auth'
import { Refusal } from '#lib/store/errors'
import type { ActionResult } from './action'

/** Whether somebody was let in; if not, and it was tried too often, how many seconds to wait. */
export type SignedInOrNot = { readonly ok: true } | { readonly ok: false; readonly waitS: number | null }

/** Signs in; not where address and password don't go together, the access was ended, or it was tried too often. */
export async function signInBy(email: string, password: string): Promise<SignedInOrNot> {
  try {
    await auth().api.signInEmail({ body: { email, password }, headers: await headers() })
    return { ok: true }
  } catch (error) {
    if (typeof error !== 'object' || error === null || !('status' in error)) throw error
    const waitS = 'body' in error ? (error.body as { waitS?: unknown } | undefined)?.waitS : null
    return { ok: false, waitS: typeof waitS === 'number' ? waitS : null }
  }
}

/** Ends the session of whoever asks. */
export async function signOutHere(): Promise<void> {
  await auth().api.signOut({ headers: await headers() })
}

/** Sets up an empty shop for whoever holds the one-time code, and signs the first lead in. */
export async function openShop({ password, ...typed }: Record<string, unknown>): Promise<ActionResult<null>> {
  const parsed = formOf(FirstLead).safeParse({ ...typed, password })
  if (!parsed.success) {
    return { ok: false, message: 'Some fields need attention', fields: fieldErrors(parsed.error), typed }
  }
  try {
    await setUpShop(parsed.data)
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, message: error.message, fields: error.fields, typed }
    throw error
  }
  await signInBy(parsed.data.email, parsed.data.password)
  return { ok: true, value: null }
}
