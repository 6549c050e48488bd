'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { addPattern, changePattern } from '#lib/services/patterns'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

const pageOf = (raw: Record<string, unknown>) =>
  `/patterns/${encodeURIComponent(String(raw.code).trim())}` as Route

export async function add(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(addPattern, raw)
  if (!answer.ok) return answer
  redirect(pageOf(raw))
}

export async function change(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(changePattern, raw)
  if (!answer.ok) return answer
  redirect(pageOf(raw))
}
