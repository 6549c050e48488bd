import type { Metadata, Route } from 'next'
import { amountText, perUnitWords, productUses, productUseWords } from '#lib/core/stores/index'
import { figure, formatMoney } from '#lib/core/units'
import { countStores } from '#lib/services/stores-lots'
import { listProducts } from '#lib/services/stores-products'
import { listPricesOn } from '#lib/services/stores-rates'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../ui/link'
import { StoresHead } from '../head'
import '../stores.css'

export const metadata: Metadata = { title: 'Agents and resins' }

export default async function ProductsPage() {
  const actor = await requireActor('/stores/products')
  const [products, counts, { rows }] = await Promise.all([
    listProducts(actor, {}),
    countStores(actor, {}),
    listPricesOn(actor, { on: null }),
  ])
  const lead = actor.role === 'lead'
  const inOrder = productUses.flatMap((use) => products.filter((product) => product.use === use))
  return (
    <>
      <StoresHead
        counts={counts}
        here="products"
        acts={
          lead ? (
            <Link className="btn primary" href={'/stores/products/new' as Route}>
              Add an agent or a resin
            </Link>
          ) : null
        }
      />
      {products.length === 0 ? (
        <p className="empty">
          No card yet. A card says how a sealer, an agent, a resin is used: how many coats, how long between
          them, how long it keeps closed and opened.
        </p>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col">Product</th>
                <th scope="col">Used as</th>
                <th scope="col" className="n">
                  Coats
                </th>
                <th scope="col" className="n">
                  Between, min
                </th>
                <th scope="col" className="n">
                  Keeps closed / opened, days
                </th>
                <th scope="col" className="n">
                  In stock
                </th>
                <th scope="col" className="n">
                  Price
                </th>
              </tr>
            </thead>
            <tbody>
              {inOrder.map((product) => {
                const row = rows.find((candidate) => candidate.id === product.id)
                return (
                  <tr key={product.id}>
                    <td className="named">
                      <Link href={`/stores/products/${product.id}` as Route}>{product.name}</Link>
                      {product.retired ? <span className="note"> no longer bought</span> : null}
                    </td>
                    <td data-label="Used as">{productUseWords[product.use]}</td>
                    <td className="n beside" data-label="Coats">
                      {product.coats ?? <span className="unsaid">–</span>}
                    </td>
                    <td className="n beside" data-label="Between, min">
                      {product.intervalMin === null ? (
                        <span className="unsaid">–</span>
                      ) : (
                        figure(product.intervalMin)
                      )}
                    </td>
                    <td className="n" data-label="Keeps closed / opened, days">
                      {product.shelfLifeDays ?? '–'} / {product.openLifeDays ?? '–'}
                    </td>
                    <td className="n beside" data-label="In stock">
                      {row && row.inStock > 0 ? amountText(row.inStock, product.unit) : '–'}
                    </td>
                    <td className="n beside" data-label="Price">
                      {row?.price
                        ? `${formatMoney(row.price.minorPerUnit, row.price.currency)} / ${perUnitWords[product.unit]}`
                        : '–'}
                    </td>
                  </tr>
                )
              })}
            </tbody>
          </table>
        </div>
      )}
    </>
  )
}
