'use client'
import { containers, type StockUnit, unitWords } from '#lib/core/stores/index'
import { Fold, Hidden, SelectField, TextArea, TextField } from './fields'

const containerOptions = containers.map((container) => ({ value: container, label: container }))

/** A roll or a tin that has come. The lot number stands first: a scanner types it there. */
export function NewLotFields({
  kind,
  unit,
  rollWidthMm,
  shelfLifeDays,
}: {
  readonly kind: 'material' | 'product'
  readonly unit: StockUnit
  readonly rollWidthMm: number | null
  readonly shelfLifeDays: number | null
}) {
  return (
    <>
      {['id', 'subjectKind', 'subjectId', 'unit'].map((name) => (
        <Hidden key={name} name={name} />
      ))}
      <TextField name="lot" label="Lot or batch number" hint="as the label has it; typed or scanned" />
      {kind === 'material' ? (
        <div className="field-row">
          <TextField
            name="rollLengthM"
            label="Length of the roll"
            numeric
            unit="m"
            hint={rollWidthMm === null ? undefined : `times its width of ${rollWidthMm} mm`}
          />
          <TextField name="amount" label="or its area" numeric unit="m²" />
        </div>
      ) : (
        <TextField name="amount" label="How much came" numeric unit={unitWords[unit]} />
      )}
      <div className="field-row">
        <TextField
          name="expiresOn"
          label="Good until"
          type="date"
          hint={
            shelfLifeDays === null
              ? 'the date on the label; blank: none'
              : `the date on the label; blank: ${shelfLifeDays} days, as its card has it`
          }
        />
        <TextField name="receivedOn" label="Came on" type="date" />
      </div>
      <div className="field-row">
        <SelectField name="container" label="What it is in" options={containerOptions} />
        <TextField name="place" label="Where it stands" hint="freezer 2, solvent cupboard" />
      </div>
      <Fold title="Opened already, note">
        <TextField name="openedOn" label="Opened on" type="date" />
        <TextArea name="note" label="Note" rows={2} />
      </Fold>
    </>
  )
}

/** What of a lot is edited later; amounts change by moves only. */
export function LotFields() {
  return (
    <>
      <Hidden name="id" />
      <Hidden name="version" />
      <TextField name="lot" label="Lot or batch number" />
      <div className="field-row">
        <TextField
          name="expiresOn"
          label="Good until"
          type="date"
          hint="the date on the label; blank: none"
        />
        <TextField name="openedOn" label="Opened on" type="date" />
        <TextField name="receivedOn" label="Came on" type="date" />
      </div>
      <div className="field-row">
        <SelectField name="container" label="What it is in" options={containerOptions} />
        <TextField name="place" label="Where it stands" />
      </div>
      <TextArea name="note" label="Note" rows={2} />
    </>
  )
}
