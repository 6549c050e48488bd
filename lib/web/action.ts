import 'server-only'
import type * as z from 'zod'
import { type FieldErrors, fieldErrors, formOf, textOf } from '#lib/schema/form'
import type { Verb } from '#lib/services/verb'
import { refusalOf } from '#lib/store/errors'
import { logEvent } from './log'
import { signedIn } from './session'

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

/** The answer to a form whose sender is no longer signed in: what was typed stays in it. */
export function signedOut(typed: unknown): Extract<ActionResult, { ok: false }> {
  return {
    ok: false,
    message:
      'You are signed out. What you typed is still here: open the shop in another tab, sign in there, then send this again.',
    fields: {},
    typed,
  }
}

/**
 * Carries out a verb for a form: who acts, text into figures, the act, and every refusal as words at its field.
 * `raw` is what the form holds: text at the leaves.
 */
export async function act<Input, Output>(
  verb: Verb<Input, Output>,
  raw: unknown,
): Promise<ActionResult<Output>> {
  const actor = await signedIn()
  if (!actor) return signedOut(raw)
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
    const refusal = refusalOf(error)
    // What the shop did not mean to refuse stands in its log as well.
    if (refusal && refusal !== error)
      logEvent('error', 'action failed', { verb: verb.verbName, error: String(error) })
    if (refusal) {
      return {
        ok: false,
        message: refusal.message,
        fields: refusal.fields,
        typed: raw,
        ...(refusal.current
          ? {
              current: {
                version: refusal.current.version,
                text: textOf(verb.schema, refusal.current.values),
              },
            }
          : {}),
      }
    }
    logEvent('error', 'action failed', { verb: verb.verbName, error: String(error) })
    throw error
  }
}
