import type { PatchPlan } from '#lib/core/repair/types'
import { figure } from '#lib/core/units'

const mm2PerM2 = 1e6

/** The item list of a plan: its plies in laying order. */
export function PlyTable({ plan }: { readonly plan: PatchPlan }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: on a narrow screen the table scrolls, by keyboard as well
    // biome-ignore lint/a11y/useSemanticElements: a section would need a heading of its own
    <div className="table-room" tabIndex={0} role="region" aria-label="Plies in laying order">
      <table className="lines">
        <caption className="quiet">Plies in laying order</caption>
        <thead>
          <tr>
            <th scope="col">#</th>
            <th scope="col">Ply, in laying order</th>
            <th scope="col" className="n">
              Direction
            </th>
            <th scope="col" className="n">
              Step, mm
            </th>
            <th scope="col" className="n">
              Across, mm
            </th>
            <th scope="col" className="n">
              Area, m²
            </th>
          </tr>
        </thead>
        <tbody>
          {plan.plies.map((ply) => (
            <tr key={ply.layingOrder}>
              <td>{ply.layingOrder}</td>
              <td>
                {ply.replaces === null ? 'cover, ' : ''}
                {ply.material.name}
                {ply.replaces === null ? null : <span className="note"> for ply {ply.replaces}</span>}
              </td>
              <td className="n">{figure(ply.directionDeg)}°</td>
              <td className="n">{ply.stepMm.toFixed(1)}</td>
              <td className="n">
                {ply.acrossMm[0].toFixed(0)} × {ply.acrossMm[1].toFixed(0)}
              </td>
              <td className="n">{(ply.areaMm2 / mm2PerM2).toFixed(3)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
