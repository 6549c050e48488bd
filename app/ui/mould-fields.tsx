'use client'
import { ChoiceField, type Option, SelectField, TextArea, TextField, TickField } from './fields'

/** Names of the mould's fields, for the form and for the list of what somebody else changed. */
export const mouldLabels: Readonly<Record<string, string>> = {
  code: 'Code',
  name: 'Name',
  partId: 'Part',
  patternId: 'Off pattern',
  setId: 'Split mould',
  pieceNo: 'Piece number',
  hand: 'Hand',
  madeWhen: 'Made',
  patternState: 'State of the pattern then',
  stackId: 'Stack',
  owner: 'Owner',
  massKg: 'Mass',
  lengthMm: 'Length',
  widthMm: 'Width',
  heightMm: 'Height',
  liftingPoints: 'Lifting points',
  backing: 'Backing structure',
  heatInUseC: 'In use, under pressure',
  heatFreeC: 'Free-standing',
  heatBondedC: 'Bonded bushes and backing',
  tgDryC: 'Tg dry',
  tgWetC: 'Tg wet',
  tgNote: 'Where the Tg comes from',
  partCureC: 'Hottest part cure',
  canBeMadeAgain: 'Can be made again',
  demoulding: 'Demoulding',
  doNots: 'Never',
  note: 'Note',
}

const label = (name: string): string => mouldLabels[name] ?? name

export interface MouldChoices {
  readonly parts: readonly Option[]
  readonly patterns: readonly Option[]
  readonly sets: readonly Option[]
  readonly stacks: readonly Option[]
}

/** Everything that a mould's record holds; only code and name must be given, blanks stay not known. */
export function MouldFields({ choices }: { readonly choices: MouldChoices }) {
  const orNone = (options: readonly Option[], none: string): Option[] => [
    { value: '', label: none },
    ...options,
  ]
  return (
    <>
      <div className="field-row">
        <TextField name="code" label={label('code')} hint="for example LH-P2; compared without case" />
        <TextField name="name" label={label('name')} />
      </div>
      <fieldset className="form rule-top">
        <legend>Where it comes from</legend>
        <div className="field-row">
          <SelectField name="partId" label={label('partId')} options={orNone(choices.parts, 'not said')} />
          <SelectField
            name="patternId"
            label={label('patternId')}
            options={orNone(choices.patterns, 'not known')}
          />
        </div>
        <div className="field-row">
          <TextField
            name="madeWhen"
            label={label('madeWhen')}
            hint="as well as it is known: May 2024, before 2022"
          />
          <ChoiceField
            name="hand"
            label={label('hand')}
            options={[
              { value: 'none', label: 'none' },
              { value: 'port', label: 'port' },
              { value: 'starboard', label: 'starboard' },
            ]}
          />
        </div>
        <TextField name="patternState" label={label('patternState')} />
        <div className="field-row">
          <SelectField
            name="setId"
            label={label('setId')}
            options={orNone(choices.sets, 'a mould of its own')}
          />
          <TextField
            name="pieceNo"
            label={label('pieceNo')}
            numeric
            hint="only for a piece of a split mould"
          />
        </div>
        <TickField
          name="canBeMadeAgain"
          label={label('canBeMadeAgain')}
          hint="unticked: every risky act says that it can't be made again"
        />
      </fieldset>
      <fieldset className="form rule-top">
        <legend>What it is made of</legend>
        <SelectField
          name="stackId"
          label={label('stackId')}
          options={orNone(choices.stacks, 'not known')}
          hint="the plies of its laminate; stacks are kept in Stores"
        />
        <TextField name="backing" label={label('backing')} />
        <TextField
          name="liftingPoints"
          label={label('liftingPoints')}
          hint="where, which thread, how much each holds; slings that fit"
        />
        <div className="field-row">
          <TextField name="massKg" label={label('massKg')} numeric unit="kg" />
          <TextField name="lengthMm" label={label('lengthMm')} numeric unit="mm" />
          <TextField name="widthMm" label={label('widthMm')} numeric unit="mm" />
          <TextField name="heightMm" label={label('heightMm')} numeric unit="mm" />
        </div>
      </fieldset>
      <fieldset className="form rule-top">
        <legend>Heat: three limits, not one</legend>
        <div className="field-row">
          <TextField name="heatInUseC" label={label('heatInUseC')} numeric unit="°C" />
          <TextField name="heatFreeC" label={label('heatFreeC')} numeric unit="°C" hint="the present Tg" />
          <TextField name="heatBondedC" label={label('heatBondedC')} numeric unit="°C" />
        </div>
        <div className="field-row">
          <TextField name="tgDryC" label={label('tgDryC')} numeric unit="°C" />
          <TextField name="tgWetC" label={label('tgWetC')} numeric unit="°C" />
          <TextField
            name="partCureC"
            label={label('partCureC')}
            numeric
            unit="°C"
            hint="of the parts made in it"
          />
        </div>
        <TextField name="tgNote" label={label('tgNote')} hint="measured or from a sheet, after which cure" />
      </fieldset>
      <fieldset className="form rule-top">
        <legend>Handling</legend>
        <TextArea
          name="demoulding"
          label={label('demoulding')}
          hint="order of bolts, wedges, air; what helps"
        />
        <TextArea name="doNots" label={label('doNots')} hint="what has done harm before" />
        <TextField name="owner" label={label('owner')} />
        <TextArea name="note" label={label('note')} />
      </fieldset>
    </>
  )
}
