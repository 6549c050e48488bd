'use client'
import { useFieldArray, useWatch } from 'react-hook-form'
import { BuiltPartInput } from '#lib/schema/built-part'
import { type RecordAct, RecordField, RecordForm } from './record-form'
import './set-editor.css'

interface Choice {
  readonly value: string
  readonly label: string
}

/** What people add to a part that a pull has put into the book. */
export function BuiltPartEditor({
  action,
  defaults,
  parts,
  lots,
}: {
  readonly action: RecordAct
  readonly defaults: Record<string, unknown>
  readonly parts: readonly Choice[]
  readonly lots: readonly Choice[]
}) {
  return (
    <RecordForm schema={BuiltPartInput} action={action} defaults={defaults} submit="Save">
      <div className="field-row">
        <RecordField name="partId" label="Part" options={[{ value: '', label: 'not said' }, ...parts]} />
        <RecordField name="whereNow" label="Where it is now" hint="on the car, spare, with whom, scrapped" />
      </div>
      <RecordField
        name="cure"
        label="Cure as it was run"
        rows={2}
        hint="cycle, hottest and coldest, which oven, number of the logger's file"
      />
      <Lots lots={lots} />
      <RecordField name="note" label="Note" rows={3} />
    </RecordForm>
  )
}

function Lots({ lots }: { readonly lots: readonly Choice[] }) {
  const { fields, append, remove } = useFieldArray({ name: 'lots' })
  const rows = (useWatch({ name: 'lots' }) ?? []) as readonly { readonly lotId: string }[]
  return (
    <fieldset className="form rule-top">
      <legend>Laid from</legend>
      <p className="note">
        Each roll or tin that went into it: choose the lot from Stores, or name one that Stores doesn't know.
      </p>
      {fields.length === 0 ? (
        <p className="empty">No lot yet. With its lots a bad roll leads to every part that it went into.</p>
      ) : null}
      <ol className="hardware-rows lot-rows">
        {fields.map((field, index) => {
          const known = Boolean(rows[index]?.lotId)
          return (
            <li key={field.id}>
              <RecordField
                name={`lots.${index}.lotId`}
                label={`Lot of Stores, line ${index + 1}`}
                options={[{ value: '', label: 'not in Stores' }, ...lots]}
              />
              {known ? null : (
                <>
                  <RecordField name={`lots.${index}.material`} label={`Material, line ${index + 1}`} />
                  <RecordField name={`lots.${index}.lot`} label={`Lot, line ${index + 1}`} />
                </>
              )}
              <button
                type="button"
                className="btn plain"
                onClick={() => remove(index)}
                aria-label={`Take line ${index + 1} out`}
              >
                out
              </button>
            </li>
          )
        })}
      </ol>
      <div className="acts">
        <button
          type="button"
          className="btn"
          onClick={() => append({ lotId: lots[0]?.value ?? '', material: '', lot: '' })}
        >
          Add a lot
        </button>
      </div>
    </fieldset>
  )
}
