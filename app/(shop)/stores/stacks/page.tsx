import type { Metadata, Route } from 'next'
import { isMirrored, stackUp } from '#lib/core/laminate/index'
import { figure } from '#lib/core/units'
import { listStacks, stackPlies } from '#lib/services/stores'
import { countStores } from '#lib/services/stores-lots'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../ui/link'
import { StoresHead } from '../head'
import '../stores.css'

export const metadata: Metadata = { title: 'Stacks' }

export default async function StacksPage() {
  const actor = await requireActor('/stores/stacks')
  const [stacks, counts] = await Promise.all([listStacks(actor, {}), countStores(actor, {})])
  const lead = actor.role === 'lead'
  return (
    <>
      <StoresHead
        counts={counts}
        here="stacks"
        acts={
          lead && counts.materials > 0 ? (
            <Link className="btn primary" href={'/stores/stacks/new' as Route}>
              Add a stack
            </Link>
          ) : null
        }
      />
      {stacks.length === 0 ? (
        <div className="empty">
          <p>
            No stack yet. A stack lists the plies of a mould from the tool face to the back, each of a
            material.
          </p>
          {lead ? (
            <p>
              {counts.materials > 0 ? (
                <Link className="btn" href={'/stores/stacks/new' as Route}>
                  Add the first stack
                </Link>
              ) : (
                <Link className="btn" href={'/stores/materials/new' as Route}>
                  Add the first material
                </Link>
              )}
            </p>
          ) : null}
        </div>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
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
                    <td className="named">
                      {lead ? (
                        <Link href={`/stores/stacks/${stack.id}` as Route}>{stack.code}</Link>
                      ) : (
                        <b>{stack.code}</b>
                      )}{' '}
                      {stack.name}
                    </td>
                    <td className="note" data-label="Plies, from the face">
                      {stack.plies
                        .map((ply) => `${ply.material.code} ${figure(ply.directionDeg)}°`)
                        .join(', ')}
                    </td>
                    <td className="n beside" data-label="Built, mm">
                      {plies.length > 0 ? stackUp(plies).thicknessMm.toFixed(2) : '–'}
                    </td>
                    <td className="beside" data-label="Balance">
                      {isMirrored(plies) ? 'mirrored' : <span className="due">not mirrored</span>}
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
