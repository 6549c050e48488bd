import type { ReactNode } from 'react'
import { becauseKey } from '#lib/core/repair/index'
import type { readPatch } from '#lib/services/patches'
import { ActionForm } from '../../../ui/action-form'
import { Hidden, TextArea, TextField } from '../../../ui/fields'
import { bench, lay, prove, putBy, sign } from './actions'

type Plan = Awaited<ReturnType<typeof readPatch>>['plans'][number]

interface StepProps {
  readonly plan: Plan
  readonly role: string
  readonly selfChecked: boolean
  readonly today: string
  /** Id of the log entry that a step would write. */
  readonly entryId: string
}

/** What can be done with a plan now, as forms that work before any script has loaded. */
export function PlanSteps({ plan, role, selfChecked, today, entryId }: StepProps) {
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
          <Lay {...parts} entryId={entryId} today={today} />
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

function Lay({ plan, base, head, entryId, today }: StepParts & WrittenStep) {
  const materials = plan.result.value.takeOff.map((each) => each.material.name)
  return (
    <>
      <h2>Laid</h2>
      <p className="note" style={{ margin: '6px 0 12px' }}>
        When the plies are in and cured: writes the entry into the mould's log. The mould is for a proof pull
        only until the patch is proved.
      </p>
      <ActionForm
        action={lay}
        defaults={{
          ...base,
          entryId,
          doneOn: today,
          note: '',
          ...Object.fromEntries(materials.map((_name, index) => [`lot${index}`, ''])),
        }}
        submit="Write it down as laid"
      >
        {head}
        <Hidden name="entryId" />
        {materials.map((name, index) => (
          <div key={name}>
            <input type="hidden" name="material" value={name} readOnly />
            <TextField name={`lot${index}`} label={`Lot of ${name}`} />
          </div>
        ))}
        <TextField name="doneOn" label="Laid on" type="date" />
        <TextArea name="note" label="Note" rows={2} />
      </ActionForm>
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
