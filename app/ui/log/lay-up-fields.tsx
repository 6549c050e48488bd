'use client'
import { ChoiceField, Hidden, TextArea, TextField, TickField } from '../fields'
import { type LogFieldsProps, option, options } from './field-options'

/** Cleared, pull, heat, pins driven. */
export function LayUpFields({ kind, lead, stops, tags, pieces }: LogFieldsProps) {
  switch (kind) {
    case 'cleared':
      return (
        <>
          <WholeSet pieces={pieces} />
          {stops > 0 ? (
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
          )}
        </>
      )
    case 'pull':
      return (
        <>
          <ChoiceField
            name="data.went"
            label="How it came out, against what is usual for this mould"
            options={options('usual', 'harder', 'forced', 'stuck')}
          />
          <WholeSet pieces={pieces} />
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
            hint="damaged: it is held until somebody has inspected it and found it sound"
          />
        </>
      )
    case 'heat':
      return (
        <>
          <ChoiceField name="data.what" label="What it was" options={options('cure', 'post-cure', 'other')} />
          <ChoiceField
            name="data.withPart"
            label="The mould"
            options={[option('true', 'with a part in it'), option('false', 'standing free')]}
            hint="A pull that names its cure counts as a heat already: write only what no pull tells"
          />
          <div className="field-row">
            <TextField name="data.toC" label="Hottest" numeric unit="°C" />
            <TextField name="data.holdMin" label="Held there" numeric unit="min" hint="2 h is read too" />
          </div>
        </>
      )
    case 'pins':
      return (
        <div className="field-row">
          <TextField name="data.tag" label="Pin" list={tags} hint="blank: every pin of the mould" />
          <TextField name="data.insertions" label="Driven in, times" numeric />
        </div>
      )
    default:
      return null
  }
}

/** One act on every piece: a part of a split mould is a pull on each. */
function WholeSet({ pieces }: { readonly pieces: readonly string[] }) {
  if (pieces.length < 2) return null
  return (
    <TickField
      name="wholeSet"
      label={`The whole split mould, every piece at once: ${pieces.join(', ')}`}
      hint="Written on each piece, all or none. Take the tick out for this piece alone"
    />
  )
}
