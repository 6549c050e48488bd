import { dropRepeatedPoints, edgesOf } from './loop'
import { nearestOnSegment, properCrossing } from './segment'
import { samePointMm } from './tolerance'
import type { Loop, Point } from './types'

/**
 * crossing: two edges cross; touch: an edge runs through a corner that is not its own, or two corners meet;
 * overlap: two edges lie on each other, a spike that runs back on itself included.
 */
export interface SelfCrossing {
  readonly kind: 'crossing' | 'touch' | 'overlap'
  readonly at: Point
  /** The two edges, by the index of the point that each begins at. */
  readonly edges: readonly [number, number]
}

interface Edge {
  readonly index: number
  readonly a: Point
  readonly b: Point
  /** Extent along the axis that is swept. */
  readonly low: number
  readonly high: number
}

/** Where several pairs of edges meet at one place, the gravest counts. */
const gravity = { touch: 0, overlap: 1, crossing: 2 } as const

/** Nearer than this an edge is taken to touch a corner, mm. */
const touchMm = samePointMm / 10

/** Places where a loop meets itself, mm; none for an outline that can be cut. Lists at most `most` of them. */
export function crossings(loop: Loop, most = 100): readonly Point[] {
  return selfCrossings(loop, most).map((crossing) => crossing.at)
}

/**
 * Where and how a loop meets itself, each place once and in the order of the edges, at most `most` of them. Points that repeat the one before do
 * not count. Edges are swept along u or v, whichever has fewer of them side by side.
 */
export function selfCrossings(loop: Loop, most = 100): readonly SelfCrossing[] {
  const pairs = edgesOf(dropRepeatedPoints(loop))
  const axis = sweepAxis(pairs)
  const edges = pairs.map(([a, b], index) => ({
    index,
    a,
    b,
    low: Math.min(a[axis], b[axis]),
    high: Math.max(a[axis], b[axis]),
  }))
  const found = new Map<string, SelfCrossing>()
  let open: Edge[] = []
  for (const edge of [...edges].sort((p, q) => p.low - q.low)) {
    open = open.filter((other) => other.high >= edge.low - touchMm)
    for (const other of open) {
      const meeting = meetingOf(edge, other, edges.length)
      if (meeting === null) continue
      const place = meeting.at.map((mm) => Math.round(mm / samePointMm)).join(' ')
      const known = found.get(place)
      if (known === undefined || gravity[meeting.kind] > gravity[known.kind]) found.set(place, meeting)
      if (found.size >= most) return inOrder(found)
    }
    open.push(edge)
  }
  return inOrder(found)
}

function inOrder(found: ReadonlyMap<string, SelfCrossing>): readonly SelfCrossing[] {
  return [...found.values()].sort((a, b) => a.edges[0] - b.edges[0] || a.edges[1] - b.edges[1])
}

/** The axis along which the edges are short for the extent of the whole. */
function sweepAxis(pairs: readonly (readonly [Point, Point])[]): 0 | 1 {
  const crowding = ([0, 1] as const).map((axis) => {
    const values = pairs.map(([a]) => a[axis])
    const extent =
      values.reduce((most, value) => Math.max(most, value), -Infinity) -
      values.reduce((least, value) => Math.min(least, value), Infinity)
    return pairs.reduce((sum, [a, b]) => sum + Math.abs(a[axis] - b[axis]), 0) / extent
  })
  return crowding[1]! < crowding[0]! ? 1 : 0
}

function meetingOf(p: Edge, q: Edge, count: number): SelfCrossing | null {
  for (const axis of [0, 1] as const) {
    if (Math.min(p.a[axis], p.b[axis]) > Math.max(q.a[axis], q.b[axis]) + touchMm) return null
    if (Math.max(p.a[axis], p.b[axis]) < Math.min(q.a[axis], q.b[axis]) - touchMm) return null
  }
  const [first, second] = p.index < q.index ? [p, q] : [q, p]
  const edges = [first.index, second.index] as const
  if (second.index === first.index + 1) return spikeAt(first, second, edges)
  if (first.index === 0 && second.index === count - 1) return spikeAt(second, first, edges)
  const touches = [p.a, p.b]
    .filter((end) => nearestOnSegment(end, q.a, q.b).mm <= touchMm)
    .concat([q.a, q.b].filter((end) => nearestOnSegment(end, p.a, p.b).mm <= touchMm))
  if (touches.length === 0) {
    const at = properCrossing(p.a, p.b, q.a, q.b)
    return at === null ? null : { kind: 'crossing', at, edges }
  }
  const apart = touches.some(
    (end) => Math.hypot(end[0] - touches[0]![0], end[1] - touches[0]![1]) > 2 * touchMm,
  )
  return { kind: apart ? 'overlap' : 'touch', at: touches[0]!, edges }
}

/** Neighbours share a corner; they lie on each other only when the second runs back along the first. */
function spikeAt(before: Edge, after: Edge, edges: readonly [number, number]): SelfCrossing | null {
  const back =
    (before.b[0] - before.a[0]) * (after.b[0] - after.a[0]) +
    (before.b[1] - before.a[1]) * (after.b[1] - after.a[1])
  if (back >= 0) return null
  const apartMm = Math.min(
    nearestOnSegment(after.b, before.a, before.b).mm,
    nearestOnSegment(before.a, after.a, after.b).mm,
  )
  return apartMm <= touchMm ? { kind: 'overlap', at: before.b, edges } : null
}
