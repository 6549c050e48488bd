'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { writePatternEntry } from '#lib/services/log'
import { readSettings } from '#lib/services/shop'
import { act, formObject, signedOut } from '#lib/web/action'
import { signedIn } from '#lib/web/session'
import type { FormAnswer } from '../../../../../ui/action-form'
import { refusedAt, sentEntry } from '../../../../../ui/log/sent-entry'

/** Writes one entry of a pattern's log; sent twice, stored once. */
export async function logPatternEntry(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const actor = await signedIn()
  if (!actor) return signedOut(formObject(form))
  const { shop } = await readSettings(actor, {})
  const sent = sentEntry(form, shop.timeZone)
  if (sent.fault) {
    return { ok: false, message: sent.fault, fields: { pointsText: sent.fault }, typed: sent.typed }
  }
  const answer = await act(writePatternEntry, sent.content)
  if (!answer.ok) return refusedAt(answer, sent)
  redirect(`/patterns/${encodeURIComponent(String(sent.typed.code))}?wrote=${answer.value.id}` as Route)
}
