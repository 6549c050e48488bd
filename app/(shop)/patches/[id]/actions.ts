'use server'
import type { Route } from 'next'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { benchPlan, layPatch, provePatch, putByPlan, signPlan, tickLine } from '#lib/services/patch-steps'
import type { Verb } from '#lib/services/verb'
import { act, formObject } from '#lib/web/action'
import type { FormAnswer } from '../../../ui/action-form'

/** Carries a step of a plan out and goes back to its page. */
async function step<Input>(
  verb: Verb<Input, unknown>,
  raw: Record<string, unknown>,
  anchor = '',
): Promise<FormAnswer> {
  const answer = await act(verb, raw)
  if (!answer.ok) return answer
  // Without this a browser that is on the page already only jumps to the anchor and shows the old state.
  revalidatePath(`/patches/${String(raw.patchId)}`)
  redirect(`/patches/${String(raw.patchId)}${anchor}` as Route)
}

export async function sign(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  // Keys of becauses hold dots and signs of their own, so they come as pairs.
  const keys = form.getAll('becauseKey').map(String)
  const becauses = Object.fromEntries(
    keys.map((key, index) => [key, String(form.get(`because${index}`) ?? '')]),
  )
  return step(signPlan, { ...raw, becauses })
}

export async function bench(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return step(benchPlan, formObject(form), '#lines')
}

export async function putBy(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return step(putByPlan, formObject(form))
}

export async function tick(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const raw = formObject(form)
  return step(tickLine, raw, `#line-${String(raw.position)}`)
}

export async function lay(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return step(layPatch, formObject(form))
}

export async function prove(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  return step(provePatch, formObject(form))
}
