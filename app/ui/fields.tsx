'use client'
import type { ReactNode } from 'react'
import { useFormState } from './action-form'

interface FieldProps {
  readonly name: string
  readonly label: string
  readonly hint?: ReactNode
}

function Frame({ name, label, hint, children }: FieldProps & { readonly children: ReactNode }) {
  const { errors, idOf } = useFormState()
  const wrong = errors[name]
  return (
    <div className="field">
      <label htmlFor={idOf(name)}>{label}</label>
      {children}
      {hint ? (
        <span className="hint" id={`${idOf(name)}-hint`}>
          {hint}
        </span>
      ) : null}
      {wrong ? (
        <span className="wrong" id={`${idOf(name)}-wrong`}>
          {wrong}
        </span>
      ) : null}
    </div>
  )
}

function useAria(name: string, hint: ReactNode) {
  const { errors, idOf } = useFormState()
  const described = [hint ? `${idOf(name)}-hint` : '', errors[name] ? `${idOf(name)}-wrong` : '']
    .filter(Boolean)
    .join(' ')
  return {
    id: idOf(name),
    name,
    'aria-invalid': errors[name] ? (true as const) : undefined,
    'aria-describedby': described || undefined,
  }
}

/** One line of text, or a figure with its unit ("12,5 mm", "1/2 in"). */
export function TextField({
  name,
  label,
  hint,
  type = 'text',
  numeric = false,
  list,
  autoComplete,
  required,
}: FieldProps & {
  readonly type?: 'text' | 'email' | 'password' | 'date' | 'time'
  readonly numeric?: boolean
  readonly list?: readonly string[]
  readonly autoComplete?: string
  readonly required?: boolean
}) {
  const { shownOf, idOf } = useFormState()
  const aria = useAria(name, hint)
  return (
    <Frame name={name} label={label} hint={hint}>
      <input
        {...aria}
        type={type}
        defaultValue={type === 'password' ? '' : shownOf(name)}
        inputMode={numeric ? 'decimal' : undefined}
        list={list ? `${idOf(name)}-list` : undefined}
        autoComplete={autoComplete ?? 'off'}
        aria-required={required}
      />
      {list ? (
        <datalist id={`${idOf(name)}-list`}>
          {list.map((entry) => (
            <option key={entry} value={entry} />
          ))}
        </datalist>
      ) : null}
    </Frame>
  )
}

export function TextArea({ name, label, hint, rows = 3 }: FieldProps & { readonly rows?: number }) {
  const { shownOf } = useFormState()
  return (
    <Frame name={name} label={label} hint={hint}>
      <textarea {...useAria(name, hint)} rows={rows} defaultValue={shownOf(name)} />
    </Frame>
  )
}

export interface Option {
  readonly value: string
  readonly label: string
}

export function SelectField({
  name,
  label,
  hint,
  options,
}: FieldProps & { readonly options: readonly Option[] }) {
  const { shownOf } = useFormState()
  return (
    <Frame name={name} label={label} hint={hint}>
      <select {...useAria(name, hint)} defaultValue={shownOf(name)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Frame>
  )
}

/** A choice of few, each a target for a gloved finger. */
export function ChoiceField({
  name,
  label,
  hint,
  options,
}: FieldProps & { readonly options: readonly Option[] }) {
  const { shownOf, errors, idOf } = useFormState()
  return (
    <fieldset className="field" aria-describedby={errors[name] ? `${idOf(name)}-wrong` : undefined}>
      <legend>{label}</legend>
      <div className="choices">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              defaultChecked={shownOf(name) === option.value}
            />
            {option.label}
          </label>
        ))}
      </div>
      {hint ? <span className="hint">{hint}</span> : null}
      {errors[name] ? (
        <span className="wrong" id={`${idOf(name)}-wrong`}>
          {errors[name]}
        </span>
      ) : null}
    </fieldset>
  )
}

export function TickField({ name, label, hint }: FieldProps) {
  const { shownOf, idOf } = useFormState()
  const on = shownOf(name)
  return (
    <div className="field">
      <label className="tick" htmlFor={idOf(name)}>
        <input type="checkbox" id={idOf(name)} name={name} defaultChecked={on === 'true' || on === 'on'} />
        {label}
      </label>
      {hint ? <span className="hint">{hint}</span> : null}
    </div>
  )
}

/** What the form carries without showing it. */
export function Hidden({ name }: { readonly name: string }) {
  const { shownOf } = useFormState()
  return <input type="hidden" name={name} value={shownOf(name)} readOnly />
}
