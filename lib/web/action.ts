import 'server-only'
import type * as z from 'zod'
import { type FieldErrors, fieldErrors, formOf, textOf } from '#lib/schema/form'
import type { Verb } from '#lib/services/verb'
import { Refusal } from '#lib/store/errors'
import { logEvent } from './log'
import { requireActor } from './session'

export { formObject } from '#lib/schema/form-object'

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
