import type { PatchPlan } from '../repair/types'
import { boxOf, grown, overlap, type Segment, segmentsOf } from './boxes'
import type { Drafting } from './drafting'
import { textBox } from './labels'
import { loopToDrawing } from './placement'
import { baselineAbout, path, text } from './primitives'
import type { FacePlacement, Shape, Xy } from './types'

const startDeg = -58
const turnDeg = 4
/** Narrower rings than this, in text heights, get their number outside on a leader. */
const leastRing = 0.74

interface Ring {
  readonly layingOrder: number
  readonly segments: readonly Segment[]
}

/**
 * Laying numbers, each on the ring that shows of its ply, spread round the opening so that none hides another.
 * Where rings are too narrow to write in, the number stands at the end of a radial leader: outside, or within the
 * opening for the ply that meets it.
 */
export function plyNumbers(plan: PatchPlan, placement: FacePlacement, draft: Drafting): readonly Shape[] {
  const opening = loopToDrawing(placement, plan.opening.outer)
  const box = boxOf(opening)
  const centre: Xy = [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
  const rings = plan.plies
    .map((ply): Ring => {
      const loops = ply.outline.map((region) => loopToDrawing(placement, region.outer))
      return { layingOrder: ply.layingOrder, segments: loops.flatMap((loop) => segmentsOf(loop, true)) }
    })
    .sort((a, b) => farthest(centre, a, 0) - farthest(centre, b, 0) || a.layingOrder - b.layingOrder)
  const hole: Ring = { layingOrder: 0, segments: segmentsOf(opening, true) }
  const shapes: Shape[] = []
  let degrees = startDeg
  for (const [i, ring] of rings.entries()) {
    const number = numberOn(
      ring,
      i === 0 ? hole : rings[i - 1]!,
      rings[rings.length - 1]!,
      centre,
      degrees,
      draft,
    )
    shapes.push(...number.shapes)
    degrees = number.nextDeg
  }
  return shapes
}

function numberOn(
  ring: Ring,
  inner: Ring,
  outermost: Ring,
  centre: Xy,
  fromDeg: number,
  draft: Drafting,
): { readonly shapes: readonly Shape[]; readonly nextDeg: number } {
  const size = draft.sizes.textMm
  const words = `${ring.layingOrder}`
  for (let degrees = fromDeg; degrees < fromDeg + 360; degrees += turnDeg) {
    const outer = farthest(centre, ring, degrees)
    const width = outer - Math.min(outer, farthest(centre, inner, degrees))
    const outside = width < leastRing * size
    const inward = outside && inner.layingOrder === 0 && outer - width > 3 * size
    const reach = inward
      ? outer - width - size * 1.1
      : outside
        ? farthest(centre, outermost, degrees) + size * 1.2
        : outer - width / 2
    const at = polar(centre, reach, degrees)
    const baseline: Xy = [at[0], baselineAbout(at[1], size)]
    const box = textBox(words, size, baseline, 'middle')
    if (draft.taken.some((other) => overlap(grown(box, size * 0.15), other))) continue
    if (box.left < draft.area.left || box.right > draft.area.right) continue
    if (box.top < draft.area.top || box.bottom > draft.area.bottom) continue
    draft.taken.push(box)
    const number = text(baseline, words, size, { anchor: 'middle', halo: true })
    const nextDeg = degrees + turnDeg
    if (!outside) return { shapes: [number], nextDeg }
    const start = polar(centre, outer - width / 2, degrees)
    const end = polar(centre, reach + size * (inward ? 0.6 : -0.6), degrees)
    draft.lines.push([start, end])
    const dot = {
      kind: 'circle',
      centre: start,
      radiusMm: size * 0.1,
      style: 'thin',
      role: 'ink',
      fill: 'solid',
    } as const
    return { shapes: [path([[start, end]], false, 'dimension', 'ink'), dot, number], nextDeg }
  }
  draft.omitted.push(`ply ${words}`)
  return { shapes: [], nextDeg: fromDeg }
}

function polar([x, y]: Xy, reachMm: number, degrees: number): Xy {
  const angle = (degrees * Math.PI) / 180
  return [x + reachMm * Math.cos(angle), y + reachMm * Math.sin(angle)]
}

/** Distance to the outline's last crossing of a ray; 0 when the ray misses it. */
function farthest([cx, cy]: Xy, ring: Ring, degrees: number): number {
  const angle = (degrees * Math.PI) / 180
  const dx = Math.cos(angle)
  const dy = Math.sin(angle)
  let most = 0
  for (const [a, b] of ring.segments) {
    const sideA = dx * (a[1] - cy) - dy * (a[0] - cx)
    const sideB = dx * (b[1] - cy) - dy * (b[0] - cx)
    if (sideA > 0 === sideB > 0) continue
    const share = sideA / (sideA - sideB)
    const x = a[0] + share * (b[0] - a[0]) - cx
    const y = a[1] + share * (b[1] - a[1]) - cy
    most = Math.max(most, x * dx + y * dy)
  }
  return most
}
