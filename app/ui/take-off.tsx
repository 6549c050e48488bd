import type { MaterialTakeOff } from '#lib/core/repair/types'

/** Prepreg for the patch by bounding strips on the roll. */
export function TakeOff({ takeOff }: { readonly takeOff: readonly MaterialTakeOff[] }) {
  return (
    <dl className="figures">
      {takeOff.map((each) => (
        <div key={each.material.name}>
          <dt>
            {each.material.name}
            <div className="note">
              {each.netAreaM2.toFixed(2)} m² net, {each.grossAreaM2.toFixed(2)} off the roll of{' '}
              {each.material.rollWidthMm} mm; {(each.offcutShare * 100).toFixed(0)} % offcut;{' '}
              {each.massKg.toFixed(2)} kg
            </div>
          </dt>
          <dd>{each.rollLengthM.toFixed(2)} m</dd>
        </div>
      ))}
    </dl>
  )
}
