'use client'
import { useState } from 'react'
import { useFormState } from './action-form'
import { ChoiceField, FileField, SelectField, TextArea, TextField, TickField } from './fields'

/** The opening: its shape, and where it lies. Without script all shapes stand open and the chosen one counts. */
export function OpeningFields() {
  const { shownOf } = useFormState()
  const [kind, setKind] = useState<string | null>(null)
  const shown = (name: string) => kind === null || kind === name
  return (
    <fieldset
      className="form"
      onChange={(event) => {
        const target = event.target as unknown as HTMLInputElement
        if (target.name === 'opening.kind') setKind(target.value)
      }}
      ref={(node) => {
        if (node && kind === null) setKind(shownOf('opening.kind') || 'circle')
      }}
    >
      <ChoiceField
        name="opening.kind"
        label="Opening"
        options={[
          { value: 'circle', label: 'round' },
          { value: 'rounded-rectangle', label: 'rounded rectangle' },
          { value: 'outline', label: 'outline from file or coordinates' },
        ]}
      />
      {shown('circle') ? <TextField name="opening.diameterMm" label="Diameter" numeric unit="mm" /> : null}
      {shown('rounded-rectangle') ? (
        <div className="field-row">
          <TextField name="opening.lengthMm" label="Length along u" numeric unit="mm" />
          <TextField name="opening.widthMm" label="Width along v" numeric unit="mm" />
          <TextField name="opening.cornerRadiusMm" label="Corner radius" numeric unit="mm" />
        </div>
      ) : null}
      {shown('outline') ? (
        <>
          <FileField
            name="outlineFile"
            label="File"
            accept=".dxf,.csv,.txt,.tsv,.json,text/csv,text/plain,application/json"
            hint="DXF of lines and arcs, one closed outline; or a table of coordinates"
          />
          <TextArea
            name="outlineText"
            label="or coordinates"
            rows={5}
            hint="u and v, a line for each point, in order round the opening"
          />
          <SelectField
            name="outlineUnit"
            label="Unit"
            options={[
              { value: '', label: 'as the file says' },
              { value: 'mm', label: 'mm' },
              { value: 'cm', label: 'cm' },
              { value: 'm', label: 'm' },
              { value: 'in', label: 'in' },
            ]}
          />
        </>
      ) : null}
      <div className="field-row">
        <TextField
          name="opening.placement.shiftMm.0"
          label="Placed at u"
          numeric
          unit="mm"
          hint="in the area's frame"
        />
        <TextField name="opening.placement.shiftMm.1" label="and v" numeric unit="mm" />
        <TextField name="opening.placement.turnDeg" label="Turned by" numeric unit="°" hint="u towards v" />
      </div>
      <TickField name="opening.placement.mirrored" label="Mirrored, before it is turned" />
    </fieldset>
  )
}
