'use client'
import type { LotOption } from '#lib/core/stores/option'
import { SelectField, TextField } from './fields'

/** A lot reads as a whole sentence: on a phone it has the width to itself. */
const wideEnough = { gridTemplateColumns: 'repeat(auto-fit, minmax(min(240px, 100%), 1fr))' }

/**
 * What was taken from the stores: a lot and how much of it, in the unit of the lot. Rows without a lot say nothing
 * (`chosenUses` of the schema drops them). Stands in an ActionForm; the fields are `uses.0.lotId`, `uses.0.amount` ...
 */
export function LotUse({
  lots,
  rows = 1,
  name = 'uses',
}: {
  readonly lots: readonly LotOption[]
  readonly rows?: number
  readonly name?: string
}) {
  if (lots.length === 0) return null
  const units = [...new Set(lots.map((lot) => lot.unit))]
  const [only] = units.length === 1 ? units : []
  return (
    <fieldset className="form">
      <legend className="quiet">From the stores</legend>
      {Array.from({ length: rows }, (_, index) => {
        const row = `${name}.${index}`
        const nth = rows > 1 ? ` ${index + 1}` : ''
        return (
          <div className="field-row" key={row} style={wideEnough}>
            <SelectField
              name={`${row}.lotId`}
              label={`Lot from the stores${nth}`}
              options={[
                { value: '', label: 'none is written off' },
                ...lots.map(({ value, label }) => ({ value, label })),
              ]}
            />
            <TextField
              name={`${row}.amount`}
              label={`Taken${nth}`}
              numeric
              unit={only ?? "in the lot's own unit"}
              hint={index === 0 ? 'a figure; what was poured or cut off' : undefined}
            />
          </div>
        )
      })}
    </fieldset>
  )
}
