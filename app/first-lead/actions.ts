'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { formObject } from '#lib/web/action'
import { openShop } from '#lib/web/door'
import type { FormAnswer } from '../ui/action-form'

/** Sets up an empty shop for whoever holds the one-time code, and signs the first lead in. */
export async function firstLead(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await openShop(formObject(form))
  if (!answer.ok) return answer
  redirect('/' as Route)
}
