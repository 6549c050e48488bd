'use client'
import {
  ChoiceField,
  FileField,
  Fold,
  type Option,
  SelectField,
  TextArea,
  TextField,
  TickField,
} from './fields'

/** The fields of a face area. Lines and keep-outs have a few open rows; blank rows are left out. */
export function AreaFields({
  axisNames,
  stacks,
  lines,
  keepOuts,
}: {
  readonly axisNames: readonly string[]
  readonly stacks: readonly Option[]
  /** The name of each row, blank where none stands yet. */
  readonly lines: readonly string[]
  readonly keepOuts: readonly string[]
}) {
  return (
    <>
      <TextField name="name" label="Name" hint="for example floor; places are named by it: floor B5" />
      <fieldset className="form rule-top">
        <legend>Boundary</legend>
        <ChoiceField
          name="boundaryKind"
          label="Given as"
          options={[
            { value: 'rectangle', label: 'rectangle' },
            { value: 'points', label: 'coordinates or a file' },
          ]}
        />
        <div className="field-row of-rectangle">
          <TextField name="rectangleLength" label="Length along u" numeric unit="mm" />
          <TextField name="rectangleWidth" label="Width along v" numeric unit="mm" />
        </div>
        <div className="form of-points">
          <TextArea
            name="boundaryText"
            label="Coordinates"
            rows={6}
            hint="u; v in mm, a line for each point in order round the area, seen from the cavity"
          />
          <div className="field-row">
            <FileField
              name="boundaryFile"
              label="or a file"
              accept=".dxf,.svg,.csv,.txt,.tsv,.json,image/svg+xml"
              hint="DXF or SVG, or a table of coordinates"
            />
            <SelectField
              name="boundaryUnit"
              label="Unit of the file"
              options={[
                { value: '', label: 'as the file says' },
                { value: 'mm', label: 'mm' },
                { value: 'cm', label: 'cm' },
                { value: 'm', label: 'm' },
                { value: 'in', label: 'in' },
              ]}
            />
          </div>
        </div>
      </fieldset>
      <fieldset className="form rule-top">
        <legend>Frame in the mould's datum axes</legend>
        <div className="field-row">
          <TextField name="originMm.0" label="Origin x" numeric unit="mm" />
          <TextField name="originMm.1" label="Origin y" numeric unit="mm" />
          <TextField name="originMm.2" label="Origin z" numeric unit="mm" />
        </div>
        <div className="field-row">
          <TextField
            name="uAxisText"
            label="u runs along"
            list={axisNames}
            hint="+x, -y … or three figures parted by ;"
          />
          <TextField
            name="vAxisText"
            label="v runs along"
            list={axisNames}
            hint="u × v points out of the face into the cavity"
          />
        </div>
        <div className="field-row">
          <TextField name="gridCellMm" label="Cell of the location grid" numeric unit="mm" />
          <TextField
            name="gridU"
            label="Corner of A1, u"
            numeric
            hint="blank: top left of the boundary; never re-laid after"
          />
          <TextField name="gridV" label="and v" numeric />
        </div>
        <SelectField
          name="stackId"
          label="Stack here"
          options={[{ value: '', label: "the mould's stack" }, ...stacks]}
        />
      </fieldset>
      <fieldset className="form rule-top">
        <legend>Trim and scribe lines on the face</legend>
        {rowNames(lines.length).map((index) => (
          <Fold
            key={index}
            title={rowTitle('Line', 'another line', lines, index)}
            open={lines.every((name) => name === '') && index === '0'}
          >
            <div className="field-row">
              <TextField
                name={`line${index}.name`}
                label={`Name of line ${Number(index) + 1}`}
                hint="blank: no line"
              />
              <SelectField
                name={`line${index}.kind`}
                label="Kind"
                options={[
                  { value: 'trim', label: 'trim' },
                  { value: 'scribe', label: 'scribe' },
                ]}
              />
              <TextField
                name={`line${index}.inset`}
                label="Inside the boundary by"
                numeric
                unit="mm"
                hint="or points below"
              />
            </div>
            <TextArea name={`line${index}.points`} label="Points" rows={3} hint="u; v a line" />
            <TickField name={`line${index}.closed`} label="Closed" />
          </Fold>
        ))}
      </fieldset>
      <fieldset className="form rule-top">
        <legend>Ground to keep off on the back</legend>
        {rowNames(keepOuts.length).map((index) => (
          <Fold key={index} title={rowTitle('Ground', 'another ground', keepOuts, index)}>
            <div className="field-row">
              <TextField
                name={`keep${index}.name`}
                label={`Name of ground ${Number(index) + 1}`}
                hint="blank: none"
              />
              <SelectField
                name={`keep${index}.kind`}
                label="Kind"
                options={[
                  { value: 'flange', label: 'flange' },
                  { value: 'seal-land', label: 'seal land' },
                  { value: 'backing', label: 'backing structure' },
                  { value: 'other', label: 'other' },
                ]}
              />
            </div>
            <TextArea name={`keep${index}.points`} label="Outline" rows={4} hint="u; v a line" />
          </Fold>
        ))}
      </fieldset>
    </>
  )
}

/** "Line 2: floor trim", or "Line 3: another line" where none stands yet. */
function rowTitle(what: string, blank: string, names: readonly string[], index: string): string {
  return `${what} ${Number(index) + 1}: ${names[Number(index)] || blank}`
}

/** "0", "1" ...: what the rows of a form are called. */
function rowNames(count: number): string[] {
  return Array.from({ length: count }, (_row, index) => String(index))
}
