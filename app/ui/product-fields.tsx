'use client'
import { productUses, productUseWords, stockUnits } from '#lib/core/stores/index'
import { Hidden, SelectField, TextArea, TextField, TickField } from './fields'

const unitNames = { l: 'litres', kg: 'kg', piece: 'pieces', m: 'metres', m2: 'm²' } as const

/** The card of an agent, a resin, a consumable. */
export function ProductFields({ changing }: { readonly changing: boolean }) {
  return (
    <>
      <Hidden name="id" />
      {changing ? <Hidden name="version" /> : null}
      <div className="field-row">
        <TextField name="name" label="Name" hint="as it stands on the tin" />
        <SelectField
          name="use"
          label="Used as"
          options={productUses.map((use) => ({ value: use, label: productUseWords[use] }))}
        />
        <SelectField
          name="unit"
          label="Counted in"
          options={stockUnits.map((unit) => ({ value: unit, label: unitNames[unit] }))}
        />
      </div>
      <p className="note">Blank: the maker's sheet doesn't say.</p>
      <div className="field-row">
        <TextField name="coats" label="Coats as new" numeric />
        <TextField name="intervalMin" label="Between coats" numeric unit="min" />
        <TextField name="flashMin" label="Solvent gone after" numeric unit="min" />
      </div>
      <div className="field-row">
        <TextField name="cureMin" label="May be used after" numeric unit="min, or 2 h" />
        <TextField name="cureC" label="at" numeric unit="°C" />
        <TextField name="potLifeMin" label="Pot life" numeric unit="min" hint="mixed" />
      </div>
      <div className="field-row">
        <TextField name="shelfLifeDays" label="Keeps closed" numeric unit="days" />
        <TextField name="openLifeDays" label="Keeps opened" numeric unit="days" />
        <TextField name="heatLimitC" label="Hottest use" numeric unit="°C" />
      </div>
      <div className="field-row">
        <TextField
          name="lowBelow"
          label="Low below"
          numeric
          hint="over all lots that are fit; blank: never told"
        />
        <TextField name="storeAt" label="Keep it" hint="5 to 25 °C, dry, away from light" />
      </div>
      <TextArea name="cautions" label="Cautions" rows={2} />
      <TextArea name="note" label="Note" rows={2} />
      <TextField
        name="sourceNote"
        label="Where the figures come from"
        hint="data sheet and date, or: from memory"
      />
      {changing ? <TickField name="retired" label="No longer bought: not offered for new lots" /> : null}
    </>
  )
}
