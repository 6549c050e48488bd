import { unitFrame } from '#lib/core/frame'
import { counterClockwise, crossings, regionsArea } from '#lib/core/geometry/index'
import type { FaceAreaInput } from '#lib/schema/mould'
import { Refusal } from '#lib/store/errors'

/** The area with unit axes and a boundary that runs counter-clockwise; refused where frame or boundary can't be. */
export function checkedArea(input: FaceAreaInput): FaceAreaInput {
  const frame = unitFrame(input.uAxis, input.vAxis)
  if (!frame.ok) throw new Refusal(frame.reason, { fields: { vAxis: frame.reason } })
  const crossing = crossings(input.boundary)[0]
  if (crossing) {
    const says = `The boundary crosses itself at u ${crossing[0].toFixed(1)}, v ${crossing[1].toFixed(1)} mm: put its points in order`
    throw new Refusal(says, { fields: { boundary: says } })
  }
  if (regionsArea([{ outer: input.boundary, holes: [] }]) < 1) {
    throw new Refusal('The boundary encloses no area', {
      fields: { boundary: 'Encloses no area; check its points' },
    })
  }
  return {
    ...input,
    uAxis: [...frame.u],
    vAxis: [...frame.v],
    boundary: counterClockwise(input.boundary).map(([u, v]) => [u, v]),
  }
}
