'use client'
import type { LogKind } from '#lib/core/log/index'
import { ChoiceField, Hidden, type Option, SelectField, TextArea, TextField } from './fields'

const option = (value: string, label = value): Option => ({ value, label })
const options = (...values: readonly string[]): Option[] => values.map((value) => option(value))

interface LogFieldsProps {
  readonly kind: LogKind
  readonly lead: boolean
  /** How many matters stop the next lay-up. */
  readonly stops: number
  readonly states: readonly string[]
  readonly places: readonly Option[]
  readonly products: readonly string[]
  readonly tags: readonly string[]
}

/** What each kind of entry asks for. The usual answer is preset. */
export function LogFields({ kind, lead, stops, states, places, products, tags }: LogFieldsProps) {
  const where = places.length > 1 ? <Where places={places} /> : null
  switch (kind) {
    case 'cleared':
      return stops > 0 ? (
        <TextArea
          name="data.because"
          label="Because"
          rows={2}
          hint={
            lead
              ? 'Something stops this lay-up. A lead may clear it all the same; the reason is written down'
              : 'Something stops this lay-up. Settle it first, or ask a lead'
          }
        />
      ) : (
        <Hidden name="data.because" />
      )
    case 'pull':
      return (
        <>
          <ChoiceField
            name="data.went"
            label="How it came out, against what is usual for this mould"
            options={options('usual', 'harder', 'forced', 'stuck')}
          />
          <div className="field-row">
            <TextField name="data.serial" label="Part serial" />
            <TextField name="data.cureC" label="Cured at" numeric unit="°C" />
          </div>
          <ChoiceField
            name="data.partFate"
            label="The part"
            options={options('good', 'rework', 'scrapped')}
          />
          <ChoiceField
            name="data.mouldFate"
            label="The mould"
            options={options('unharmed', 'marked', 'damaged')}
          />
        </>
      )
    case 'strip':
    case 'clean':
      return (
        <>
          {where}
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
          {where}
          <div className="field-row">
            <TextField
              name="data.product"
              label={kind === 'seal' ? 'Sealer' : 'Release agent'}
              list={products}
            />
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
          {where}
        </>
      )
    case 'leak-check':
      return (
        <>
          <div className="field-row">
            <TextField
              name="data.startMbar"
              label="Start, absolute"
              numeric
              unit="mbar"
              hint="inHg, kPa and psi are read too"
            />
            <TextField name="data.endMbar" label="End, absolute" numeric unit="mbar" />
            <TextField name="data.minutes" label="Over" numeric unit="min" />
          </div>
          <ChoiceField name="data.heat" label="Mould" options={options('cold', 'hot')} />
          <ChoiceField name="data.pins" label="Pins" options={options('out', 'in', 'none')} />
          <div className="field-row">
            <TextField
              name="data.bagging"
              label="What was bagged, and how"
              list={['mould alone', 'envelope bag', 'with its bag']}
            />
            <TextField name="data.temperatureC" label="Temperature" numeric unit="°C" />
            <TextField name="data.volumeL" label="Volume under the bag" numeric unit="l" hint="if known" />
          </div>
        </>
      )
    case 'inspection':
      return (
        <>
          <ChoiceField name="data.verdict" label="Found" options={options('sound', 'look', 'not sound')} />
          {where}
          <TextArea name="data.what" label="What was looked at, what was found" />
        </>
      )
    case 'damage':
      return (
        <>
          <TextArea name="data.what" label="What is damaged, and how" />
          <ChoiceField
            name="data.weight"
            label="What it means"
            options={[
              option('mark', 'a mark'),
              option('open matter', 'to be seen to'),
              option('stop', 'stop: hold the mould'),
            ]}
          />
          {where}
          <div className="field-row">
            <TextField name="data.uMm" label="Place, u" numeric unit="mm" hint="in the area's frame" />
            <TextField name="data.vMm" label="Place, v" numeric unit="mm" />
          </div>
        </>
      )
    case 'dowel-changed':
      return (
        <>
          <TextField name="data.tag" label="Dowel" list={tags} />
          <ChoiceField
            name="data.what"
            label="What was done"
            options={options('re-bushed', 'plugged', 'set new', 'removed')}
          />
          <div className="field-row">
            <TextField name="data.uMm" label="Place now, u" numeric unit="mm" hint="if it moved" />
            <TextField name="data.vMm" label="Place now, v" numeric unit="mm" />
            <TextField name="data.diameterMm" label="Diameter" numeric unit="mm" />
          </div>
        </>
      )
    case 'moved':
      return <TextField name="data.place" label="New place" hint="rack and level, shop, or who has it" />
    case 'state':
      return (
        <>
          <div className="field-row">
            <SelectField name="data.state" label="State" options={options(...states)} />
            <SelectField
              name="data.on"
              label="It is"
              options={[option('true', 'so from now on'), option('false', 'no longer so')]}
            />
          </div>
          <TextField name="data.reason" label="Because" />
        </>
      )
    case 'note':
      return where
    default:
      return null
  }
}

function Where({ places }: { readonly places: readonly Option[] }) {
  return places.length <= 5 ? (
    <ChoiceField name="where" label="Where" options={places} />
  ) : (
    <SelectField name="where" label="Where" options={places} />
  )
}
