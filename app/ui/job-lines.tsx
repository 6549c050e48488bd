import { shopDay, shopTime, shortDate } from '#lib/core/dates'
import { type Irreplaceable, isCutting } from '#lib/core/lineage/index'
import type { readPatch } from '#lib/services/patches'
import { tick } from '../(shop)/patches/[id]/actions'
import { ActionForm } from './action-form'
import { OnceOnly } from './cant-be-made-again'
import { Hidden, TextField } from './fields'
import { HeadOut } from './table-out'

type Plan = Awaited<ReturnType<typeof readPatch>>['plans'][number]
type Line = Plan['lines'][number]

/** The work in its order, each line with its cautions; ticked on the bench with name and time. */
export function JobLines({
  plan,
  mayTick,
  timeZone,
  today,
  lost,
}: {
  readonly plan: Plan
  readonly mayTick: boolean
  readonly timeZone: string
  readonly today: string
  /** The mould, where another one can't be made. */
  readonly lost: Irreplaceable | null
}) {
  const open = mayTick && (plan.state === 'on the bench' || plan.state === 'laid')
  const done = plan.lines.filter((line) => line.tickedAt !== null).length
  const next = open ? plan.lines.find((line) => line.tickedAt === null) : undefined
  return (
    <>
      <HeadOut
        name="job-lines"
        of={{ patch: plan.patchId, v: String(plan.versionNo) }}
        label="Job lines of this plan"
      >
        <h2>
          Job lines{' '}
          <span className="note" style={{ fontWeight: 400 }}>
            {done} of {plan.lines.length} done
          </span>
        </h2>
      </HeadOut>
      <ol className="job-lines">
        {plan.lines.map((line) => (
          <li
            key={line.position}
            id={`line-${line.position}`}
            className={line.tickedAt ? 'done' : line === next ? 'next' : undefined}
          >
            <div>
              <h3>
                {line.position}. {line.title}
              </h3>
              {line.tickedAt === null && isCutting(line.code) ? (
                <p>
                  <OnceOnly of={lost} />
                </p>
              ) : null}
              {line.tickedAt ? (
                <div className="done-line">
                  <p className="good">
                    Done: {line.tickedByName}, {shortDate(shopDay(line.tickedAt, timeZone).day, today)},{' '}
                    {shopTime(line.tickedAt, timeZone)}
                    {line.tickNote ? <span className="note"> {line.tickNote}</span> : null}
                  </p>
                  <details>
                    <summary>How</summary>
                    <How line={line} />
                  </details>
                </div>
              ) : (
                <How line={line} />
              )}
            </div>
            {open ? <Tick plan={plan} line={line} /> : null}
          </li>
        ))}
      </ol>
    </>
  )
}

/** What is done and what to beware of; folded away once it is done. */
function How({ line }: { readonly line: Line }) {
  return (
    <>
      <p>{line.detail}</p>
      {line.cautions.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
    </>
  )
}

function Tick({ plan, line }: { readonly plan: Plan; readonly line: Line }) {
  const done = line.tickedAt !== null
  return (
    <ActionForm
      key={String(done)}
      action={tick}
      defaults={{
        planId: plan.id,
        patchId: plan.patchId,
        position: String(line.position),
        ticked: String(!done),
        note: '',
      }}
      submit={done ? 'Take it back' : `Done: ${line.position}`}
    >
      <Hidden name="planId" />
      <Hidden name="patchId" />
      <Hidden name="position" />
      <Hidden name="ticked" />
      {done ? (
        <Hidden name="note" />
      ) : (
        <TextField name="note" label={line.secondPerson ? 'Looked at by' : 'Note'} />
      )}
    </ActionForm>
  )
}
