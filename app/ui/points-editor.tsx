'use client'
import { useState } from 'react'
import { useFieldArray, useFormContext, useWatch } from 'react-hook-form'
import { compareTags, type PointRow, pastedRows } from '#lib/core/locating/index'
import { figure, parseQuantity } from '#lib/core/units'
import { LocatingIssueInput, pointKinds } from '#lib/schema/mould'
import { type RecordAct, RecordField, RecordForm } from './record-form'

export interface KnownPoint {
  readonly tag: string
  readonly uMm: number
  readonly vMm: number
  readonly diameterMm: number
}

const blankRow: PointRow & { notYetFixed: string } = {
  tag: '',
  uMm: '',
  vMm: '',
  diameterMm: '',
  bushDiameterMm: '',
  kind: 'dowel',
  areaName: '',
  through: '',
  isDatum: '',
  toleranceMm: '',
  notYetFixed: '',
}

/** A mould's locating points, typed or pasted; saving them makes a new numbered issue. */
export function PointsEditor({
  action,
  defaults,
  before,
  areas,
}: {
  readonly action: RecordAct
  readonly defaults: Record<string, unknown>
  /** The issue that is in force now. */
  readonly before: { readonly number: number; readonly points: readonly KnownPoint[] } | null
  readonly areas: readonly string[]
}) {
  return (
    <RecordForm schema={LocatingIssueInput} action={action} defaults={defaults} submit="Save as a new issue">
      <div className="field-row">
        <RecordField name="name" label="Name of the issue" hint="for example Season 2026/27, second" />
        <RecordField name="issuedOn" label="Issued on" type="date" />
      </div>
      <Rows areas={areas} />
      <Changes before={before} />
      <RecordField name="note" label="Note" rows={2} />
    </RecordForm>
  )
}

