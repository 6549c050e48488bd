import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { curedPly } from '#lib/core/laminate/index'
import type { CureCycle } from '#lib/core/laminate/types'
import { amountText, usableStock } from '#lib/core/stores/index'
import { figure } from '#lib/core/units'
import { readMaterial } from '#lib/services/stores'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { Working } from '../../../../ui/working'
import { LotTable } from '../../lot-table'
import { Prices } from '../../prices'
import '../../stores.css'

export const metadata: Metadata = { title: 'Material' }

/** A material: its figures, its rolls, what it cost from when, and the stacks that are made of it. */
export default async function MaterialPage({ params }: PageProps<'/stores/materials/[id]'>) {
  const actor = await requireActor(`/stores/materials/${(await params).id}`)
  const page = await found(readMaterial(actor, { id: (await params).id }))
  if (!page) notFound()
  const { material, lots, prices, price, stacks, today, currency } = page
  const lead = actor.role === 'lead'
  const ply = curedPly(material)
  const open = lots.filter((lot) => lot.closedOn === null)
  const usable = usableStock({ lots: open }, today)
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={'/stores/materials' as Route}>Materials</Link> / {material.code}
        </div>
        <div className="acts">
          {lead ? (
            <Link className="btn" href={`/stores/materials/${material.id}/edit` as Route}>
              Change it
            </Link>
          ) : null}
          {actor.role !== 'viewer' && !material.retired ? (
            <Link className="btn primary" href={`/stores/lots/new?material=${material.id}` as Route}>
              Receive a roll
            </Link>
          ) : null}
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{material.name}</h1>
      <div className="columns">
        <section className="rule-top">
          <h2>Figures</h2>
          <dl className="figures">
            <Figure label="Used as" value={`${material.role} ply`} />
            <Figure
              label="Fibre"
              rests={`${figure(material.fibreDensityGcm3)} g/cm³`}
              value={`${figure(material.fibreArealWeightGsm, 0)} g/m²`}
            />
            <Figure
              label="Cured ply"
              rests={`fibre by volume ${figure(ply.fibreVolumeFraction * 100, 1)} %`}
              value={`${ply.thicknessMm.toFixed(3)} mm`}
            />
            <Figure label="Roll width" value={`${figure(material.rollWidthMm, 0)} mm`} />
            {material.thickestCureMm !== null ? (
              <Figure label="Thickest cured in one go" value={`${figure(material.thickestCureMm)} mm`} />
            ) : null}
            <CycleFigure label="Cure, on the pattern" cycle={material.cure} />
            <CycleFigure label="Post-cure, free-standing" cycle={material.postCure} />
            <Figure
              label="Life out of the freezer"
              value={material.outLifeH === null ? 'not known' : `${figure(material.outLifeH, 0)} h`}
            />
          </dl>
          <div style={{ marginTop: 10 }}>
            <Working steps={ply.working} />
          </div>
          {material.sourceNote ? <p className="note">{material.sourceNote}</p> : null}
        </section>
        <Prices
          subject={{ kind: 'material', id: material.id, unit: 'm2' }}
          prices={prices}
          inForceId={price?.id ?? null}
          currency={currency}
          today={today}
          mayAdd={lead}
        />
        <section className="rule-top">
          <h2>Stacks made of it</h2>
          {stacks.length === 0 ? <p className="note">No stack uses it.</p> : null}
          <table className="lines">
            <tbody>
              {stacks.map((stack) => (
                <tr key={stack.id}>
                  <td>
                    {lead ? (
                      <Link href={`/stores/stacks/${stack.id}` as Route}>{stack.code}</Link>
                    ) : (
                      <b>{stack.code}</b>
                    )}{' '}
                    {stack.name}
                  </td>
                  <td className="n">
                    {stack.plies.filter((each) => each.material.id === material.id).length} of{' '}
                    {stack.plies.length} plies
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </div>
      <section className="rule-top" style={{ marginTop: 26 }}>
        <h2>
          Lots{' '}
          <span className="note" style={{ fontWeight: 400 }}>
            {amountText(usable.amount, 'm2')} fit for use
            {material.lowBelowM2 === null ? '' : `, low below ${amountText(material.lowBelowM2, 'm2')}`}
          </span>
        </h2>
        {lots.length === 0 ? (
          <p className="note" style={{ marginTop: 6 }}>
            No roll of it was received yet.
          </p>
        ) : (
          <LotTable lots={lots} today={today} withSubject={false} />
        )}
      </section>
    </>
  )
}

function Figure({
  label,
  rests,
  value,
}: {
  readonly label: string
  readonly rests?: string
  readonly value: string
}) {
  return (
    <div>
      <dt>
        {label}
        {rests ? <div className="note">{rests}</div> : null}
      </dt>
      <dd>{value}</dd>
    </div>
  )
}

function CycleFigure({ label, cycle }: { readonly label: string; readonly cycle: CureCycle | null }) {
  if (cycle === null) return <Figure label={label} value="not known" />
  return (
    <Figure
      label={label}
      rests={cycle.name}
      value={cycle.tgAfterC === null ? 'Tg not known' : `Tg ${figure(cycle.tgAfterC, 0)} °C`}
    />
  )
}
