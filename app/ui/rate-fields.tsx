'use client'
import { bases, basisWords } from '#lib/core/stores/index'
import { Hidden, SelectField, TextField } from './fields'

/** What an operation takes and costs from a day on. */
export function RateFields({
  operations,
  currency,
}: {
  readonly operations: readonly string[]
  readonly currency: string
}) {
  return (
    <>
      <Hidden name="id" />
      <Hidden name="currency" />
      <div className="field-row">
        <TextField name="operation" label="Operation" list={operations} hint="lay, scarf, router, labour" />
        <SelectField
          name="basis"
          label="Counted by the"
          options={bases.map((basis) => ({ value: basis, label: basisWords[basis] }))}
        />
        <TextField name="fromOn" label="From" type="date" />
      </div>
      <div className="field-row">
        <TextField
          name="hours"
          label="Takes"
          numeric
          unit="h, or 45 min"
          hint="by the hour: leave it blank"
        />
        <TextField
          name="minorPerBasis"
          label="Costs"
          numeric
          unit={currency}
          hint="as 45.00; blank: work that isn't counted in money"
        />
      </div>
      <TextField name="sourceNote" label="From where" hint="own timing, quote, or: from memory" />
    </>
  )
}
