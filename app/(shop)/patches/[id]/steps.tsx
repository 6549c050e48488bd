import type { ReactNode } from 'react'
import { becauseKey } from '#lib/core/repair/index'
import { lotOption } from '#lib/core/stores/index'
import { formatQuantity } from '#lib/core/units'
import type { readPatch } from '#lib/services/patches'
import type { planStock } from '#lib/services/stores-lots'
import { ActionForm } from '../../../ui/action-form'
import { Fold, Hidden, SelectField, TextArea, TextField } from '../../../ui/fields'
import { bench, lay, prove, putBy, sign } from './actions'

type Plan = Awaited<ReturnType<typeof readPatch>>['plans'][number]
type Stock = Awaited<ReturnType<typeof planStock>>

interface StepProps {
  readonly plan: Plan
  readonly role: string
  readonly selfChecked: boolean
  readonly today: string
  /** Id of the log entry that a step would write. */
  readonly entryId: string
  /** What the stores have of each material of the take-off. */
  readonly stock: Stock
}

/** What can be done with a plan now, as forms that work before any script has loaded. */
export function PlanSteps({ plan, role, selfChecked, today, entryId, stock }: StepProps) {
  const base = { planId: plan.id, patchId: plan.patchId, sawVersion: String(plan.version) }
  const head = (
    <>
      <Hidden name="planId" />
      <Hidden name="patchId" />
      <Hidden name="sawVersion" />
    </>
  )
  const parts = { plan, base, head }
  const away =
    role === 'lead' && ['sketched', 'signed', 'on the bench'].includes(plan.state) ? (
      <details style={{ marginTop: 18 }}>
        <summary>Put this plan by</summary>
        <div className="narrow" style={{ marginTop: 10 }}>
          <ActionForm action={putBy} defaults={{ ...base, reason: '' }} submit="Put it by">
            {head}
            <TextField name="reason" label="Because" />
          </ActionForm>
        </div>
      </details>
    ) : null
  return (
    <div className="narrow">
      {step()}
      {away}
    </div>
  )

  function step() {
    switch (plan.state) {
      case 'sketched':
        return role === 'lead' ? (
          <Sign {...parts} selfChecked={selfChecked} />
        ) : (
          <p className="note">Sketched. A lead signs it.</p>
        )
      case 'signed':
        return role === 'viewer' ? (
          <p className="note">Signed, and waits for the bench.</p>
        ) : (
          <>
            <h2>To the bench</h2>
            <p className="note" style={{ margin: '6px 0 12px' }}>
              The mould is then under repair, and the job lines can be ticked. Print the bench sheet and the
              ply templates first.
            </p>
            <ActionForm action={bench} defaults={base} submit="Put it on the bench">
              {head}
            </ActionForm>
          </>
        )
      case 'on the bench':
        return role === 'viewer' ? (
          <p className="note">On the bench.</p>
        ) : (
          <Lay {...parts} entryId={entryId} today={today} stock={stock} />
        )
      case 'laid':
        return role === 'viewer' ? (
          <p className="note">Laid, not yet proved.</p>
        ) : (
          <Prove {...parts} entryId={entryId} today={today} />
        )
      case 'proved':
        return (
          <p className="note">
            Proved: the patch is part of the mould. What comes next on this place is a new patch.
          </p>
        )
      case 'put by':
        return <p className="note">Put by: {plan.putByReason}</p>
    }
  }
}

interface StepParts {
  readonly plan: Plan
  /** What every step of a plan is sent with. */
  readonly base: Readonly<Record<string, string>>
  readonly head: ReactNode
}

/** A step that also writes the log. */
interface WrittenStep {
  readonly entryId: string
  readonly today: string
}

function Sign({ plan, base, head, selfChecked }: StepParts & { readonly selfChecked: boolean }) {
  const { findings } = plan.result
  const stops = findings.filter((finding) => finding.severity === 'stop')
  const looks = findings.filter((finding) => finding.severity === 'look')
  if (stops.length > 0) {
    return (
      <>
        <h2>Sign</h2>
        <p style={{ margin: '6px 0' }}>
          This plan can't be signed:{' '}
          {stops.length === 1 ? 'one finding stops it' : `${stops.length} findings stop it`}. Make a new
          version.
        </p>
        <ul>
          {stops.map((finding) => (
            <li key={finding.text}>
              {finding.text} <span className="note">{finding.cure}</span>
            </li>
          ))}
        </ul>
      </>
    )
  }
  return (
    <>
      <h2>Sign</h2>
      <p className="note" style={{ margin: '6px 0 12px' }}>
        A signed plan doesn't change; a new version does.
        {selfChecked ? ' You sketched it yourself: it will be marked as self-checked.' : ''}
        {looks.length > 0 ? ' Each look is signed with a because.' : ''}
      </p>
      <ActionForm
        action={sign}
        defaults={{ ...base, ...Object.fromEntries(looks.map((_look, index) => [`because${index}`, ''])) }}
        submit="Sign the plan"
      >
        {head}
        {looks.map((finding, index) => (
          <div key={becauseKey(finding)}>
            <input type="hidden" name="becauseKey" value={becauseKey(finding)} readOnly />
            <TextField name={`because${index}`} label={finding.text} hint={finding.cure ?? undefined} />
          </div>
        ))}
      </ActionForm>
    </>
  )
}

