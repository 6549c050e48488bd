import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shopDay, shortDate } from '#lib/core/dates'
import { planDrawing, sectionDrawing } from '#lib/core/drawing/index'
import { mouldLost } from '#lib/core/lineage/index'
import { edgeWords, sideWords } from '#lib/core/repair/index'
import { figure } from '#lib/core/units'
import { readMouldById } from '#lib/services/moulds'
import { readPatch } from '#lib/services/patches'
import { readSettings, type ShopContext } from '#lib/services/shop'
import { planStock } from '#lib/services/stores-lots'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { CantBeMadeAgain } from '../../../ui/cant-be-made-again'
import { TwoWidths } from '../../../ui/drawing/two-widths'
import { Findings } from '../../../ui/findings'
import { JobLines } from '../../../ui/job-lines'
import { Link } from '../../../ui/link'
import { PlyTable } from '../../../ui/patch-plies'
import { Stamp } from '../../../ui/stamp'
import { HeadOut } from '../../../ui/table-out'
import { TakeOff } from '../../../ui/take-off'
import { Working } from '../../../ui/working'
import { Downloads } from './downloads'
import { PlanSteps } from './steps'
import '../plan.css'

type Patch = Awaited<ReturnType<typeof readPatch>>
type Plan = Patch['plans'][number]

export const metadata: Metadata = { title: 'Patch' }

export default async function PlanPage({ params, searchParams }: PageProps<'/patches/[id]'>) {
  const { id } = await params
  const query = await searchParams
  const actor = await requireActor(`/patches/${id}${query.v ? `?v=${String(query.v)}` : ''}`)
  const patch = await found(readPatch(actor, { id }))
  const current = patch?.plans.find((plan) => plan.state !== 'put by') ?? patch?.plans[0]
  const plan = query.v ? patch?.plans.find((candidate) => String(candidate.versionNo) === query.v) : current
  if (!patch || !plan) notFound()
  const [context, stock, mould] = await Promise.all([
    readSettings(actor, {}),
    planStock(actor, { planId: plan.id }),
    readMouldById(actor, { id: patch.mouldId }),
  ])
  const lost = mouldLost(mould, mould.pattern)
  const value = plan.result.value
  const version = `?v=${plan.versionNo}`
  const ofPlan = { patch: patch.id, v: String(plan.versionNo) }
  // At the bench the lines are worked through first; before that the step itself comes first.
  const working = plan.state === 'on the bench' || plan.state === 'laid'
  const steps = (
    <section id="steps" className="rule-top plan-steps no-print" style={{ marginTop: 26 }}>
      <CantBeMadeAgain of={toBeCut.includes(plan.state) ? lost : null} act={cutActs[plan.state]} />
      <PlanSteps
        plan={plan}
        role={actor.role}
        selfChecked={plan.createdById === actor.id}
        today={context.today}
        entryId={randomUUID()}
        stock={stock}
      />
    </section>
  )
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={`/moulds/${encodeURIComponent(patch.mouldCode)}` as Route}>{patch.mouldCode}</Link> /
          Patch {patch.number}, version {plan.versionNo} of {patch.plans.length}
        </div>
        <div className="acts no-print">
          <a className="btn" href={`/patches/${patch.id}/bench-sheet${version}`}>
            Bench sheet
          </a>
          <a className="btn" href={`/patches/${patch.id}/templates${version}`}>
            Ply templates 1:1
          </a>
          {actor.role === 'lead' && ['sketched', 'signed', 'put by'].includes(plan.state) ? (
            <Link
              className="btn"
              href={`/patches/new?mould=${encodeURIComponent(patch.mouldCode)}&patch=${patch.id}` as Route}
            >
              New version
            </Link>
          ) : null}
          {nextStep[plan.state] ? (
            <a className="btn primary" href={plan.state === 'on the bench' ? nextLine(plan) : '#steps'}>
              {nextStep[plan.state]}
            </a>
          ) : null}
        </div>
      </div>
      <Downloads patchId={patch.id} versionNo={plan.versionNo} />
      {plan !== current ? (
        <p className="notice look" style={{ marginBottom: 16 }}>
          This is version {plan.versionNo}.{' '}
          <Link href={`/patches/${patch.id}` as Route}>Version {current?.versionNo}</Link> is the one that
          counts.
        </p>
      ) : null}

      <div className="sheet">
        <div className="plan-sheet">
          <div className="plan-view">
            <TwoWidths
              id="plan"
              widthPx={720}
              maxHeightPx={640}
              draw={(medium) => planDrawing(value, plan.input, medium)}
            />
          </div>
          <div className="plan-side">
            <HeadOut name="patch-plies" of={ofPlan} label="Plies of this plan">
              <h2>Plies</h2>
            </HeadOut>
            <PlyTable plan={value} />
            <TwoWidths
              id="section"
              widthPx={540}
              draw={(medium) => sectionDrawing(value, plan.input, medium)}
            />
          </div>
        </div>
        <Strip patch={patch} plan={plan} />
      </div>

      <div className="columns" style={{ marginTop: 26 }}>
        <section>
          <HeadOut name="findings" of={ofPlan} label="Findings of this plan">
            <h2>Stop, look, note</h2>
          </HeadOut>
          <Findings findings={plan.result.findings} becauses={plan.becauses} />
        </section>
        <section>
          <HeadOut name="take-off" of={ofPlan} label="Take-off of this plan">
            <h2>What it takes</h2>
          </HeadOut>
          <TakeOff takeOff={value.takeOff} covers={toBeLaid.includes(plan.state) ? stock : []} />
          <div style={{ marginTop: 14 }}>
            <Working steps={plan.result.working} />
          </div>
          <p className="note" style={{ marginTop: 14 }}>
            This plans tooling. The repair of a part that carries people or flight and road loads is for a
            licensed or responsible engineer. Follow the maker's data sheet and local codes.
          </p>
        </section>
        <section>
          <h2>Who and when</h2>
          <Story patch={patch} plan={plan} context={context} />
        </section>
      </div>

      {working ? null : steps}
      <section id="lines" className="rule-top" style={{ marginTop: 26 }}>
        <CantBeMadeAgain of={plan.state === 'on the bench' ? lost : null} act={cutActs[plan.state]} />
        <JobLines
          plan={plan}
          lost={lost}
          mayTick={actor.role !== 'viewer'}
          timeZone={context.shop.timeZone}
          today={context.today}
        />
      </section>
      {working ? steps : null}

      <Versions patch={patch} shown={plan} context={context} />
    </>
  )
}

