'use server'
import { redirect } from 'next/navigation'
import { saveSettings } from '#lib/services/shop'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

export async function save(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const answer = await act(saveSettings, formObject(form))
  if (!answer.ok) return answer
  redirect('/settings?saved=yes' as never)
}
