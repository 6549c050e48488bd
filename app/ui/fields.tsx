'use client'
import { type ReactNode, useState } from 'react'
import { useFormState } from './action-form'

interface FieldProps {
  readonly name: string
  readonly label: string
  /** Unit in which a bare figure is read, small beside the label. */
  readonly unit?: string
  readonly hint?: ReactNode
}

function Frame({ name, label, unit, hint, children }: FieldProps & { readonly children: ReactNode }) {
  const { errors, idOf } = useFormState()
  const wrong = errors[name]
  return (
    <div className="field">
      <label htmlFor={idOf(name)}>
        {label}
        {unit ? <small> {unit}</small> : null}
      </label>
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
  unit,
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
    <Frame name={name} label={label} {...(unit ? { unit } : {})} hint={hint}>
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

/** The names that a schema lists are not the words that stand beside the buttons. */
export function chooseOne(message: string): string {
  return message.startsWith('Choose one of') ? 'Choose one of these' : message
}

const mostFileMb = 10

/** A file, refused before it is sent when the server would not take it: what was typed beside it then stays. */
export function FileField({ name, label, hint, accept }: FieldProps & { readonly accept: string }) {
  const { idOf } = useFormState()
  const [tooLarge, setTooLarge] = useState<string | null>(null)
  const id = idOf(name)
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="file"
        name={name}
        accept={accept}
        aria-invalid={tooLarge ? true : undefined}
        aria-describedby={`${id}-hint ${id}-wrong`}
        onChange={({ target }) => {
          const file = target.files?.[0]
          const large = file !== undefined && file.size > mostFileMb * 1024 * 1024
          setTooLarge(large ? `${file.name} has ${Math.round(file.size / 1024 / 1024)} MB` : null)
          if (large) target.value = ''
        }}
      />
      <span className="hint" id={`${id}-hint`}>
        {hint}
      </span>
      <span className="wrong" id={`${id}-wrong`} role="alert">
        {tooLarge
          ? `${tooLarge}; at most ${mostFileMb} MB are read. Save only the outline into a file of its own.`
          : null}
      </span>
    </div>
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
          {chooseOne(errors[name])}
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

/** Fields that are seldom needed, folded away; a form that came back has them open. */
export function Fold({
  title,
  open = false,
  children,
}: {
  readonly title: string
  readonly open?: boolean
  readonly children: ReactNode
}) {
  const { refused } = useFormState()
  return (
    <details className="form" open={open || refused}>
      <summary>{title}</summary>
      <div className="form" style={{ marginTop: 12 }}>
        {children}
      </div>
    </details>
  )
}

/** What the form carries without showing it. */
export function Hidden({ name }: { readonly name: string }) {
  const { shownOf } = useFormState()
  return <input type="hidden" name={name} value={shownOf(name)} readOnly />
}
