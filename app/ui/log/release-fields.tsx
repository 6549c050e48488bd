'use client'
import { ChoiceField, TextField } from '../fields'
import { type LogFieldsProps, option, Where } from './field-options'

/** Stripped, cleaned, sealed, coats, tape test, test patch. */
export function ReleaseFields({ kind, places, products }: LogFieldsProps) {
  switch (kind) {
    case 'strip':
    case 'clean':
      return (
        <>
          <Where places={places} />
          <TextField
            name="data.product"
            label={kind === 'strip' ? 'Stripped with' : 'Cleaned with'}
            list={products}
          />
        </>
      )
    case 'seal':
    case 'coat':
      return (
        <>
          <TextField
            name="data.coats"
            label={kind === 'seal' ? 'Coats of sealer' : 'Coats'}
            numeric
            hint="how many were put on; blank is not nought"
          />
          <Where places={places} />
          <TextField
            name="data.product"
            label={kind === 'seal' ? 'Sealer' : 'Release agent'}
            list={products}
          />
          <div className="field-row">
            <TextField name="data.lot" label="Lot or tin" />
            {kind === 'coat' ? (
              <TextField name="data.minutesBetween" label="Time between coats" numeric unit="min" />
            ) : null}
          </div>
        </>
      )
    case 'tape-test':
      return (
        <>
          <ChoiceField
            name="data.result"
            label="The tape"
            options={[option('slips', 'slips: comes off easily'), option('grips', 'grips: recoat')]}
          />
          <Where places={places} />
        </>
      )
    case 'test-patch':
      return (
        <>
          <ChoiceField
            name="data.result"
            label="The test patch"
            options={[option('releases', 'releases'), option('grips', 'grips')]}
          />
          <TextField name="data.surface" label="Laid on" hint="a tile, an offcut, the flange" />
          <div className="field-row">
            <TextField name="data.sealer" label="Sealer" hint="blank: none" />
            <TextField name="data.agent" label="Release agent" list={products} />
          </div>
          <Where places={places} />
        </>
      )
    default:
      return null
  }
}
