'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { addPattern, changePart, changePattern } from '#lib/services/moulds'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

const list = '/patterns' as Route

export async function add(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(addPattern, formObject(form))
  if (!answer.ok) return answer
  redirect(list)
}

export async function change(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(changePattern, formObject(form))
  if (!answer.ok) return answer
  redirect(list)
}

export async function changeThePart(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(changePart, formObject(form))
  if (!answer.ok) return answer
  redirect(list)
}
