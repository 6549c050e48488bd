'use client'
import { useState } from 'react'
import { measuredRows } from '#lib/core/log/index'
import { formatQuantity, parseQuantity } from '#lib/core/units'
import { useFormState } from '../action-form'

const name = 'pointsText'

/** Measured points, a line each, typed or pasted; what was read stands below while it is typed. */
export function MeasuredField() {
  const { shownOf, errors, idOf } = useFormState()
  const [text, setText] = useState(shownOf(name))
  const { rows, faults } = measuredRows(text)
  const wrong = errors[name]
  const id = idOf(name)
  return (
    <div className="field">
      <label htmlFor={id}>
        Points <small> mm</small>
      </label>
      <textarea
        id={id}
        name={name}
        rows={6}
        className="mono"
        value={text}
        onChange={(event) => setText(event.target.value)}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={`${id}-hint${wrong ? ` ${id}-wrong` : ''}`}
      />
      <span className="hint" id={`${id}-hint`}>
        A line each: tag, x, y and, if known, z; parted by spaces, tabs or semicolons. A table can be pasted.
      </span>
      {wrong ? (
        <span className="wrong" id={`${id}-wrong`}>
          {wrong}
        </span>
      ) : null}
      {rows.length > 0 ? (
        <div className="table-room read-back">
          <table className="lines">
            <thead>
              <tr>
                <th scope="col">Tag</th>
                <th scope="col" className="n">
                  x
                </th>
                <th scope="col" className="n">
                  y
                </th>
                <th scope="col" className="n">
                  z
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two lines may read alike while they are typed
                <tr key={index}>
                  <td>{row.tag}</td>
                  <Cell text={row.xMm} />
                  <Cell text={row.yMm} />
                  <Cell text={row.zMm} blank />
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      ) : null}
      <span className="note" role="status">
        {rows.length > 0 ? `${rows.length} ${rows.length === 1 ? 'point' : 'points'} read. ` : ''}
        {faults[0] ?? ''}
      </span>
    </div>
  )
}

function Cell({ text, blank = false }: { readonly text: string; readonly blank?: boolean }) {
  if (blank && text === '') return <td className="n soft">–</td>
  const read = parseQuantity(text, 'length')
  return read.ok ? (
    <td className="n">{formatQuantity(read.value, 'length')}</td>
  ) : (
    <td className="n held">{text || 'missing'}: no figure</td>
  )
}
