import type { Metadata, Route } from 'next'
import { curedPly } from '#lib/core/laminate/index'
import { figure, formatMoney } from '#lib/core/units'
import { listMaterials } from '#lib/services/stores'
import { countStores } from '#lib/services/stores-lots'
import { listPricesOn } from '#lib/services/stores-rates'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../ui/link'
import { Working } from '../../../ui/working'
import { StoresHead } from '../head'
import '../stores.css'

export const metadata: Metadata = { title: 'Materials' }

export default async function MaterialsPage() {
  const actor = await requireActor('/stores/materials')
  const [materials, counts, { rows }] = await Promise.all([
    listMaterials(actor, {}),
    countStores(actor, {}),
    listPricesOn(actor, { on: null }),
  ])
  const lead = actor.role === 'lead'
  return (
    <>
      <StoresHead
        counts={counts}
        here="materials"
        acts={
          lead ? (
            <Link className="btn primary" href={'/stores/materials/new' as Route}>
              Add a material
            </Link>
          ) : null
        }
      />
      {materials.length === 0 ? (
        <p className="empty">
          No material yet. A stack is made of materials, and every patch ply copies the one that it replaces.
        </p>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col">Material</th>
                <th scope="col">Used as</th>
                <th scope="col" className="n">
                  Fibre, g/m²
                </th>
                <th scope="col" className="n">
                  Cured ply, mm
                </th>
                <th scope="col" className="n">
                  Roll, mm
                </th>
                <th scope="col" className="n">
                  Tg after post-cure
                </th>
                <th scope="col" className="n">
                  In stock
                </th>
                <th scope="col" className="n">
                  Price a m²
                </th>
              </tr>
            </thead>
            <tbody>
              {materials.map((material) => {
                const ply = curedPly(material)
                const row = rows.find((candidate) => candidate.id === material.id)
                return (
                  <tr key={material.id}>
                    <td className="named">
                      <Link href={`/stores/materials/${material.id}` as Route}>{material.code}</Link>{' '}
                      {material.name}
                      {material.retired ? <span className="note"> no longer bought</span> : null}
                      <Working steps={ply.working} />
                    </td>
                    <td data-label="Used as">{material.role}</td>
                    <td className="n beside" data-label="Fibre, g/m²">
                      {figure(material.fibreArealWeightGsm, 0)}
                    </td>
                    <td className="n beside" data-label="Cured ply, mm">
                      {ply.thicknessMm.toFixed(3)}
                    </td>
                    <td className="n beside" data-label="Roll, mm">
                      {figure(material.rollWidthMm, 0)}
                    </td>
                    <td className="n beside" data-label="Tg after post-cure">
                      {material.postCure?.tgAfterC ? `${material.postCure.tgAfterC} °C` : '–'}
                    </td>
                    <td className="n beside" data-label="In stock">
                      {row && row.inStock > 0 ? `${figure(row.inStock, 1)} m²` : '–'}
                    </td>
                    <td className="n beside" data-label="Price a m²">
                      {row?.price ? formatMoney(row.price.minorPerUnit, row.price.currency) : '–'}
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
