import { crossings } from './crossings'
import { distanceBetweenLoops } from './distance'
import { pointInLoop } from './inside'
import { dropRepeatedPoints, loopArea, loopPerimeter } from './loop'
import { nearestBetweenSegments, nearestOnSegment } from './segment'
import { samePointMm } from './tolerance'
import type { Loop, Point } from './types'

/** What is known of an outline while it is drawn. Null: not to be said yet. */
export interface OutlineMeasures {
  /** Round the closed outline, or along the open one. */
  readonly lengthMm: number
  readonly areaMm2: number | null
  /** From the outline to the rim of the dowel; below 0 when it cuts into it. A dowel that lies inside is held by it. */
  readonly dowel: { readonly tag: string; readonly rimMm: number; readonly inside: boolean } | null
  readonly boundaryMm: number | null
  /** A point of it lies beyond the boundary, or its line crosses it. */
  readonly leavesArea: boolean
  /** Where it crosses or touches itself. */
  readonly crossings: readonly Point[]
}

interface MeasuredFace {
  readonly boundary: Loop
  readonly dowels: readonly { readonly tag: string; readonly at: Point; readonly diameterMm: number }[]
}

/** Length, area and clearances of an outline that is being drawn, open or closed. */
export function outlineMeasures(
  points: readonly Point[],
  closed: boolean,
  { boundary, dowels }: MeasuredFace,
): OutlineMeasures {
  const line = dropRepeatedPoints(points)
  const isArea = closed && line.length >= 3
  const dowel = nearestRim(line, isArea, dowels)
  return {
    lengthMm: isArea ? loopPerimeter(line) : openLength(line),
    areaMm2: isArea ? loopArea(line) : null,
    dowel,
    boundaryMm: line.length === 0 ? null : distanceToBoundary(line, isArea, boundary),
    leavesArea: leaves(line, isArea, boundary),
    crossings: isArea ? crossings(line) : openCrossings(line),
  }
}

function edges(line: readonly Point[], closed: boolean): readonly (readonly [Point, Point])[] {
  if (line.length === 1) return [[line[0]!, line[0]!]]
  const open = line.slice(1).map((to, i) => [line[i]!, to] as const)
  return closed ? [...open, [line[line.length - 1]!, line[0]!]] : open
}

function openLength(line: readonly Point[]): number {
  return line.length < 2
    ? 0
    : edges(line, false).reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0)
}

function nearestRim(
  line: readonly Point[],
  closed: boolean,
  dowels: MeasuredFace['dowels'],
): OutlineMeasures['dowel'] {
  let best: OutlineMeasures['dowel'] = null
  if (line.length === 0) return best
  for (const { tag, at, diameterMm } of dowels) {
    const centreMm = edges(line, closed).reduce(
      (least, [a, b]) => Math.min(least, nearestOnSegment(at, a, b).mm),
      Infinity,
    )
    const rimMm = centreMm - diameterMm / 2
    if (best === null || rimMm < best.rimMm) best = { tag, rimMm, inside: closed && pointInLoop(at, line) }
  }
  return best
}

function distanceToBoundary(line: readonly Point[], closed: boolean, boundary: Loop): number {
  if (closed) return distanceBetweenLoops(line, boundary)
  // An open line there and back is a loop with the same nearest point.
  return distanceBetweenLoops([...line, ...line.slice(1, -1).reverse()], boundary)
}

function leaves(line: readonly Point[], closed: boolean, boundary: Loop): boolean {
  if (line.some((point) => !pointInLoop(point, boundary))) return true
  // All corners inside, yet an edge may cut across a bay of the boundary: then its crossing leaves a middle outside.
  return edges(line, closed).some(([a, b]) => !edgeInside(a, b, boundary))
}

/** Whether the middles between all crossings of an edge with the boundary lie inside. */
function edgeInside(a: Point, b: Point, boundary: Loop): boolean {
  const cuts = [0, 1]
  for (const [i, c] of boundary.entries()) {
    const d = boundary[(i + 1) % boundary.length]!
    const cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
    if (cross === 0) continue
    const along = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / cross
    const across = ((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / cross
    if (along > 0 && along < 1 && across >= 0 && across <= 1) cuts.push(along)
  }
  cuts.sort((p, q) => p - q)
  return cuts.slice(1).every((to, i) => {
    const middle = (cuts[i]! + to) / 2
    return pointInLoop([a[0] + middle * (b[0] - a[0]), a[1] + middle * (b[1] - a[1])], boundary)
  })
}

/** Where edges of an open line that are not neighbours meet. */
function openCrossings(line: readonly Point[]): readonly Point[] {
  const list = edges(line, false)
  return list.flatMap(([a, b], i) =>
    list.slice(i + 2).flatMap(([c, d]) => {
      const { mm, at } = nearestBetweenSegments(a, b, c, d)
      return mm <= samePointMm ? [at] : []
    }),
  )
}
