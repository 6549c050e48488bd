import 'server-only'
import type * as z from 'zod'
import { type FieldErrors, fieldErrors, formOf, textOf } from '#lib/schema/form'
import type { Verb } from '#lib/services/verb'
import { Refusal } from '#lib/store/errors'
import { logEvent } from './log'
import { requireActor } from './session'

/** What an action answers. What was typed comes back, so that nothing is lost, also without script. */
export type ActionResult<Value = unknown> =
  | { readonly ok: true; readonly value: Value }
  | {
      readonly ok: false
      readonly message: string
      readonly fields: FieldErrors
      readonly typed: unknown
      /** On a conflict: what is stored now, as the form would show it. */
      readonly current?: { readonly version: number; readonly text: unknown }
    }

/**
 * Carries out a verb for a form: who acts, text into figures, the act, and every refusal as words at its field.
 * `raw` is what the form holds: text at the leaves.
 */
export async function act<Input, Output>(
  verb: Verb<Input, Output>,
  raw: unknown,
): Promise<ActionResult<Output>> {
  const actor = await requireActor()
  const parsed = formOf(verb.schema as z.ZodType<Input>).safeParse(raw)
  if (!parsed.success) {
    const fields = fieldErrors(parsed.error)
    const count = Object.keys(fields).length
    return {
      ok: false,
      message: fields[''] ?? (count === 1 ? 'One field needs attention' : `${count} fields need attention`),
      fields,
      typed: raw,
    }
  }
  try {
    return { ok: true, value: await verb(actor, parsed.data as Input) }
  } catch (error) {
    if (error instanceof Refusal) {
      return {
        ok: false,
        message: error.message,
        fields: error.fields,
        typed: raw,
        ...(error.current
          ? { current: { version: error.current.version, text: textOf(verb.schema, error.current.values) } }
          : {}),
      }
    }
    logEvent('error', 'action failed', { verb: verb.verbName, error: String(error) })
    throw error
  }
}

/**
 * The text fields of a plain form as an object; "data.coats" becomes { data: { coats } }, and "lots.0.lot" a row that
 * the schema's list takes. Of fields with one name the last counts. Files are left out.
 */
export function formObject(form: FormData): Record<string, unknown> {
  const root: Record<string, unknown> = {}
  for (const key of new Set(form.keys())) {
    const path = key.split('.')
    // A name such as "__proto__.role" must not reach what all objects share.
    if (key.startsWith('$ACTION') || path.some((step) => step in Object.prototype)) continue
    const value = form
      .getAll(key)
      .filter((each) => typeof each === 'string')
      .at(-1)
    if (value === undefined) continue
    let place = root
    for (const step of path.slice(0, -1)) {
      if (typeof place[step] !== 'object') place[step] = {}
      place = place[step] as Record<string, unknown>
    }
    place[path.at(-1) ?? key] = value
  }
  return root
}
