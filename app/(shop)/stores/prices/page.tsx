import type { Metadata, Route } from 'next'
import { isIsoDate, shortDate } from '#lib/core/dates'
import { amountText, perUnitWords } from '#lib/core/stores/index'
import { formatMoney } from '#lib/core/units'
import { countStores } from '#lib/services/stores-lots'
import { listPricesOn } from '#lib/services/stores-rates'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../ui/link'
import { addressOf } from '../../../ui/page-address'
import { StoresHead } from '../head'
import { OnDay } from '../on-day'
import '../stores.css'

export const metadata: Metadata = { title: 'Prices' }

/** What everything costs on a day, ?on=2026-05-01. */
export default async function PricesPage({ searchParams }: PageProps<'/stores/prices'>) {
  const actor = await requireActor(addressOf('/stores/prices', await searchParams))
  const asked = (await searchParams).on
  const on = typeof asked === 'string' && isIsoDate(asked) ? asked : null
  const [{ rows, worth, unpriced, day, today }, counts] = await Promise.all([
    listPricesOn(actor, { on }),
    countStores(actor, {}),
  ])
  const shown = rows.filter((row) => !row.retired || row.price !== null)
  return (
    <>
      <StoresHead counts={counts} here="prices" />
      <OnDay action="/stores/prices" day={day} what="Prices" />
      {shown.length === 0 ? (
        <div className="empty">
          <p>
            No price yet. What a material or a product costs is written on its own page, each price from its
            day on, and all of them stand here.
          </p>
          <p className="acts">
            <Link className="btn" href={'/stores/materials' as Route}>
              To the materials
            </Link>
            <Link className="btn" href={'/stores/products' as Route}>
              To the agents and resins
            </Link>
          </p>
        </div>
      ) : (
        <>
          <div className="table-room">
            <table className="lines stacked">
              <thead>
                <tr>
                  <th scope="col">What</th>
                  <th scope="col" className="n">
                    Price
                  </th>
                  <th scope="col">Holds since</th>
                  <th scope="col">From where</th>
                  <th scope="col" className="n">
                    In stock now
                  </th>
                </tr>
              </thead>
              <tbody>
                {shown.map((row) => (
                  <tr key={row.id}>
                    <td className="named">
                      <Link href={`/stores/${row.kind}s/${row.id}#prices` as Route}>
                        {row.code ?? row.name}
                      </Link>{' '}
                      {row.code ? row.name : ''}
                    </td>
                    <td className="n beside" data-label="Price">
                      {row.price
                        ? `${formatMoney(row.price.minorPerUnit, row.price.currency)} / ${perUnitWords[row.unit]}`
                        : '–'}
                    </td>
                    <td className="beside" data-label="Holds since" style={{ whiteSpace: 'nowrap' }}>
                      {row.price ? shortDate(row.price.fromOn, today) : 'no price'}
                    </td>
                    <td className="note" data-label="From where">
                      {row.price?.sourceNote}
                    </td>
                    <td className="n beside" data-label="In stock now">
                      {row.inStock > 0 ? amountText(row.inStock, row.unit) : '–'}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <section className="rule-top narrow" style={{ marginTop: 26 }}>
            <h2>What the open lots are worth</h2>
            <dl className="figures">
              {worth.map(({ currency, minor }) => (
                <div key={currency}>
                  <dt>
                    In {currency}
                    <div className="note">
                      what is left in every open lot, at the prices of {shortDate(day, today)}
                      {unpriced.length > 0 ? `; without ${unpriced.join(', ')}, which have no price` : ''}
                    </div>
                  </dt>
                  <dd>{formatMoney(minor, currency)}</dd>
                </div>
              ))}
            </dl>
            {worth.length === 0 ? <p className="note">Nothing in stock has a price.</p> : null}
          </section>
        </>
      )}
    </>
  )
}
