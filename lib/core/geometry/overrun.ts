import { distanceBetweenLoops } from './distance'
import { whereInLoop } from './inside'
import { edgesOf } from './loop'
import { loopsOf } from './region'
import { type Nearest, nearestOnSegment } from './segment'
import type { Loop, Point, Region } from './types'

/** The farthest point is found to within this, mm. */
const searchMm = 1e-4

type Edge = readonly [Point, Point]

/** A stretch of an outline, with the distances of both ends from every edge of the boundary. */
interface Stretch {
  readonly from: Point
  readonly to: Point
  readonly fromMm: readonly number[]
  readonly toMm: readonly number[]
}

/**
 * How far the outlines run off the area inside `boundary`: the farthest that any of their points, between corners
 * too, lies outside it, to 0.0001 mm, and which point that is. 0 mm where nothing lies outside.
 */
export function overrun(regions: readonly Region[], boundary: Loop): Nearest {
  const walls = edgesOf(boundary)
  let farthest: Nearest = { mm: 0, at: regions[0]?.outer[0] ?? [0, 0] }
  const open = loopsOf(regions)
    .flatMap(edgesOf)
    .flatMap((edge) => outsideParts(edge, boundary, walls))
    .map(([from, to]) => ({ from, to, fromMm: distances(from, walls), toMm: distances(to, walls) }))
  for (const { from, to, fromMm, toMm } of open) {
    farthest = farther(farthest, from, fromMm)
    farthest = farther(farthest, to, toMm)
  }
  for (let stretch = open.pop(); stretch !== undefined; stretch = open.pop()) {
    if (boundOf(stretch) <= farthest.mm + searchMm) continue
    const middle: Point = [(stretch.from[0] + stretch.to[0]) / 2, (stretch.from[1] + stretch.to[1]) / 2]
    const middleMm = distances(middle, walls)
    farthest = farther(farthest, middle, middleMm)
    open.push({ ...stretch, to: middle, toMm: middleMm }, { ...stretch, from: middle, fromMm: middleMm })
  }
  return farthest
}

/**
 * Least distance from a loop inwards to the boundary round it, mm; negative when the loop runs off the area inside
 * the boundary: then the farthest that any of its points lies outside.
 */
export function leastSignedDistance(loop: Loop, boundary: Loop): number {
  const off = overrun([{ outer: loop, holes: [] }], boundary).mm
  return off > 0 ? -off : distanceBetweenLoops(loop, boundary)
}

function farther(best: Nearest, at: Point, distancesMm: readonly number[]): Nearest {
  const mm = least(distancesMm)
  return mm > best.mm ? { mm, at } : best
}

/** The distance to one wall is a convex function along a stretch, so nothing between its ends is farther from it. */
function boundOf({ fromMm, toMm }: Stretch): number {
  let bound = Infinity
  for (let wall = 0; wall < fromMm.length; wall++) {
    bound = Math.min(bound, Math.max(fromMm[wall]!, toMm[wall]!))
  }
  return bound
}

function distances(point: Point, walls: readonly Edge[]): readonly number[] {
  return walls.map(([a, b]) => nearestOnSegment(point, a, b).mm)
}

function least(values: readonly number[]): number {
  return values.reduce((best, value) => Math.min(best, value), Infinity)
}

/** The parts of an edge that lie outside the boundary, cut where the boundary crosses it. */
function outsideParts([a, b]: Edge, boundary: Loop, walls: readonly Edge[]): readonly Edge[] {
  const at = (share: number): Point => [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]
  const cuts = [0, ...walls.flatMap(([c, d]) => cutShare(a, b, c, d)).sort((x, y) => x - y), 1]
  const parts: Edge[] = []
  for (let index = 1; index < cuts.length; index++) {
    const [from, to] = [cuts[index - 1]!, cuts[index]!]
    if (to > from && whereInLoop(at((from + to) / 2), boundary) === 'outside') parts.push([at(from), at(to)])
  }
  return parts
}

/** Where along a-b, from 0 to 1, the wall c-d meets it; nothing when it does not or runs beside it. */
function cutShare(a: Point, b: Point, c: Point, d: Point): readonly number[] {
  const [du, dv] = [b[0] - a[0], b[1] - a[1]]
  const [wu, wv] = [d[0] - c[0], d[1] - c[1]]
  const cross = du * wv - dv * wu
  if (cross === 0) return []
  const along = ((c[0] - a[0]) * wv - (c[1] - a[1]) * wu) / cross
  const onWall = ((c[0] - a[0]) * dv - (c[1] - a[1]) * du) / cross
  return along > 0 && along < 1 && onWall >= 0 && onWall <= 1 ? [along] : []
}
