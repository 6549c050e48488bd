type Axis = readonly [number, number, number]

/**
 * The unit axes of a face area's frame, or what is wrong with them. u and v must be at right angles within
 * 0.1 degree; n = u x v points out of the tool face into the cavity.
 */
export function unitFrame(
  u: Axis,
  v: Axis,
):
  | { readonly ok: true; readonly u: Axis; readonly v: Axis; readonly n: Axis }
  | { readonly ok: false; readonly reason: string } {
  const lengthU = Math.hypot(...u)
  const lengthV = Math.hypot(...v)
  if (!Number.isFinite(lengthU + lengthV))
    return { ok: false, reason: 'An axis has a figure that is no number' }
  if (lengthU === 0 || lengthV === 0) return { ok: false, reason: 'An axis has no length' }
  const unitU: Axis = [u[0] / lengthU, u[1] / lengthU, u[2] / lengthU]
  const unitV: Axis = [v[0] / lengthV, v[1] / lengthV, v[2] / lengthV]
  const cosine = unitU[0] * unitV[0] + unitU[1] * unitV[1] + unitU[2] * unitV[2]
  const angleDeg = (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI
  if (Math.abs(angleDeg - 90) > 0.1) {
    return {
      ok: false,
      reason: `u and v are at ${angleDeg.toFixed(1)}° to each other; they must be at right angles`,
    }
  }
  const n: Axis = [
    unitU[1] * unitV[2] - unitU[2] * unitV[1],
    unitU[2] * unitV[0] - unitU[0] * unitV[2],
    unitU[0] * unitV[1] - unitU[1] * unitV[0],
  ]
  return { ok: true, u: unitU, v: unitV, n }
}
