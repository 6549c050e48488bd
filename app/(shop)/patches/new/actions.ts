'use server'
import type { Route } from 'next'
import { redirect } from 'next/navigation'
import type { PatchInput, PatchPlan } from '#lib/core/repair/types'
import type { Outcome } from '#lib/core/result'
import { previewPatch, sketchPatch } from '#lib/services/patches'
import { act } from '#lib/web/action'
import { requireActor } from '#lib/web/session'
import type { FormAnswer } from '../../../ui/action-form'
import { type OutlineRead, sketchOf } from './sketch'

/** Saves the sketch as a plan and opens it. */
export async function saveSketch(_previous: FormAnswer | null, form: FormData): Promise<FormAnswer> {
  const actor = await requireActor()
  const sketch = await sketchOf(actor, form)
  if (!sketch.ok) return sketch
  const answer = await act(sketchPatch, sketch.raw)
  if (!answer.ok) return { ...answer, fields: shownAt(answer.fields), typed: sketch.typed }
  redirect(`/patches/${answer.value.patchId}` as Route)
}

export type Preview =
  | {
      readonly ok: true
      readonly input: PatchInput
      readonly outcome: Outcome<PatchPlan>
      readonly outline: OutlineRead | null
    }
  | { readonly ok: false; readonly message: string; readonly fields: Readonly<Record<string, string>> }

/** Works the sketch out without saving it. */
export async function previewSketch(form: FormData): Promise<Preview> {
  const actor = await requireActor()
  const sketch = await sketchOf(actor, form)
  if (!sketch.ok) return { ok: false, message: sketch.message, fields: sketch.fields }
  const answer = await act(previewPatch, sketch.raw)
  if (!answer.ok) return { ok: false, message: answer.message, fields: shownAt(answer.fields) }
  return { ok: true, ...answer.value, outline: sketch.outline }
}

/** Messages stand at the fields that the form has for them. */
function shownAt(fields: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(fields).map(([key, says]) => {
      if (key.startsWith('measuredThicknessMm')) return ['thickness', says]
      if (key.startsWith('opening.points')) return ['outlineText', says]
      const cover = /^coverPlies\.(\d+)\.(materialId|directionDeg)$/.exec(key)
      if (cover) return [cover[2] === 'materialId' ? `cover${cover[1]}` : `coverDirection${cover[1]}`, says]
      return [key, says]
    }),
  )
}
