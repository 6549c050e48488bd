'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { writeEntry } from '#lib/services/log'
import { writeForSet } from '#lib/services/log-set'
import { readSettings } from '#lib/services/shop'
import { type ActionResult, act, formObject, signedOut } from '#lib/web/action'
import { signedIn } from '#lib/web/session'
import type { FormAnswer } from '../../../../../ui/action-form'
import { refusedAt, sentEntry } from '../../../../../ui/log/sent-entry'

/** Writes one entry of a mould's log, or of every piece of its split mould; sent twice, stored once. */
export async function logEntry(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const actor = await signedIn()
  if (!actor) return signedOut(formObject(form))
  const { shop } = await readSettings(actor, {})
  const sent = sentEntry(form, shop.timeZone)
  const { typed, content } = sent
  if (sent.fault) {
    return { ok: false, message: sent.fault, fields: { pointsText: sent.fault }, typed }
  }
  const answer =
    typed.wholeSet === 'on' && String(typed.setId ?? '') !== ''
      ? await writeOnSet(content, String(typed.mouldId))
      : await act(writeEntry, content)
  if (!answer.ok) return refusedAt(answer, sent)
  const back = typed.from === 'm' ? '/m' : typed.from === 'set' ? '/sets' : '/moulds'
  redirect(`${back}/${encodeURIComponent(String(typed.code))}?wrote=${answer.value.id}` as Route)
}

/** On every piece; answered with the entry of the piece whose form it was. */
async function writeOnSet(content: unknown, mouldId: string): Promise<ActionResult<{ readonly id: string }>> {
  const answer = await act(writeForSet, content)
  if (!answer.ok) return answer
  const own = answer.value.entries.find((entry) => entry.mouldId === mouldId)
  return { ok: true, value: { id: own?.id ?? answer.value.id } }
}
