'use client'
import { TextArea, TextField, TickField } from './fields'

/** Names of a pattern's fields, for the form and for the list of what somebody else changed. */
export const patternLabels = {
  code: 'Code',
  name: 'Name',
  madeOf: 'What it is made of',
  condition: 'Condition',
  place: 'Place',
  owner: 'Owner',
  massKg: 'Mass',
  lengthMm: 'Length',
  widthMm: 'Width',
  heightMm: 'Height',
  available: 'Moulds can be taken off it now',
  canBeMadeAgain: 'Can be made again',
  note: 'Note',
} as const

/** Everything that a pattern's record holds; only code and name must be given. */
export function PatternFields({ moved }: { readonly moved: boolean }) {
  return (
    <>
      <div className="field-row">
        <TextField name="code" label={patternLabels.code} hint="for example LH-PAT; compared without case" />
        <TextField name="name" label={patternLabels.name} />
      </div>
      <fieldset className="form rule-top">
        <legend>What it is</legend>
        <TextField
          name="madeOf"
          label={patternLabels.madeOf}
          hint="board and its density, machined where, on which frame; or a sanded plug"
        />
        <div className="field-row">
          <TextField name="massKg" label={patternLabels.massKg} numeric unit="kg" />
          <TextField name="lengthMm" label={patternLabels.lengthMm} numeric unit="mm" />
          <TextField name="widthMm" label={patternLabels.widthMm} numeric unit="mm" />
          <TextField name="heightMm" label={patternLabels.heightMm} numeric unit="mm" />
        </div>
        <TextField name="owner" label={patternLabels.owner} />
      </fieldset>
      <fieldset className="form rule-top">
        <legend>How it stands</legend>
        <TextArea
          name="condition"
          label={patternLabels.condition}
          rows={2}
          hint="how it was left: seal, edges, pins, what was filled"
        />
        <TextField
          name="place"
          label={patternLabels.place}
          hint={
            moved
              ? 'its log says where it was moved to last, and that is shown; write the next move into the log'
              : 'where it stands; later moves are written into its log'
          }
        />
        <TickField
          name="available"
          label={patternLabels.available}
          hint="unticked: gone, warped or lent; a patch then needs a splash or a caul"
        />
        <TickField
          name="canBeMadeAgain"
          label={patternLabels.canBeMadeAgain}
          hint="unticked: every risky act on it, and on its moulds, says so"
        />
        <TextArea name="note" label={patternLabels.note} />
      </fieldset>
    </>
  )
}