function Rows({ areas }: { readonly areas: readonly string[] }) {
  const { fields, append, remove } = useFieldArray({ name: 'points' })
  const areaOptions =
    areas.length > 1
      ? areas.map((area) => ({ value: area, label: area }))
      : [{ value: '', label: areas[0] ?? 'whole mould' }]
  const kindOptions = pointKinds.map((kind) => ({ value: kind, label: kind }))
  return (
    <>
      <Paste />
      <div className="table-room">
        <table className="lines points">
          <thead>
            <tr>
              <th scope="col">Tag</th>
              <th scope="col">Area</th>
              <th scope="col" className="n">
                u, mm
              </th>
              <th scope="col" className="n">
                v, mm
              </th>
              <th scope="col" className="n">
                Diameter, mm
              </th>
              <th scope="col" className="n">
                Bush flange, mm
              </th>
              <th scope="col">Kind</th>
              <th scope="col" className="n">
                Position zone, mm
              </th>
              <th scope="col">Through</th>
              <th scope="col">Datum</th>
              <th scope="col">Not yet fixed</th>
              <th scope="col">
                <span className="quiet">Take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {fields.map((field, index) => {
              const at = `points.${index}`
              const row = `row ${index + 1}`
              return (
                <tr key={field.id}>
                  <td>
                    <RecordField name={`${at}.tag`} label="Tag" of={row} quiet />
                  </td>
                  <td>
                    <RecordField name={`${at}.areaName`} label="Area" of={row} options={areaOptions} quiet />
                  </td>
                  <td>
                    <RecordField name={`${at}.uMm`} label="u" of={row} unit="mm" numeric quiet />
                  </td>
                  <td>
                    <RecordField name={`${at}.vMm`} label="v" of={row} unit="mm" numeric quiet />
                  </td>
                  <td>
                    <RecordField
                      name={`${at}.diameterMm`}
                      label="Diameter"
                      of={row}
                      unit="mm"
                      numeric
                      quiet
                    />
                  </td>
                  <td>
                    <RecordField
                      name={`${at}.bushDiameterMm`}
                      label="Bush flange"
                      of={row}
                      unit="mm"
                      numeric
                      quiet
                    />
                  </td>
                  <td>
                    <RecordField name={`${at}.kind`} label="Kind" of={row} options={kindOptions} quiet />
                  </td>
                  <td>
                    <RecordField
                      name={`${at}.toleranceMm`}
                      label="Position zone"
                      of={row}
                      unit="mm"
                      numeric
                      quiet
                    />
                  </td>
                  <td>
                    <Flag name={`${at}.through`} label="Through the mould" of={row} />
                  </td>
                  <td>
                    <Flag name={`${at}.isDatum`} label="Datum" of={row} />
                  </td>
                  <td>
                    <Flag name={`${at}.notYetFixed`} label="Not yet fixed" of={row} />
                  </td>
                  <td>
                    <button
                      type="button"
                      className="btn plain"
                      onClick={() => remove(index)}
                      aria-label={`Take out row ${index + 1}`}
                    >
                      Take out
                    </button>
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      <div className="acts">
        <button
          type="button"
          className="btn"
          onClick={() => append({ ...blankRow, areaName: areas.length > 1 ? areas[0] : '' })}
        >
          Add a row
        </button>
      </div>
    </>
  )
}

function Flag({ name, label, of }: { readonly name: string; readonly label: string; readonly of: string }) {
  const { register } = useFormContext()
  return (
    <label className="flag" title={label}>
      <input type="checkbox" {...register(name)} />
      <span className="flag-name quiet">{label}</span>
      <span className="quiet">, {of}</span>
    </label>
  )
}

/** A table from elsewhere: its rows take the place of those below, and are looked at before they are saved. */
function Paste() {
  const { setValue } = useFormContext()
  const [text, setText] = useState('')
  const [told, setTold] = useState('')
  return (
    <details>
      <summary>Paste a table</summary>
      <div className="field" style={{ marginTop: 10 }}>
        <label htmlFor="pasted-points">Rows</label>
        <textarea
          id="pasted-points"
          rows={6}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        <span className="hint">
          tag, u, v, diameter, bush, kind, area; parted by tabs, semicolons or commas; with or without a head.
          Units may stand in the cells.
        </span>
      </div>
      <div className="acts" style={{ marginTop: 8 }}>
        <button
          type="button"
          className="btn"
          onClick={() => {
            const read = pastedRows(text)
            if (!read.ok) {
              setTold(read.reason)
              return
            }
            setValue(
              'points',
              read.rows.map((row) => ({ ...row, notYetFixed: '' })),
              { shouldDirty: true, shouldValidate: true },
            )
            setTold(
              `${read.rows.length} rows taken over below; faults stand at their cells. Nothing is saved yet.`,
            )
          }}
        >
          Take over
        </button>
        <span role="status" className="note">
          {told}
        </span>
      </div>
    </details>
  )
}

function Changes({
  before,
}: {
  readonly before: { readonly number: number; readonly points: readonly KnownPoint[] } | null
}) {
  const rows = (useWatch({ name: 'points' }) ?? []) as readonly PointRow[]
  if (!before) return <p className="note">This is the mould's first issue.</p>
  const length = (text: string) => {
    const parsed = parseQuantity(text ?? '', 'length')
    return parsed.ok ? parsed.value : null
  }
  const read = rows.flatMap((row) => {
    const [uMm, vMm, diameterMm] = [length(row.uMm), length(row.vMm), length(row.diameterMm)]
    return uMm === null || vMm === null || diameterMm === null ? [] : [{ tag: row.tag, uMm, vMm, diameterMm }]
  })
  const { kept, moved, resized, added, gone } = compareTags(before.points, read)
  const words = [
    `${kept.length} kept`,
    moved.length > 0
      ? `moved: ${moved.map(({ tag, byMm }) => `${tag} by ${figure(byMm, 2)} mm`).join(', ')}`
      : null,
    resized.length > 0 ? `resized: ${resized.join(', ')}` : null,
    added.length > 0 ? `new: ${added.join(', ')}` : null,
    gone.length > 0 ? `gone: ${gone.join(', ')}` : null,
  ]
  return (
    <p className="notice" role="status">
      Against issue {before.number}: {words.filter(Boolean).join('; ')}.
    </p>
  )
}
