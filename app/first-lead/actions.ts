'use server'
import type { Route } from 'next'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { fieldErrors, formOf } from '#lib/schema/form'
import { FirstLead } from '#lib/schema/people'
import { setUpShop } from '#lib/services/door'
import { auth } from '#lib/store/auth'
import { Refusal } from '#lib/store/errors'
import { formObject } from '#lib/web/action'
import type { FormAnswer } from '../ui/action-form'

/** Sets up an empty shop for whoever holds the one-time code, and signs the first lead in. */
export async function firstLead(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const { password: _secret, ...typed } = formObject(form)
  const parsed = formOf(FirstLead).safeParse(formObject(form))
  if (!parsed.success) {
    return { ok: false, message: 'Some fields need attention', fields: fieldErrors(parsed.error), typed }
  }
  try {
    await setUpShop(parsed.data)
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, message: error.message, fields: error.fields, typed }
    throw error
  }
  const { email, password } = parsed.data
  await auth().api.signInEmail({ body: { email, password }, headers: await headers() })
  redirect('/' as Route)
}
