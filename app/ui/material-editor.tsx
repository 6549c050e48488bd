'use client'
import { useFieldArray, useFormContext, useWatch } from 'react-hook-form'
import { MaterialInput } from '#lib/schema/material'
import { type RecordAct, RecordField, RecordForm, RecordTick } from './record-form'

const blankCycle = { name: '', segments: [{ rampCPerMin: '', toC: '', holdMin: '' }], tgAfterC: '' }

/** A material: what the calculations need, its cure, how it keeps, and where the figures come from. */
export function MaterialEditor({
  action,
  defaults,
  submit,
}: {
  readonly action: RecordAct
  readonly defaults: Record<string, unknown>
  readonly submit: string
}) {
  return (
    <RecordForm schema={MaterialInput} action={action} defaults={defaults} submit={submit}>
      <div className="field-row">
        <RecordField name="code" label="Code" hint="for example B650" />
        <RecordField name="name" label="Name" hint="as it stands on sheets" />
        <RecordField
          name="role"
          label="Used as"
          options={[
            { value: 'surface', label: 'surface ply' },
            { value: 'bulk', label: 'bulk ply' },
          ]}
        />
      </div>
      <div className="field-row">
        <RecordField
          name="fibreArealWeightGsm"
          label="Fibre areal weight"
          numeric
          unit="g/m²"
          hint="without resin"
        />
        <RecordField name="fibreDensityGcm3" label="Fibre density" numeric unit="g/cm³" />
        <RecordField name="rollWidthMm" label="Roll width" numeric unit="mm" />
      </div>
      <FibreContent />
      <div className="field-row">
        <RecordField
          name="thickestCureMm"
          label="Thickest cured in one go"
          numeric
          unit="mm"
          hint="blank: nobody has said"
        />
        <RecordField
          name="outLifeH"
          label="Life out of the freezer"
          numeric
          unit="h, or 10 d"
          hint="in all; blank: not kept frozen, or not known"
        />
        <RecordField
          name="lowBelowM2"
          label="Low below"
          numeric
          unit="m²"
          hint="over all rolls that are fit; blank: never told"
        />
      </div>
      <Cycle name="cure" title="Cure, on the pattern" />
      <Cycle name="postCure" title="Post-cure, free-standing" />
      <RecordField
        name="sourceNote"
        label="Where the figures come from"
        hint="data sheet and date, or: from memory"
      />
      <RecordTick name="retired" label="No longer bought: not offered for new stacks and lots" />
    </RecordForm>
  )
}

function FibreContent() {
  const kind = useWatch({ name: 'fibreContent.kind' })
  return (
    <div className="field-row">
      <RecordField
        name="fibreContent.kind"
        label="Fibre content given as"
        options={[
          { value: 'resin-mass', label: 'resin by mass' },
          { value: 'fibre-volume', label: 'fibre by volume' },
        ]}
      />
      {kind === 'fibre-volume' ? (
        <RecordField
          name="fibreContent.fibreVolumeFraction"
          label="Fibre by volume"
          numeric
          hint="0.55 or 55 %"
        />
      ) : (
        <>
          <RecordField
            name="fibreContent.resinMassFraction"
            label="Resin by mass"
            numeric
            hint="0.38 or 38 %"
          />
          <RecordField
            name="fibreContent.resinDensityGcm3"
            label="Resin density"
            numeric
            unit="g/cm³"
            hint="cured"
          />
        </>
      )}
    </div>
  )
}

function Cycle({ name, title }: { readonly name: 'cure' | 'postCure'; readonly title: string }) {
  const { setValue } = useFormContext()
  const cycle = useWatch({ name })
  if (!cycle) {
    return (
      <div className="acts">
        <button
          type="button"
          className="btn"
          onClick={() => setValue(name, blankCycle, { shouldDirty: true })}
        >
          Give the {title.toLowerCase()}
        </button>
      </div>
    )
  }
  return (
    <fieldset className="form rule-top">
      <legend>{title}</legend>
      <div className="field-row">
        <RecordField name={`${name}.name`} label="Name of the cycle" />
        <RecordField
          name={`${name}.tgAfterC`}
          label="Tg after it, dry"
          numeric
          unit="°C"
          hint="blank: not known"
        />
      </div>
      <Segments name={name} title={title} />
      <div>
        <button type="button" className="btn plain" onClick={() => setValue(name, '', { shouldDirty: true })}>
          Take this cure out
        </button>
      </div>
    </fieldset>
  )
}

function Segments({ name, title }: { readonly name: string; readonly title: string }) {
  const { fields, append, remove } = useFieldArray({ name: `${name}.segments` })
  return (
    <>
      {fields.map((field, index) => (
        <div className="ramp-row" key={field.id}>
          <RecordField
            name={`${name}.segments.${index}.rampCPerMin`}
            label="Ramp"
            numeric
            unit="°C a minute"
            quiet={index > 0}
          />
          <RecordField
            name={`${name}.segments.${index}.toC`}
            label="to"
            numeric
            unit="°C"
            quiet={index > 0}
          />
          <RecordField
            name={`${name}.segments.${index}.holdMin`}
            label="Hold"
            numeric
            unit="min, or 8 h"
            quiet={index > 0}
          />
          <button
            type="button"
            className="btn plain"
            onClick={() => remove(index)}
            aria-label={`Take ramp ${index + 1} of the ${title.toLowerCase()} out`}
          >
            out
          </button>
        </div>
      ))}
      <div className="acts">
        <button
          type="button"
          className="btn"
          onClick={() => append({ rampCPerMin: '', toC: '', holdMin: '' })}
        >
          Add a ramp
        </button>
      </div>
    </>
  )
}