/** A row of the form for each material, and a second one where a roll did not reach. */
function Lay({
  plan,
  base,
  head,
  entryId,
  today,
  stock,
}: StepParts & WrittenStep & { readonly stock: Stock }) {
  const materials = plan.result.value.takeOff.map(({ material, grossAreaM2 }) => ({
    name: material.name,
    areaM2: formatQuantity(grossAreaM2, 'area', 'm2', 2),
    lots: stock.find((each) => each.material === material.name)?.lots ?? [],
  }))
  const rows = [...materials, ...materials.filter((material) => material.lots.length > 1)]
  const lots = Object.fromEntries(
    rows.map((row, index) => [
      index,
      {
        material: row.name,
        lot: '',
        lotId: '',
        areaM2: index < materials.length ? row.areaM2 : '',
        because: '',
      },
    ]),
  )
  return (
    <>
      <h2>Laid</h2>
      <p className="note" style={{ margin: '6px 0 12px' }}>
        When the plies are in and cured: writes the entry into the mould's log, and takes from the lots what
        was laid. The mould is for a proof pull only until the patch is proved.
      </p>
      <ActionForm
        action={lay}
        defaults={{ ...base, entryId, doneOn: today, note: '', lots }}
        submit="Write it down as laid"
      >
        {head}
        <Hidden name="entryId" />
        {rows.slice(0, materials.length).map((row, index) => (
          <LaidFrom key={row.name} row={row} name={`lots.${index}`} />
        ))}
        {rows.length > materials.length ? (
          <Fold title="From a second lot as well">
            {rows.slice(materials.length).map((row, index) => (
              <LaidFrom key={row.name} row={row} name={`lots.${materials.length + index}`} second />
            ))}
          </Fold>
        ) : null}
        <TextField name="doneOn" label="Laid on" type="date" />
        <TextArea name="note" label="Note" rows={2} />
      </ActionForm>
    </>
  )
}

/** A lot reads as a whole sentence: on a phone it has the width to itself. */
const wideEnough = { gridTemplateColumns: 'repeat(auto-fit, minmax(min(240px, 100%), 1fr))' }

/** What a material was laid from: a lot of the stores with the area taken, or the words of another lot. */
function LaidFrom({
  row,
  name,
  second = false,
}: {
  readonly row: { readonly name: string; readonly lots: Stock[number]['lots'] }
  readonly name: string
  readonly second?: boolean
}) {
  const nth = second ? ', second lot' : ''
  const told = row.lots.flatMap((lot) => lot.findings.map((finding) => finding.text))
  const needsBecause = row.lots.some((lot) => !lot.standing.usable)
  return (
    <>
      <Hidden name={`${name}.material`} />
      {row.lots.length > 0 ? (
        <>
          <div className="field-row" style={wideEnough}>
            <SelectField
              name={`${name}.lotId`}
              label={`${row.name} from the stores${nth}`}
              options={[
                { value: '', label: second ? 'none' : 'choose the lot, or name another below' },
                ...row.lots.map(lotOption).map(({ value, label }) => ({ value, label })),
              ]}
            />
            <TextField
              name={`${name}.areaM2`}
              label={`Area taken${nth}`}
              numeric
              unit="m²"
              hint="as the take-off has it"
            />
          </div>
          {told.length > 0 && !second ? (
            <ul className="note" style={{ margin: 0 }}>
              {told.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          ) : null}
          {needsBecause ? (
            <TextField name={`${name}.because`} label={`Because${nth}`} hint="when the lot is out of life" />
          ) : null}
        </>
      ) : null}
      {second ? null : (
        <TextField
          name={`${name}.lot`}
          label={`Lot of ${row.name}`}
          hint={row.lots.length > 0 ? 'only where the stores do not keep it' : undefined}
        />
      )}
    </>
  )
}

function Prove({ base, head, entryId, today }: StepParts & WrittenStep) {
  return (
    <>
      <h2>Proved</h2>
      <p className="note" style={{ margin: '6px 0 12px' }}>
        After a careful first pull that came off as usual. From then on the patch is trusted.
      </p>
      <ActionForm
        action={prove}
        defaults={{ ...base, entryId, doneOn: today, note: '' }}
        submit="Write it down as proved"
      >
        {head}
        <Hidden name="entryId" />
        <TextField name="doneOn" label="Proved on" type="date" />
        <TextArea name="note" label="Note" rows={2} />
      </ActionForm>
    </>
  )
}
