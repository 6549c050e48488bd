'use client'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { pointsOfText, textOfPoints } from '#lib/schema/points-text'
import { useFormState } from './action-form'
import { type DrawnOn, OutlineEditor } from './drawing/outline-editor'
import { ChoiceField, FileField, SelectField, TextArea, TextField, TickField } from './fields'

/** The faces that an opening can be drawn on, by the id of their area. */
export type DrawnOnAreas = Readonly<Record<string, DrawnOn>>

/**
 * The opening: its shape, and where it lies. Without script all shapes stand open and the chosen one counts. What was typed for one
 * shape is kept while another one is chosen.
 */
export function OpeningFields({ faces }: { readonly faces: DrawnOnAreas }) {
  const { shownOf, errors } = useFormState()
  const [kind, setKind] = useState<string | null>(null)
  // Once begun a drawing stays, also an open one, while another shape is looked at.
  const [drawn, setDrawn] = useState(false)
  if (kind === 'drawn' && !drawn) setDrawn(true)
  const shown = (...names: readonly string[]) => kind === null || names.includes(kind)
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
          { value: 'drawn', label: 'drawn on the face' },
          { value: 'outline', label: 'outline from file or coordinates' },
        ]}
      />
      <Shape shown={shown('circle')}>
        <TextField name="opening.diameterMm" label="Diameter" numeric unit="mm" />
      </Shape>
      <Shape shown={shown('rounded-rectangle')}>
        <div className="field-row">
          <TextField name="opening.lengthMm" label="Length along u" numeric unit="mm" />
          <TextField name="opening.widthMm" label="Width along v" numeric unit="mm" />
          <TextField name="opening.cornerRadiusMm" label="Corner radius" numeric unit="mm" />
        </div>
      </Shape>
      {drawn ? (
        <div className="field shape draw-opening" hidden={kind !== 'drawn'}>
          <Drawing faces={faces} shown={kind === 'drawn'} />
          {errors.outlineText ? <span className="wrong">{errors.outlineText}</span> : null}
        </div>
      ) : null}
      <Shape shown={shown('outline')}>
        <FileField
          name="outlineFile"
          label="File"
          accept=".dxf,.svg,.csv,.txt,.tsv,.json,image/svg+xml,text/csv,text/plain,application/json"
          hint="DXF or SVG with one closed outline; or a table of coordinates"
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
      </Shape>
      <Shape shown={shown('circle', 'rounded-rectangle', 'outline')}>
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
      </Shape>
    </fieldset>
  )
}

/** Fields of one shape; hidden they keep what was typed. */
function Shape({ shown, children }: { readonly shown: boolean; readonly children: ReactNode }) {
  return (
    <div className="form shape" hidden={!shown}>
      {children}
    </div>
  )
}

interface Held {
  readonly area: string
  readonly text: string
  /** Grows when the coordinates were changed elsewhere: the drawing then starts from them anew. */
  readonly times: number
}

/** The drawing, over the coordinates that the form holds: it starts from them and writes them. */
function Drawing({ faces, shown }: { readonly faces: DrawnOnAreas; readonly shown: boolean }) {
  const room = useRef<HTMLDivElement>(null)
  const written = useRef<string | null>(null)
  const [held, setHeld] = useState<Held | null>(null)
  useEffect(() => {
    const form = room.current?.closest('form')
    if (!form || !shown) return
    const read = () => {
      const area = fieldText(form, 'areaId')
      const text = fieldText(form, 'outlineText')
      const known = written.current === text
      written.current = text
      setHeld((before) => ({
        area,
        text,
        times: (before?.times ?? 0) + (known && before?.area === area ? 0 : 1),
      }))
    }
    const changed = (event: Event) => {
      if ((event.target as HTMLSelectElement).name === 'areaId') read()
    }
    read()
    form.addEventListener('change', changed)
    return () => form.removeEventListener('change', changed)
  }, [shown])
  const face = held ? faces[held.area] : undefined
  const points = held ? pointsOfText(held.text) : null
  return (
    <div ref={room}>
      {held && !face ? <p className="empty">Choose the area first.</p> : null}
      {face && points ? (
        <OutlineEditor
          key={held?.times}
          face={face}
          start={points.ok ? points.points : []}
          changed={(now) => {
            const form = room.current?.closest('form')
            const field = form?.elements.namedItem('outlineText')
            if (!(field instanceof HTMLTextAreaElement)) return
            field.value = textOfPoints(now.map(([u, v]) => [u, v]))
            written.current = field.value
            field.dispatchEvent(new Event('input', { bubbles: true }))
          }}
        />
      ) : null}
    </div>
  )
}

function fieldText(form: HTMLFormElement, name: string): string {
  const field = form.elements.namedItem(name)
  return field instanceof HTMLInputElement ||
    field instanceof HTMLSelectElement ||
    field instanceof HTMLTextAreaElement
    ? field.value
    : ''
}
