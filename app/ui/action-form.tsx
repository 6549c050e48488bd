'use client'
import {
  createContext,
  type ReactNode,
  useActionState,
  useContext,
  useEffect,
  useId,
  useRef,
  useState,
} from 'react'
import type { FieldErrors } from '#lib/schema/form'
import { formObject } from '#lib/schema/form-object'

/** What an action answers a form; the shape of lib/web/action's ActionResult, known to the browser. */
export type FormAnswer =
  | { readonly ok: true; readonly value: unknown }
  | {
      readonly ok: false
      readonly message: string
      readonly fields: FieldErrors
      readonly typed: unknown
      readonly current?: { readonly version: number; readonly text: unknown }
    }

export type FormAct = (previous: FormAnswer | null, form: FormData) => Promise<FormAnswer>

interface FormState {
  readonly errors: FieldErrors
  /** Whether the form came back with something to put right. */
  readonly refused: boolean
  readonly shownOf: (name: string) => string
  readonly idOf: (name: string) => string
}

const State = createContext<FormState | null>(null)

export function useFormState(): FormState {
  const state = useContext(State)
  if (!state) throw new Error('A field stands in an ActionForm')
  return state
}

/** The text at "data.coats" of a nested form value. */
function textAt(values: unknown, name: string): string | null {
  let place = values
  for (const step of name.split('.')) {
    if (typeof place !== 'object' || place === null) return null
    place = (place as Record<string, unknown>)[step]
  }
  return place === undefined || place === null ? null : String(place)
}

/** The action, with a lost connection told in the form instead of in its place: what was typed stays. */
function kept(action: FormAct): FormAct {
  return async (previous, form) => {
    try {
      return await action(previous, form)
    } catch (error) {
      const digest =
        typeof error === 'object' && error !== null && 'digest' in error ? String(error.digest) : null
      // Going to another page comes as an error that the router takes care of.
      if (digest?.startsWith('NEXT_')) throw error
      return {
        ok: false,
        message:
          digest === null
            ? 'No answer from the shop. What you typed is still here; send it again when the connection is back: it is stored once.'
            : 'Something broke in the shop. What you typed is still here; its server log tells more.',
        fields: {},
        typed: formObject(form),
      }
    }
  }
}

/** A tick box says "on" or nothing at all; a record says true or false. */
function plain(text: string | null): string {
  return text === null || text === 'false' ? '' : text === 'on' ? 'true' : text
}

/** Every path of a nested form value that holds text. */
function paths(values: unknown, before = ''): string[] {
  if (typeof values !== 'object' || values === null) return before === '' ? [] : [before]
  return Object.entries(values).flatMap(([key, value]) =>
    paths(value, before === '' ? key : `${before}.${key}`),
  )
}

/**
 * A form over a server action that works before any script has loaded. After a refusal it holds what was typed and
 * says what is wrong at each field. When somebody else was faster it takes over what only they changed, keeps what
 * was typed here, and lists both where both changed.
 */
export function ActionForm({
  action,
  defaults,
  labels = {},
  words = {},
  submit,
  done,
  children,
}: {
  readonly action: FormAct
  /** Text at the leaves, as the form starts. */
  readonly defaults: Readonly<Record<string, unknown>>
  /** Names of fields for the list of what somebody else changed. */
  readonly labels?: Readonly<Record<string, string>>
  /** How the values of choices read, in that list. */
  readonly words?: Readonly<Record<string, string>>
  readonly submit: string
  /** What stands in the form's place once the act is done and leads to no other page. */
  readonly done?: (value: unknown) => ReactNode
  readonly children: ReactNode
}) {
  const [answer, send, pending] = useActionState(typeof window === 'undefined' ? action : kept(action), null)
  const formId = useId()
  const refusal = answer && !answer.ok ? answer : null
  const typed = refusal?.typed as Record<string, unknown> | undefined
  const base = (typeof typed?.$base === 'string' ? JSON.parse(typed.$base) : defaults) as Record<
    string,
    unknown
  >
  const theirs = refusal?.current ? refusal.current.text : null
  const changed = theirs
    ? paths(theirs).filter((name) => plain(textAt(theirs, name)) !== plain(textAt(base, name)))
    : []
  const both = changed.filter((name) => plain(textAt(typed, name)) !== plain(textAt(base, name)))
  const reads = (values: unknown, name: string) => {
    const text = plain(textAt(values, name))
    return words[text] ?? (text === '' ? 'blank' : text)
  }

  // Each refusal sets the form up anew: the browser empties it after an action, and some fields keep their first value.
  const [shown, setShown] = useState({ answer, times: 0 })
  if (shown.answer !== answer) setShown({ answer, times: shown.times + 1 })
  const told = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (shown.times > 0) told.current?.focus()
  }, [shown.times])

  const shownOf = (name: string) => {
    if (name === 'version' && refusal?.current) return String(refusal.current.version)
    if (changed.includes(name) && !both.includes(name)) return textAt(theirs, name) ?? ''
    return (
      (typed ? textAt(typed, name) : null) ??
      (typed && textAt(base, name) !== null ? '' : (textAt(base, name) ?? ''))
    )
  }
  const idOf = (name: string) => `${formId}-${name}`
  const nextBase = theirs ? { ...base, ...(theirs as object) } : base

  if (answer?.ok && done) return done(answer.value)
  return (
    <form action={send} className="form" key={shown.times}>
      <input type="hidden" name="$base" value={JSON.stringify(nextBase)} />
      {refusal ? (
        <div className="notice wrong" role="alert" tabIndex={-1} ref={told}>
          <p>
            <b>{refusal.message}</b>
          </p>
          {changed.length > 0 ? (
            <>
              <p className="note">What they changed:</p>
              <ul>
                {changed.map((name) => (
                  <li key={name}>
                    {labels[name] ?? name}: now “{reads(theirs, name)}”
                    {both.includes(name)
                      ? `; you typed “${reads(typed, name)}”, which stands below`
                      : '; taken over below'}
                  </li>
                ))}
              </ul>
              <p>Save again to write what stands below.</p>
            </>
          ) : null}
        </div>
      ) : null}
      <State value={{ errors: refusal?.fields ?? {}, refused: refusal !== null, shownOf, idOf }}>
        {children}
      </State>
      <div className="acts">
        <button type="submit" className="btn primary" aria-disabled={pending}>
          {pending ? 'Saving…' : submit}
        </button>
      </div>
    </form>
  )
}
