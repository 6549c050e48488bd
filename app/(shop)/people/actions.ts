'use server'
import { redirect } from 'next/navigation'
import { addPerson, changePerson, setPassword } from '#lib/services/people'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

/** A password is never sent back to be shown again. */
function unsaid(answer: FormAnswer): FormAnswer {
  if (answer.ok) return answer
  const { password: _secret, ...typed } = answer.typed as Record<string, unknown>
  return { ...answer, typed }
}

export async function add(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(addPerson, formObject(form))
  if (!answer.ok) return unsaid(answer)
  redirect('/people')
}

export async function change(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(changePerson, formObject(form))
  if (!answer.ok) return answer
  redirect('/people')
}

export async function password(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(setPassword, formObject(form))
  if (!answer.ok) return unsaid(answer)
  redirect('/people')
}
