import type { Point } from '../types'
import { spanOf } from './hull'
import type { Curvature } from './types'

/** What a flat fit is off by on a bent area. */
export interface Bent {
  readonly kind: 'single' | 'double'
  readonly radiusMm: number
  readonly spanMm: number
  /** Height of the arc over its chord: how far the face stands off the plane that the fit takes it for. */
  readonly sagittaMm: number
  /** How much longer the way along the face is than the straight line. */
  readonly longerMm: number
  /** How far a point that stands off by the sagitta is put sideways, seen as in the middle of the picture; nearer its rim it is more. */
  readonly sidewaysMm: number
}

/** Over all that was marked and traced; null on a flat area. A span of more than half a turn counts as half a turn. */
export function bentUnder(points: readonly Point[], curvature: Curvature, viewDeg: number): Bent | null {
  if (curvature.kind === 'flat') return null
  const { kind, radiusMm } = curvature
  const spanMm = spanOf(points)
  const half = Math.min(spanMm / 2, radiusMm)
  // R - sqrt(R² - h²), without the difference of nearly equal figures.
  const sagittaMm = (half * half) / (radiusMm + Math.sqrt(radiusMm * radiusMm - half * half))
  return {
    kind,
    radiusMm,
    spanMm,
    sagittaMm,
    longerMm: 2 * (radiusMm * Math.asin(half / radiusMm) - half),
    sidewaysMm: sagittaMm * Math.tan((viewDeg * Math.PI) / 180),
  }
}
