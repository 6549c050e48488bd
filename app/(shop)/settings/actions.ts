'use server'
import { redirect } from 'next/navigation'
import { addSeason, changeSeason } from '#lib/services/seasons'
import { saveSettings } from '#lib/services/shop'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

export async function save(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(saveSettings, formObject(form))
  if (!answer.ok) return answer
  redirect('/settings?saved=yes' as never)
}

/** An address of its own for each change: to the very same one the browser would only jump, and show the old list. */
const seasonsAfter = ({ id, version = '0' }: Readonly<Record<string, unknown>>) =>
  `/settings?wrote=${String(id)}.${String(version)}#seasons` as never

export async function addTheSeason(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(addSeason, raw)
  if (!answer.ok) return answer
  redirect(seasonsAfter(raw))
}

export async function changeTheSeason(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(changeSeason, raw)
  if (!answer.ok) return answer
  redirect(seasonsAfter(raw))
}
