'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import { writeEntry } from '#lib/services/log'
import { addMould, changeMould } from '#lib/services/moulds'
import { addPart } from '#lib/services/parts'
import { addPattern } from '#lib/services/patterns'
import { addSet } from '#lib/services/sets'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../ui/action-form'

/** Adds a mould, and writes down where it stands when that was given. Sent twice, stored once. */
export async function add(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(addMould, raw)
  if (!answer.ok) return answer
  const place = String(raw.place ?? '').trim()
  if (place !== '') {
    const moved = await act(writeEntry, {
      id: raw.placeEntryId,
      mouldId: raw.id,
      kind: 'moved',
      doneOn: raw.today,
      precision: 'day',
      sawVersion: '1',
      data: { place },
    })
    if (!moved.ok)
      return { ...moved, message: `The mould is saved. Its place is not: ${moved.message}`, typed: raw }
  }
  redirect(`/moulds/${encodeURIComponent(String(raw.code).trim())}` as Route)
}

export async function change(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  const answer = await act(changeMould, raw)
  if (!answer.ok) return answer
  redirect(`/moulds/${encodeURIComponent(String(raw.code).trim())}` as Route)
}

/** Adds a part, a pattern or a split mould from the mould's form, and comes back with it chosen. */
async function addAndReturn(verb: 'part' | 'pattern' | 'set', form: FormData): Promise<FormAnswer> {
  const raw = {
    ...{ note: '', partId: '', massKg: '', lengthMm: '', widthMm: '', heightMm: '' },
    ...{ madeOf: '', condition: '', place: '', owner: '', available: 'true', canBeMadeAgain: 'true' },
    ...{ liftingPoints: '', backing: '', assembly: '', hardware: [] },
    ...formObject(form),
  }
  const answer = await (verb === 'part'
    ? act(addPart, raw)
    : verb === 'pattern'
      ? act(addPattern, raw)
      : act(addSet, raw))
  if (!answer.ok) return answer
  const back = String(form.get('back') ?? '/moulds/new')
  const safe = back.startsWith('/moulds/') ? back : '/moulds/new'
  redirect(`${safe}?${verb}=${String(form.get('id'))}` as Route)
}

export const addPartHere = async (_previous: FormAnswer | null, form: FormData) => addAndReturn('part', form)
export const addPatternHere = async (_previous: FormAnswer | null, form: FormData) =>
  addAndReturn('pattern', form)
export const addSetHere = async (_previous: FormAnswer | null, form: FormData) => addAndReturn('set', form)
