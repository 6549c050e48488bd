'use client'
import { ChoiceField, SelectField, TextArea, TextField } from '../fields'
import { type LogFieldsProps, option, options, Where } from './field-options'

/** Moved, state, open matter and the last word on it, before the book, note. */
export function BookFields({ kind, of, states, places, people, matters }: LogFieldsProps) {
  switch (kind) {
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
            <TextField name="data.untilOn" label="Until" type="date" hint="blank: until it is ended" />
          </div>
          <TextField name="data.reason" label="Because" />
        </>
      )
    case 'matter':
      return (
        <>
          <TextArea name="data.what" label="What is to be seen to" />
          <div className="field-row">
            <TextField name="data.who" label="Who sees to it" list={people} />
            <TextField name="data.untilOn" label="Until" type="date" hint="blank: no day" />
          </div>
          <Where places={places} />
        </>
      )
    case 'settled':
      return (
        <>
          <SelectField name="data.entryId" label="Matter" options={matters} />
          <ChoiceField
            name="data.outcome"
            label="It is"
            options={[option('closed', 'closed: done'), option('carried', 'carried on')]}
          />
          <div className="field-row">
            <TextField name="data.untilOn" label="Carried on until" type="date" />
            <TextField name="data.who" label="By" list={people} hint="blank: whoever had it" />
          </div>
          <TextField name="data.how" label="How, or why it waits" />
        </>
      )
    case 'before-book':
      return (
        <>
          <p className="note">
            What it went through before it was written down. A range, never a single figure that nobody knows;
            what stays blank stays unknown and is never counted as nought.
          </p>
          {of === 'mould' ? (
            <>
              <Range label="Pulls" at="data.pulls" />
              <Range label="Heats" at="data.heat" hint="all three or none" />
            </>
          ) : (
            <>
              <Range label="Pulls: moulds taken off it" at="data.pulls" />
              <Range label="Heats" at="data.heat" hint="all three or none" />
            </>
          )}
          <TextArea name="data.what" label="What it is known from" rows={2} />
        </>
      )
    case 'note':
      return <Where places={places} />
    default:
      return null
  }
}

function Range({ label, at, hint }: { readonly label: string; readonly at: string; readonly hint?: string }) {
  return (
    <fieldset className="field">
      <legend>
        {label}
        {hint ? <small> {hint}</small> : null}
      </legend>
      <div className="field-row">
        <TextField name={`${at}Low`} label="At least" numeric />
        <TextField name={`${at}Best`} label="Best guess" numeric />
        <TextField name={`${at}High`} label="At most" numeric />
      </div>
    </fieldset>
  )
}
