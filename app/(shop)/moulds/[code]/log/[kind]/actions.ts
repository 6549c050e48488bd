'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { momentOf } from '#lib/core/dates'
import { writeEntry } from '#lib/services/log'
import { readSettings } from '#lib/services/shop'
import { act, formObject } from '#lib/web/action'
import { requireActor } from '#lib/web/session'
import type { FormAnswer } from '../../../../../ui/action-form'

/** Writes one entry of a mould's log; sent twice, stored once. */
export async function logEntry(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const actor = await requireActor()
  const { shop } = await readSettings(actor, {})
  const raw = formObject(form)
  const time = String(raw.time ?? '').trim()
  const doneOn = String(raw.doneOn ?? '')
  const doneAt = time === '' ? '' : (momentOf(doneOn, time, shop.timeZone) ?? `${doneOn} ${time}`)
  const [areaId, patchId] = placeOf(String(raw.where ?? ''))
  const answer = await act(writeEntry, {
    data: {},
    ...raw,
    areaId,
    patchId,
    doneAt,
    precision: time === '' ? 'day' : 'minute',
  })
  if (!answer.ok) {
    const { doneAt: wrongTime, ...fields } = answer.fields
    return {
      ...answer,
      typed: raw,
      fields: wrongTime
        ? { ...fields, time: `${wrongTime}. A time such as 14:05; one that the clock skips does not exist` }
        : fields,
    }
  }
  const back = raw.from === 'm' ? '/m' : '/moulds'
  redirect(`${back}/${encodeURIComponent(String(raw.code))}?wrote=${answer.value.id}` as Route)
}

/** "area:ID", "patch:ID", or blank for the whole face. */
function placeOf(where: string): readonly [string, string] {
  const [kind, id = ''] = where.split(':')
  return kind === 'area' ? [id, ''] : kind === 'patch' ? ['', id] : ['', '']
}
