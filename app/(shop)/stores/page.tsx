import type { Metadata, Route } from 'next'
import { readStores } from '#lib/services/stores-lots'
import { requireActor } from '#lib/web/session'
import { Link } from '../../ui/link'
import { addressOf } from '../../ui/page-address'
import { StockLines } from '../../ui/stock-lines'
import { TableOut } from '../../ui/table-out'
import { FirstActs } from './first-acts'
import { StoresHead } from './head'
import { LotTable } from './lot-table'
import './stores.css'

export const metadata: Metadata = { title: 'Stores' }

/** What is low or late, then the lots; closed ones under ?show=closed. */
export default async function StoresPage({ searchParams }: PageProps<'/stores'>) {
  const actor = await requireActor(addressOf('/stores', await searchParams))
  const closed = (await searchParams).show === 'closed'
  const { today, matters, lots, counts } = await readStores(actor, { closed })
  const nothing = counts.materials + counts.products === 0
  const lead = actor.role === 'lead'
  const mayReceive = actor.role !== 'viewer' && !nothing
  return (
    <>
      <StoresHead
        counts={counts}
        here="lots"
        acts={
          mayReceive ? (
            <Link className="btn primary" href={'/stores/lots/new' as Route}>
              Receive a lot
            </Link>
          ) : null
        }
      />
      {nothing ? (
        <div className="empty">
          <p>
            The stores are empty. Materials with their stacks, agents and resins with their cards, the lots of
            each and what they cost will stand here.
          </p>
          {lead ? <FirstActs /> : <p>A lead adds materials and products.</p>}
        </div>
      ) : (
        <div className="stack-gap">
          {closed ? null : (
            <section className="rule-top">
              <h2>Low or late</h2>
              <StockLines matters={matters} most={60} />
            </section>
          )}
          <section className="rule-top">
            <div className="crumb-row" style={{ marginBottom: 8 }}>
              <h2 style={{ marginRight: 'auto' }}>{closed ? 'Closed lots' : 'Open lots'}</h2>
              <TableOut name="stock-moves" label="Moves of all lots" holds="moves of all lots" />
              <Link className="no-print" href={(closed ? '/stores' : '/stores?show=closed') as Route}>
                {closed ? `Open lots, ${counts.lots}` : `Closed lots, ${counts.closedLots}`}
              </Link>
            </div>
            {lots.length === 0 ? (
              <p className="empty">
                {closed
                  ? 'No lot was closed yet. A lot is closed when it is used up or thrown away.'
                  : 'No lot is open. A roll or a tin that has come is received with its lot number, and then told here before it is late.'}
              </p>
            ) : (
              <LotTable lots={lots} today={today} />
            )}
          </section>
        </div>
      )}
    </>
  )
}
