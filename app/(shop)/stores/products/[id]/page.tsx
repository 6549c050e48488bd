import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { amountText, productUseWords, usableStock } from '#lib/core/stores/index'
import { figure } from '#lib/core/units'
import { readProduct } from '#lib/services/stores-products'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { LotTable } from '../../lot-table'
import { Prices } from '../../prices'
import '../../stores.css'

export const metadata: Metadata = { title: 'Product card' }

/** The card of an agent or a resin, its tins, and what it cost from when. */
export default async function ProductPage({ params }: PageProps<'/stores/products/[id]'>) {
  const actor = await requireActor(`/stores/products/${(await params).id}`)
  const page = await found(readProduct(actor, { id: (await params).id }))
  if (!page) notFound()
  const { product, lots, prices, price, today, currency } = page
  const lead = actor.role === 'lead'
  const usable = usableStock({ lots: lots.filter((lot) => lot.closedOn === null) }, today)
  const minutes = (value: number | null) =>
    value === null ? null : value >= 120 ? `${figure(value / 60, 1)} h` : `${figure(value, 0)} min`
  const days = (value: number | null) => (value === null ? null : `${value} days`)
  const rows: readonly (readonly [string, string | null, string?])[] = [
    ['Used as', productUseWords[product.use]],
    ['Coats as new', product.coats === null ? null : String(product.coats)],
    ['Between coats', minutes(product.intervalMin)],
    ['Solvent gone after', minutes(product.flashMin)],
    [
      'May be used after',
      minutes(product.cureMin),
      product.cureC === null ? '' : `at ${figure(product.cureC, 0)} °C`,
    ],
    ['Pot life, mixed', minutes(product.potLifeMin)],
    ['Keeps closed', days(product.shelfLifeDays)],
    ['Keeps opened', days(product.openLifeDays)],
    ['Hottest use', product.heatLimitC === null ? null : `${figure(product.heatLimitC, 0)} °C`],
  ]
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={'/stores/products' as Route}>Agents and resins</Link>
        </div>
        <div className="acts">
          {lead ? (
            <Link className="btn" href={`/stores/products/${product.id}/edit` as Route}>
              Change the card
            </Link>
          ) : null}
          {actor.role !== 'viewer' && !product.retired ? (
            <Link className="btn primary" href={`/stores/lots/new?product=${product.id}` as Route}>
              Receive a lot
            </Link>
          ) : null}
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{product.name}</h1>
      {product.cautions ? (
        <p className="notice look" style={{ marginBottom: 18 }}>
          {product.cautions}
        </p>
      ) : null}
      <div className="columns">
        <section className="rule-top">
          <h2>Card</h2>
          <dl className="figures">
            {rows
              .filter(([, value]) => value !== null)
              .map(([label, value, rests]) => (
                <div key={label}>
                  <dt>
                    {label}
                    {rests ? <div className="note">{rests}</div> : null}
                  </dt>
                  <dd>{value}</dd>
                </div>
              ))}
          </dl>
          {product.storeAt ? <p style={{ marginTop: 10 }}>Keep it: {product.storeAt}</p> : null}
          {product.note ? <p style={{ marginTop: 6 }}>{product.note}</p> : null}
          {product.sourceNote ? (
            <p className="note" style={{ marginTop: 6 }}>
              {product.sourceNote}
            </p>
          ) : null}
        </section>
        <Prices
          subject={{ kind: 'product', id: product.id, unit: product.unit }}
          prices={prices}
          inForceId={price?.id ?? null}
          currency={currency}
          today={today}
          mayAdd={lead}
        />
      </div>
      <section className="rule-top" style={{ marginTop: 26 }}>
        <h2>
          Lots{' '}
          <span className="note" style={{ fontWeight: 400 }}>
            {amountText(usable.amount, product.unit)} fit for use
            {product.lowBelow === null ? '' : `, low below ${amountText(product.lowBelow, product.unit)}`}
          </span>
        </h2>
        {lots.length === 0 ? (
          <p className="note" style={{ marginTop: 6 }}>
            No lot of it was received yet.
          </p>
        ) : (
          <LotTable lots={lots} today={today} withSubject={false} />
        )}
      </section>
    </>
  )
}