/** States of a plan whose material is still to be taken from the stores. */
const toBeLaid: readonly Plan['state'][] = ['sketched', 'signed', 'on the bench']

/** Where the work goes on. */
function nextLine(plan: Plan): `#${string}` {
  const line = plan.lines.find(({ tickedAt }) => tickedAt === null)
  return line ? `#line-${line.position}` : '#steps'
}

/** States in which nothing is cut yet. */
const toBeCut: readonly Plan['state'][] = ['sketched', 'signed']

const cutActs: Readonly<Partial<Record<Plan['state'], string>>> = {
  sketched: 'Sign only what may be cut out of it.',
  signed: 'On the bench it is cut: take a splash first.',
  'on the bench': 'What is cut away is gone.',
}

const nextStep: Readonly<Record<Plan['state'], string | null>> = {
  sketched: 'Sign',
  signed: 'To the bench',
  'on the bench': 'Carry it out',
  laid: 'Prove it',
  proved: null,
  'put by': null,
}

/** The data of the plan stand in the strip at the foot of its sheet. */
function Strip({ patch, plan }: { readonly patch: Patch; readonly plan: Plan }) {
  const { input } = plan
  const { lengths, plies, builtThicknessMm, place } = plan.result.value
  const covers = plies.filter((ply) => ply.replaces === null).length
  const own = plies.length - covers
  return (
    <div className="strip">
      <div>
        <small>
          {patch.mouldCode}, {place}, seen from {input.side === 'place-face' ? 'the cavity' : 'the back'}
        </small>
        <h1>{patch.title}</h1>
      </div>
      <div>
        <small>Worked</small>
        <b>{sideWords[input.side].worked}</b>
        <small>
          {sideWords[input.side].from}, {edgeWords[input.edge].name}
        </small>
      </div>
      <div>
        <small>
          {input.edge === 'scarf' ? 'Scarf' : 'Steps'}, {figure(lengths.ratioReached, 1)} : 1
        </small>
        <b>{figure(lengths.lengthMm, 0)} mm</b>
        <small>
          by{' '}
          {lengths.governs === 'ratio'
            ? `ratio ${figure(input.taper.ratio)}`
            : `${figure(input.taper.mmPerPly)} mm a ply`}
        </small>
      </div>
      <div>
        <small>Built / measured</small>
        <b>
          {figure(builtThicknessMm, 2)} /{' '}
          {lengths.measuredThicknessMm === null ? '?' : figure(lengths.measuredThicknessMm, 2)} mm
        </b>
        <small>
          {lengths.measuredSpreadMm === null
            ? 'not measured'
            : `${input.measuredThicknessMm.length} places, spread ${figure(lengths.measuredSpreadMm, 2)}`}
        </small>
      </div>
      <div>
        <small>Plies</small>
        <b>
          {own}
          {covers > 0 ? ` + ${covers} cover` : ''}
        </b>
        <small>
          {plan.signedByName ? `signed ${plan.signedByName}` : `sketched ${plan.createdByName}`}
          {plan.selfChecked ? ', self-checked' : ''}
        </small>
      </div>
      <div className="stamp-field">
        <Stamp state={plan.state} />
      </div>
    </div>
  )
}

