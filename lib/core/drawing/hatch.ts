import type { Segment } from './boxes'
import { segmentsOf } from './boxes'
import type { Role } from './styles'
import type { HatchItem, Xy } from './types'

/**
 * 45 degree hatching of the loops (even-odd), rising to the right. The lines are cut to the loops here and not
 * by a clip of the renderer, so that SVG and PDF agree to the last line. Neighbouring patches share one ruling.
 * RangeError for a spacing that is not above zero.
 */
export function hatch(loops: readonly (readonly Xy[])[], spacingMm: number, role: Role): HatchItem {
  if (!(spacingMm > 0)) throw new RangeError(`hatch spacing must be above zero, got ${spacingMm} mm`)
  const edges = loops.flatMap((loop) => segmentsOf(loop, true))
  const pitch = spacingMm * Math.SQRT2
  const sums = edges.flatMap(([a, b]) => [a[0] + a[1], b[0] + b[1]])
  const low = sums.reduce((least, sum) => Math.min(least, sum), Number.POSITIVE_INFINITY)
  const high = sums.reduce((most, sum) => Math.max(most, sum), Number.NEGATIVE_INFINITY)
  const segments: Segment[] = []
  for (let k = Math.ceil(low / pitch); k * pitch <= high; k += 1) segments.push(...cut(edges, k * pitch))
  return { kind: 'hatch', loops, segments, role }
}

/** The pieces of the line x + y = sum that lie inside. */
function cut(edges: readonly Segment[], sum: number): readonly Segment[] {
  const hits: number[] = []
  for (const [a, b] of edges) {
    const sa = a[0] + a[1] - sum
    const sb = b[0] + b[1] - sum
    if (sa > 0 === sb > 0) continue
    hits.push(a[0] + (sa / (sa - sb)) * (b[0] - a[0]))
  }
  hits.sort((p, q) => p - q)
  const pieces: Segment[] = []
  for (let i = 0; i + 1 < hits.length; i += 2) {
    const from = hits[i]!
    const to = hits[i + 1]!
    if (to > from) {
      pieces.push([
        [from, sum - from],
        [to, sum - to],
      ])
    }
  }
  return pieces
}
