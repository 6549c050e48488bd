'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { type FieldValues, FormProvider, type Resolver, useForm, useFormContext } from 'react-hook-form'
import type * as z from 'zod'
import { formOf } from '#lib/schema/form'
import type { FormAnswer } from './action-form'

/** An action that takes the form's text as it stands; it goes to another page when all went well. */
export type RecordAct = (raw: unknown) => Promise<FormAnswer>

/**
 * A larger form with rows, checked while it is filled in. Its values are text; the schema is the same that the
 * server reads it with. What was typed stays, whatever the answer.
 */
export function RecordForm({
  schema,
  action,
  defaults,
  submit,
  children,
}: {
  readonly schema: z.ZodType
  readonly action: RecordAct
  readonly defaults: FieldValues
  readonly submit: string
  readonly children: ReactNode
}) {
  const resolver = zodResolver(formOf(schema) as never, undefined, {
    raw: true,
  }) as unknown as Resolver<FieldValues>
  const form = useForm<FieldValues>({ defaultValues: defaults, resolver })
  const [conflict, setConflict] = useState<string[]>([])
  const saved = useRef(false)
  const { isDirty, isSubmitting, errors } = form.formState

  useEffect(() => {
    const warn = (event: BeforeUnloadEvent) => {
      if (isDirty && !saved.current) event.preventDefault()
    }
    window.addEventListener('beforeunload', warn)
    return () => window.removeEventListener('beforeunload', warn)
  }, [isDirty])

  const send = form.handleSubmit(async (raw) => {
    saved.current = true
    let answer: FormAnswer
    try {
      answer = await action(raw)
    } catch (error) {
      saved.current = false
      // A redirect after saving comes as an error that the router takes care of.
      if (typeof error === 'object' && error !== null && 'digest' in error) throw error
      form.setError('root', {
        message: 'No connection to the shop. Nothing was saved; what you typed is still here.',
      })
      return
    }
    if (!answer || answer.ok) return
    saved.current = false
    form.setError('root', { message: answer.message })
    for (const [name, message] of Object.entries(answer.fields)) if (name) form.setError(name, { message })
    if (answer.current) {
      form.setValue('version', String(answer.current.version))
      setConflict(differences(form.getValues(), answer.current.text))
    }
  })

  return (
    <FormProvider {...form}>
      <form onSubmit={send} className="form" noValidate>
        {errors.root ? (
          <div className="notice wrong" role="alert">
            <p>
              <b>{errors.root.message}</b>
            </p>
            {conflict.length > 0 ? (
              <>
                <p className="note">Stored now, where it differs from what stands below:</p>
                <ul>
                  {conflict.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
                <p>Save again to write what stands below over it.</p>
              </>
            ) : null}
          </div>
        ) : null}
        {children}
        <div className="acts">
          <button type="submit" className="btn primary" aria-disabled={isSubmitting}>
            {isSubmitting ? 'Saving…' : submit}
          </button>
        </div>
      </form>
    </FormProvider>
  )
}

/** Where two form values differ, in words, by the path of the field. */
function differences(mine: unknown, theirs: unknown, path = ''): string[] {
  if (typeof theirs === 'object' && theirs !== null) {
    const own = typeof mine === 'object' && mine !== null ? (mine as Record<string, unknown>) : {}
    return Object.entries(theirs).flatMap(([key, value]) =>
      key === 'version' || key === 'id' ? [] : differences(own[key], value, path ? `${path}, ${key}` : key),
    )
  }
  return String(mine ?? '') === String(theirs ?? '') ? [] : [`${path}: “${String(theirs ?? '')}”`]
}

/** The message at a path such as "plies.2.directionDeg". */
function messageAt(errors: unknown, name: string): string | undefined {
  let place = errors
  for (const step of name.split('.')) {
    if (typeof place !== 'object' || place === null) return undefined
    place = (place as Record<string, unknown>)[step]
  }
  const message = (place as { message?: unknown } | undefined)?.message
  return typeof message === 'string' ? message : undefined
}

/** One labelled input of a RecordForm. In a row of a table its label is for the ear only. */
export function RecordField({
  name,
  label,
  unit,
  hint,
  numeric = false,
  type = 'text',
  options,
  rows,
  quiet = false,
  of,
}: {
  readonly name: string
  readonly label: string
  /** Unit in which a bare figure is read, small beside the label. */
  readonly unit?: string
  readonly hint?: string
  readonly numeric?: boolean
  readonly type?: 'text' | 'date'
  readonly options?: readonly { readonly value: string; readonly label: string }[]
  readonly rows?: number
  readonly quiet?: boolean
  /** What the field belongs to, for the ear alone: "row 3". */
  readonly of?: string
}) {
  const { register, formState } = useFormContext()
  const wrong = messageAt(formState.errors, name)
  const id = `field-${name}`
  const shared = {
    id,
    ...register(name),
    'aria-label': of ? `${label}, ${of}` : undefined,
    'aria-invalid': wrong ? (true as const) : undefined,
    'aria-describedby':
      [hint ? `${id}-hint` : '', wrong ? `${id}-wrong` : ''].filter(Boolean).join(' ') || undefined,
  }
  return (
    <div className="field">
      <label htmlFor={id} className={quiet ? 'quiet' : undefined}>
        {label}
        {unit ? <small> {unit}</small> : null}
      </label>
      {options ? (
        <select {...shared}>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      ) : rows ? (
        <textarea {...shared} rows={rows} />
      ) : (
        <input type={type} autoComplete="off" inputMode={numeric ? 'decimal' : undefined} {...shared} />
      )}
      {hint ? (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      ) : null}
      {wrong ? (
        <span className="wrong" id={`${id}-wrong`}>
          {wrong}
        </span>
      ) : null}
    </div>
  )
}

export function RecordTick({ name, label }: { readonly name: string; readonly label: string }) {
  const { register } = useFormContext()
  return (
    <label className="tick">
      <input type="checkbox" {...register(name)} />
      {label}
    </label>
  )
}
