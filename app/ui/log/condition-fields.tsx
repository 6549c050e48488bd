'use client'
import { ChoiceField, TextArea, TextField, TickField } from '../fields'
import { type LogFieldsProps, option, options, Where } from './field-options'
import { MeasuredField } from './measured-field'

/** Leak check, inspection, damage, measured points, and work on the mould or pattern. */
export function ConditionFields({ kind, of, places, tags }: LogFieldsProps) {
  const spot =
    of === 'mould' ? (
      <div className="field-row">
        <TextField name="data.uMm" label="Place, u" numeric unit="mm" hint="in the area's frame" />
        <TextField name="data.vMm" label="Place, v" numeric unit="mm" />
      </div>
    ) : null
  switch (kind) {
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
          <TextField
            name="data.bagging"
            label="What was bagged, and how"
            list={['mould alone', 'envelope bag', 'with its bag']}
          />
          <div className="field-row">
            <TextField name="data.temperatureC" label="Temperature" numeric unit="°C" />
            <TextField name="data.volumeL" label="Volume under the bag" numeric unit="l" hint="if known" />
          </div>
        </>
      )
    case 'inspection':
      return (
        <>
          <ChoiceField name="data.verdict" label="Found" options={options('sound', 'look', 'not sound')} />
          <Where places={places} />
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
              option('stop', of === 'mould' ? 'stop: hold the mould' : 'stop: not to be used'),
            ]}
          />
          <Where places={places} />
          {spot}
        </>
      )
    case 'repair':
      return (
        <>
          <ChoiceField
            name="data.method"
            label="How"
            options={[
              option('fill', 'fill'),
              option('surface ply', 'surface ply'),
              option('other', 'another way'),
            ]}
          />
          <TextArea name="data.what" label="What was repaired, and with what" />
          <Where places={places} />
          {spot}
          <TickField
            name="data.interim"
            label="For the time being"
            hint="It then stands among the open matters, and stops the lay-up when its limit is reached"
          />
          <div className="field-row">
            <TextField name="data.untilPulls" label="For so many pulls" numeric />
            <TextField name="data.untilOn" label="Or until" type="date" />
            <TextField name="data.maxC" label="No hotter than" numeric unit="°C" hint="if it has a limit" />
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
    case 're-machined':
      return (
        <>
          <TextArea name="data.what" label="What was re-machined" />
          <Where places={places} />
          <div className="field-row">
            <TextField name="data.depthMm" label="How deep" numeric unit="mm" hint="if known" />
            <TextField name="data.by" label="By" hint="shop or machine" />
          </div>
        </>
      )
    case 'measured':
      return (
        <>
          <div className="field-row">
            <TextField
              name="data.instrument"
              label="Measured with"
              list={['measuring arm', 'laser tracker', 'height gauge', 'calliper']}
            />
            <TextField name="data.temperatureC" label="Temperature of it" numeric unit="°C" hint="if known" />
          </div>
          {of === 'mould' ? (
            <>
              <ChoiceField
                name="data.frame"
                label="In the frame of"
                options={[option('area', 'the area: u, v, n'), option('datum', 'the datum axes: x, y, z')]}
              />
              <Where places={places} />
            </>
          ) : null}
          <MeasuredField />
        </>
      )
    default:
      return null
  }
}
