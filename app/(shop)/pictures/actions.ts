'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { bringPictureBack, changePicture, putPictureAway } from '#lib/services/pictures'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

const page = (form: FormData) => `/pictures/${form.get('id')}` as Route

export async function change(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(changePicture, formObject(form))
  if (!answer.ok) return answer
  redirect(page(form))
}

export async function putAway(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(putPictureAway, formObject(form))
  if (!answer.ok) return answer
  redirect(page(form))
}

export async function bringBack(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(bringPictureBack, formObject(form))
  if (!answer.ok) return answer
  redirect(page(form))
}