function Story({
  patch,
  plan,
  context,
}: {
  readonly patch: Patch
  readonly plan: Plan
  readonly context: ShopContext
}) {
  const on = (moment: string) => shortDate(shopDay(moment, context.shop.timeZone).day, context.today)
  return (
    <dl className="figures">
      {patch.reason ? (
        <div>
          <dt>
            Why
            <div className="note">{patch.reason}</div>
          </dt>
        </div>
      ) : null}
      <div>
        <dt>Sketched by {plan.createdByName}</dt>
        <dd>{on(plan.createdAt)}</dd>
      </div>
      {plan.signedAt ? (
        <div>
          <dt>
            Signed by {plan.signedByName}
            {plan.selfChecked ? (
              <div className="note">self-checked: the one who signed also sketched it</div>
            ) : null}
          </dt>
          <dd>{on(plan.signedAt)}</dd>
        </div>
      ) : null}
      {plan.benchAt ? (
        <div>
          <dt>On the bench</dt>
          <dd>{on(plan.benchAt)}</dd>
        </div>
      ) : null}
      {plan.putByAt ? (
        <div>
          <dt>
            Put by<div className="note">{plan.putByReason}</div>
          </dt>
          <dd>{on(plan.putByAt)}</dd>
        </div>
      ) : null}
      {plan.note ? (
        <div>
          <dt>
            Note<div className="note">{plan.note}</div>
          </dt>
        </div>
      ) : null}
      <div>
        <dt className="note">
          Calculation {plan.calculationVersion}, {plan.result.method}
        </dt>
      </div>
    </dl>
  )
}

function Versions({
  patch,
  shown,
  context,
}: {
  readonly patch: Patch
  readonly shown: Plan
  readonly context: ShopContext
}) {
  if (patch.plans.length < 2) return null
  return (
    <section className="rule-top" style={{ marginTop: 26 }}>
      <h2>Versions</h2>
      <table className="lines">
        <tbody>
          {patch.plans.map((plan) => (
            <tr key={plan.id}>
              <td>
                {plan.id === shown.id ? (
                  <b>Version {plan.versionNo}</b>
                ) : (
                  <Link href={`/patches/${patch.id}?v=${plan.versionNo}` as Route}>
                    Version {plan.versionNo}
                  </Link>
                )}
              </td>
              <td>{plan.state}</td>
              <td>
                {sideWords[plan.input.side].short}, {edgeWords[plan.input.edge].name},{' '}
                {figure(plan.result.value.lengths.lengthMm, 0)} mm, {plan.result.value.plies.length} plies
              </td>
              <td>{plan.createdByName}</td>
              <td className="n">
                {shortDate(shopDay(plan.createdAt, context.shop.timeZone).day, context.today)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
