import type { Metadata, Route } from 'next'
import { curedPly, isMirrored, stackUp } from '#lib/core/laminate/index'
import { figure } from '#lib/core/units'
import { readSettings } from '#lib/services/shop'
import { listMaterials, listStacks, stackPlies } from '#lib/services/stores'
import { requireActor } from '#lib/web/session'
import { Link } from '../../ui/link'
import { Working } from '../../ui/working'
import './stores.css'

export const metadata: Metadata = { title: 'Stores' }

export default async function StoresPage() {
  const actor = await requireActor()
  const [materials, stacks, { shop }] = await Promise.all([
    listMaterials(actor, {}),
    listStacks(actor, {}),
    readSettings(actor, {}),
  ])
  const lead = actor.role === 'lead'
  const money = new Intl.NumberFormat('en-GB', { style: 'currency', currency: shop.currency })
  return (
    <>
      <h1>Stores</h1>
      <section style={{ marginTop: 20 }}>
        <div className="crumb-row" style={{ marginBottom: 8 }}>
          <h2 style={{ marginRight: 'auto' }}>Materials</h2>
          {lead ? (
            <Link className="btn" href={'/stores/materials/new' as Route}>
              Add a material
            </Link>
          ) : null}
        </div>
        {materials.length === 0 ? (
          <p className="empty">
            No material yet. A stack is made of materials, and every patch ply copies the one that it
            replaces.
          </p>
        ) : (
          <div className="table-room">
            <table className="lines">
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
                    Price, m²
                  </th>
                  <th scope="col">Figures from</th>
                </tr>
              </thead>
              <tbody>
                {materials.map((material) => {
                  const ply = curedPly(material)
                  return (
                    <tr key={material.id}>
                      <td style={{ minWidth: 210 }}>
                        {lead ? (
                          <Link href={`/stores/materials/${material.id}` as Route}>{material.code}</Link>
                        ) : (
                          <b>{material.code}</b>
                        )}{' '}
                        {material.name}
                        <Working steps={ply.working} />
                      </td>
                      <td>{material.role}</td>
                      <td className="n">{figure(material.fibreArealWeightGsm, 0)}</td>
                      <td className="n">{ply.thicknessMm.toFixed(3)}</td>
                      <td className="n">{figure(material.rollWidthMm, 0)}</td>
                      <td className="n">
                        {material.postCure?.tgAfterC ? `${material.postCure.tgAfterC} °C` : '–'}
                      </td>
                      <td className="n">
                        {material.priceMinorPerM2 === null
                          ? '–'
                          : money.format(material.priceMinorPerM2 / 100)}
                      </td>
                      <td className="note">{material.sourceNote}</td>
                    </tr>
                  )
                })}
              </tbody>
            </table>
          </div>
        )}
      </section>
      <section style={{ marginTop: 30 }}>
        <div className="crumb-row" style={{ marginBottom: 8 }}>
          <h2 style={{ marginRight: 'auto' }}>Stacks</h2>
          {lead && materials.length > 0 ? (
            <Link className="btn" href={'/stores/stacks/new' as Route}>
              Add a stack
            </Link>
          ) : null}
        </div>
        {stacks.length === 0 ? (
          <p className="empty">
            No stack yet. A stack lists the plies of a mould from the tool face to the back.
          </p>
        ) : (
          <div className="table-room">
            <table className="lines">
              <thead>
                <tr>
                  <th scope="col">Stack</th>
                  <th scope="col">Plies, from the face</th>
                  <th scope="col" className="n">
                    Built, mm
                  </th>
                  <th scope="col">Balance</th>
                </tr>
              </thead>
              <tbody>
                {stacks.map((stack) => {
                  const plies = stackPlies(stack)
                  return (
                    <tr key={stack.id}>
                      <td>
                        {lead ? (
                          <Link href={`/stores/stacks/${stack.id}` as Route}>{stack.code}</Link>
                        ) : (
                          <b>{stack.code}</b>
                        )}{' '}
                        {stack.name}
                      </td>
                      <td className="note">
                        {stack.plies
                          .map((ply) => `${ply.material.code} ${figure(ply.directionDeg)}°`)
                          .join(', ')}
                      </td>
                      <td className="n">{plies.length > 0 ? stackUp(plies).thicknessMm.toFixed(2) : '–'}</td>
                      <td>{isMirrored(plies) ? 'mirrored' : <span className="due">not mirrored</span>}</td>
                    </tr>
                  )
                })}
              </tbody>
            </table>
          </div>
        )}
      </section>
    </>
  )
}
