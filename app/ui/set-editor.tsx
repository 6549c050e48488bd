'use client'
import { useFieldArray } from 'react-hook-form'
import { hardwareKinds, MouldSetInput } from '#lib/schema/mould-set'
import { type RecordAct, RecordField, RecordForm } from './record-form'
import './set-editor.css'

/** A split mould as a whole, with its hardware list row by row. */
export function SetEditor({
  action,
  defaults,
  parts,
  pieces,
  submit,
}: {
  readonly action: RecordAct
  readonly defaults: Record<string, unknown>
  readonly parts: readonly { readonly value: string; readonly label: string }[]
  /** Codes of its pieces, for what a line joins. */
  readonly pieces: readonly string[]
  readonly submit: string
}) {
  return (
    <RecordForm schema={MouldSetInput} action={action} defaults={defaults} submit={submit}>
      <div className="field-row">
        <RecordField name="code" label="Code" hint="for example LH-SET; compared without case" />
        <RecordField name="name" label="Name" />
        <RecordField
          name="partId"
          label="Part"
          hint="that one pull on every piece makes"
          options={[{ value: '', label: 'not said' }, ...parts]}
        />
      </div>
      <fieldset className="form rule-top">
        <legend>As a whole: closed and bolted, with its loose blocks</legend>
        <div className="field-row">
          <RecordField name="massKg" label="Mass" numeric unit="kg" hint="weighed, not added up" />
          <RecordField name="lengthMm" label="Length" numeric unit="mm" />
          <RecordField name="widthMm" label="Width" numeric unit="mm" />
          <RecordField name="heightMm" label="Height" numeric unit="mm" />
        </div>
        <RecordField name="liftingPoints" label="Lifting points" rows={2} />
        <RecordField name="backing" label="Backing structure" rows={2} />
        <RecordField
          name="assembly"
          label="How it is closed, and how it is opened"
          rows={5}
          hint="in order: seals, pins, bolts from where to where, torque, loose blocks; then the way back"
        />
        <RecordField name="note" label="Note" rows={2} />
      </fieldset>
      <Hardware pieces={pieces} />
    </RecordForm>
  )
}

function Hardware({ pieces }: { readonly pieces: readonly string[] }) {
  const { fields, append, remove, move } = useFieldArray({ name: 'hardware' })
  const blank = { kind: 'bolt', name: '', count: '1', size: '', joins: '', place: '', note: '' }
  return (
    <fieldset className="form rule-top">
      <legend>Hardware list</legend>
      <p className="note">
        Flanges, pins, bolts, loose blocks, seals, lifting eyes: how many, which size, between which pieces
        {pieces.length > 0 ? ` (${pieces.join(', ')})` : ''}, and where they are kept between two parts.
      </p>
      {fields.length === 0 ? <p className="empty">No line yet. What is not on the list gets lost.</p> : null}
      <ol className="hardware-rows">
        {fields.map((field, index) => {
          const at = `hardware.${index}`
          const line = index + 1
          return (
            <li key={field.id}>
              <RecordField
                name={`${at}.kind`}
                label="Kind"
                of={`line ${line}`}
                options={hardwareKinds.map((kind) => ({ value: kind, label: kind }))}
              />
              <RecordField name={`${at}.name`} label="What" of={`line ${line}`} />
              <RecordField name={`${at}.count`} label="Count" of={`line ${line}`} numeric />
              <RecordField name={`${at}.size`} label="Size" of={`line ${line}`} />
              <RecordField name={`${at}.joins`} label="Joins" of={`line ${line}`} />
              <RecordField name={`${at}.place`} label="Kept where" of={`line ${line}`} />
              <RecordField name={`${at}.note`} label="Note" of={`line ${line}`} />
              <span className="acts">
                <button
                  type="button"
                  className="btn plain"
                  onClick={() => index > 0 && move(index, index - 1)}
                  aria-label={`Line ${line} up`}
                >
                  up
                </button>
                <button
                  type="button"
                  className="btn plain"
                  onClick={() => index < fields.length - 1 && move(index, index + 1)}
                  aria-label={`Line ${line} down`}
                >
                  down
                </button>
                <button
                  type="button"
                  className="btn plain"
                  onClick={() => remove(index)}
                  aria-label={`Take line ${line} out`}
                >
                  out
                </button>
              </span>
            </li>
          )
        })}
      </ol>
      <div className="acts">
        <button type="button" className="btn" onClick={() => append(blank)}>
          Add a line
        </button>
      </div>
    </fieldset>
  )
}
