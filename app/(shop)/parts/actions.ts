'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { changeBuiltPart, removeBuiltPart } from '#lib/services/built-parts'
import { addPart, changePart } from '#lib/services/parts'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

export async function add(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(addPart, formObject(form))
  if (!answer.ok) return answer
  redirect('/parts' as Route)
}

export async function change(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(changePart, formObject(form))
  if (!answer.ok) return answer
  redirect('/parts' as Route)
}

export async function saveBuilt(raw: unknown): Promise<FormAnswer> {
  const answer = await act(changeBuiltPart, raw)
  if (!answer.ok) return answer
  const { serial } = raw as { serial?: unknown }
  redirect(`/parts/built/${encodeURIComponent(String(serial ?? '').trim())}` as Route)
}

export async function remove(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(removeBuiltPart, formObject(form))
  if (!answer.ok) return answer
  redirect('/parts' as Route)
}
