import type { MaterialTakeOff } from '#lib/core/repair/types'
import { amountText, type StockCover } from '#lib/core/stores/index'

/** Prepreg for the patch by bounding strips on the roll; with what the stores have of it, where that matters. */
export function TakeOff({
  takeOff,
  covers = [],
}: {
  readonly takeOff: readonly MaterialTakeOff[]
  readonly covers?: readonly StockCover[]
}) {
  return (
    <dl className="figures">
      {takeOff.map((each) => (
        <div key={each.material.name}>
          <dt>
            {each.material.name}
            <div className="note">
              {each.netAreaM2.toFixed(2)} m² net, {each.grossAreaM2.toFixed(2)} off the roll of{' '}
              {each.material.rollWidthMm} mm; {(each.offcutShare * 100).toFixed(0)} % offcut;{' '}
              {each.massKg.toFixed(2)} kg
            </div>
            <Cover cover={covers.find((cover) => cover.material === each.material.name)} />
          </dt>
          <dd>{each.rollLengthM.toFixed(2)} m</dd>
        </div>
      ))}
    </dl>
  )
}

function Cover({ cover }: { readonly cover: StockCover | undefined }) {
  if (!cover) return null
  return (
    <div className={cover.enough ? 'note' : 'due'}>
      Needs {amountText(cover.needM2, 'm2')}; in the stores: {cover.text}
    </div>
  )
}
