'use server'
import type { Route } from 'next'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { leaveDemo } from '#lib/services/leave-demo'
import { addPerson, changePerson, endToken, makeToken, setPassword } from '#lib/services/people'
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

/** Answers the token: it is shown in the form's place, and nowhere else again. */
export async function makeTheToken(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(makeToken, formObject(form))
  if (answer.ok) revalidatePath('/people')
  return answer
}

export async function endTheToken(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(endToken, formObject(form))
  if (!answer.ok) return answer
  redirect('/people#tokens' as Route)
}

export async function leaveTheDemo(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(leaveDemo, formObject(form))
  if (!answer.ok) return answer
  redirect('/people?left=demo' as Route)
}
