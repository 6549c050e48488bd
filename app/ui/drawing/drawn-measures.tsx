import type { FaceModel } from '#lib/core/drawing/index'
import type { OutlineMeasures } from '#lib/core/geometry/index'
import { figure } from '#lib/core/units'
import styles from './drawing.module.css'

/** Length, area and clearances of the outline as it stands, and what can't be cut about it. */
export function DrawnMeasures({
  measures,
  closed,
  model,
  edgeMarginMm,
}: {
  readonly measures: OutlineMeasures
  readonly closed: boolean
  readonly model: FaceModel
  readonly edgeMarginMm: number
}) {
  const { lengthMm, areaMm2, dowel, boundaryMm, leavesArea, crossings } = measures
  const near = boundaryMm !== null && !leavesArea && boundaryMm < edgeMarginMm
  return (
    <div className={styles.measures}>
      <dl>
        <div>
          <dt>{closed ? 'Round it' : 'Along it'}</dt>
          <dd>{figure(lengthMm, 1)} mm</dd>
        </div>
        <div>
          <dt>Area</dt>
          <dd>{areaMm2 === null ? 'not closed' : `${figure(areaMm2 / 100, 1)} cm²`}</dd>
        </div>
        <div>
          <dt>Nearest dowel</dt>
          <dd>{dowel === null ? (model.dowels.length === 0 ? 'no dowels' : '–') : dowelWords(dowel)}</dd>
        </div>
        <div>
          <dt>Boundary</dt>
          <dd className={near ? 'due' : undefined}>
            {boundaryMm === null ? '–' : leavesArea ? 'left' : `${figure(boundaryMm, 1)} mm`}
            {near ? `, below ${figure(edgeMarginMm, 1)}` : ''}
          </dd>
        </div>
      </dl>
      <div role="alert">
        {crossings.length > 0 ? (
          <p className="notice wrong">
            The outline crosses itself at{' '}
            {crossings
              .slice(0, 3)
              .map(([u, v]) => `u ${figure(u, 1)}, v ${figure(v, 1)}`)
              .join('; ')}
            {crossings.length > 3 ? ` and ${crossings.length - 3} more places` : ''}: drag or remove a corner.
          </p>
        ) : null}
        {leavesArea ? (
          <p className="notice wrong">The outline leaves the area {model.areaName}: bring it inside.</p>
        ) : null}
      </div>
    </div>
  )
}

function dowelWords({ tag, rimMm, inside }: NonNullable<OutlineMeasures['dowel']>): string {
  if (rimMm < 0) return `cuts into ${tag}`
  return `${figure(rimMm, 1)} mm from the rim of ${tag}${inside ? ', which it holds' : ''}`
}
