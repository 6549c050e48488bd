import { type Bounds, type Loop, loopBounds, type Point, samePointMm } from '#lib/core/geometry/index'
import { nearestBetweenSegments } from '#lib/core/geometry/segment'

export interface Meeting {
  readonly at: Point
  /** Which two of the loops, by index. */
  readonly loops: readonly [number, number]
}

interface Edge {
  readonly loop: number
  readonly a: Point
  readonly b: Point
  readonly low: number
  readonly high: number
}

/**
 * A place where two of the loops cross or touch; null when they keep clear of each other. Edges are swept along u, and
 * only those whose loops can meet at all are looked at.
 */
export function loopsMeeting(loops: readonly Loop[]): Meeting | null {
  const bounds = loops.map(loopBounds)
  const edges = loops.flatMap((loop, index) => edgesNear(loop, index, bounds)).sort((p, q) => p.low - q.low)
  let open: Edge[] = []
  for (const edge of edges) {
    open = open.filter((other) => other.high >= edge.low - samePointMm)
    for (const other of open) {
      if (other.loop === edge.loop || !mayTouch(other, edge)) continue
      const { mm, at } = nearestBetweenSegments(other.a, other.b, edge.a, edge.b)
      if (mm <= samePointMm) return { at, loops: [other.loop, edge.loop] }
    }
    open.push(edge)
  }
  return null
}

/** Edges of a loop that lie in the box of another one. */
function edgesNear(loop: Loop, index: number, bounds: readonly Bounds[]): readonly Edge[] {
  const others = bounds.filter((box, other) => other !== index && boxesMeet(box, bounds[index]!))
  return loop.flatMap((a, at): readonly Edge[] => {
    const b = loop[(at + 1) % loop.length]!
    const own: Bounds = [
      Math.min(a[0], b[0]),
      Math.min(a[1], b[1]),
      Math.max(a[0], b[0]),
      Math.max(a[1], b[1]),
    ]
    return others.some((box) => boxesMeet(box, own)) ? [{ loop: index, a, b, low: own[0], high: own[2] }] : []
  })
}

function boxesMeet(a: Bounds, b: Bounds): boolean {
  return (
    a[0] <= b[2] + samePointMm &&
    b[0] <= a[2] + samePointMm &&
    a[1] <= b[3] + samePointMm &&
    b[1] <= a[3] + samePointMm
  )
}

function mayTouch({ a, b }: Edge, other: Edge): boolean {
  return (
    Math.max(a[1], b[1]) >= Math.min(other.a[1], other.b[1]) - samePointMm &&
    Math.max(other.a[1], other.b[1]) >= Math.min(a[1], b[1]) - samePointMm
  )
}
