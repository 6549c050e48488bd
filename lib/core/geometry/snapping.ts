import { columnName, rowName } from './location-grid'
import { nearestOnSegment } from './segment'
import type { SnapPoint, SnapTargets } from './snap-targets'
import { samePointMm } from './tolerance'
import type { Point } from './types'

/** What the outline itself offers while one of its points is set. */
export interface SnapFrom {
  /** Points that the new edge starts at: steps of 15 degrees run from them. */
  readonly neighbours: readonly Point[]
  /** Points of the outline itself that can be met, "first point: closes the outline" for one. */
  readonly own: readonly SnapPoint[]
}

export interface Snapped {
  readonly at: Point
  /** What caught it: "corner of the boundary", "grid line 4 | 5 and 25 mm inside the boundary". */
  readonly words: string
}

/** Directions that an edge is caught by, degrees from u. */
const stepDeg = 15
/** However far the reach on a small drawing: between steps and between grid lines there stays free ground. */
const stepShare = 0.05
const gridShare = 0.2
/** Lines looked at for where they cross: the nearest few. */
const mostCrossed = 12
/** A catch changes what lies in reach, so it is sought again from where it came to rest. */
const mostRounds = 8

/** An endless line or a stretch of one, in reach of the point. */
interface LineInReach {
  readonly mm: number
  readonly foot: Point
  readonly through: Point
  readonly direction: Point
  /** Null for an endless line. */
  readonly ends: readonly [Point, Point] | null
  readonly words: string
}

/**
 * Where a drawn point is caught within `reachMm`: a named point first, then where two lines cross, then a line. Null
 * when nothing is in reach. What comes out is caught where it lies: snapping it again changes nothing.
 * RangeError for a reach below 0 or a point that is no point.
 */
export function snap(point: Point, targets: SnapTargets, from: SnapFrom, reachMm: number): Snapped | null {
  if (!(reachMm >= 0)) throw new RangeError(`the reach of snapping must be at least 0 mm, got ${reachMm}`)
  if (!(Number.isFinite(point[0]) && Number.isFinite(point[1]))) {
    throw new RangeError(`no point to snap: (${point[0]}, ${point[1]})`)
  }
  let last: Snapped | null = null
  for (let round = 0; round < mostRounds; round += 1) {
    const next = snapOnce(last?.at ?? point, targets, from, reachMm)
    if (next === null) return last
    // At rest; the words may tell more of the place than those on the way to it.
    if (last !== null && same(next.at, last.at)) return { at: last.at, words: next.words }
    last = next
  }
  return last
}

function snapOnce(point: Point, targets: SnapTargets, from: SnapFrom, reachMm: number): Snapped | null {
  const named = nearestPoint(point, [...from.own, ...targets.points], reachMm)
  if (named !== null) return { at: named.at, words: named.words }
  const lines = linesInReach(point, targets, from, reachMm)
  const crossing = nearestPoint(point, crossingsOf(lines), reachMm)
  if (crossing !== null) return { at: settled(point, crossing.at), words: crossing.words }
  const [line] = lines
  return line === undefined ? null : { at: settled(point, line.foot), words: line.words }
}

/** A point that lies on its target but for rounding stays as it is. */
function settled(point: Point, at: Point): Point {
  return same(point, at) ? point : at
}

function same(a: Point, b: Point): boolean {
  return Math.abs(a[0] - b[0]) <= samePointMm && Math.abs(a[1] - b[1]) <= samePointMm
}

function nearestPoint(point: Point, candidates: readonly SnapPoint[], reachMm: number): SnapPoint | null {
  let best: SnapPoint | null = null
  let bestMm = reachMm
  for (const candidate of candidates) {
    const mm = Math.hypot(candidate.at[0] - point[0], candidate.at[1] - point[1])
    if (mm < bestMm || (best === null && mm <= reachMm)) {
      best = candidate
      bestMm = mm
    }
  }
  return best
}

function linesInReach(
  point: Point,
  targets: SnapTargets,
  from: SnapFrom,
  reachMm: number,
): readonly LineInReach[] {
  const ruled = gridLines(point, targets).filter(({ mm }) => mm <= targets.grid.cellMm * gridShare)
  return [...drawnLines(point, targets, reachMm), ...steps(point, from), ...ruled]
    .filter(({ mm }) => mm <= reachMm)
    .sort((a, b) => a.mm - b.mm)
    .slice(0, mostCrossed)
}

function gridLines([u, v]: Point, { grid }: SnapTargets): readonly LineInReach[] {
  const column = Math.round((u - grid.originMm[0]) / grid.cellMm)
  const row = Math.round((grid.originMm[1] - v) / grid.cellMm)
  const atU = grid.originMm[0] + column * grid.cellMm
  const atV = grid.originMm[1] - row * grid.cellMm
  return [
    {
      mm: Math.abs(u - atU),
      foot: [atU, v],
      through: [atU, v],
      direction: [0, 1],
      ends: null,
      words: `grid line ${columnName(column - 1)} | ${columnName(column)}`,
    },
    {
      mm: Math.abs(v - atV),
      foot: [u, atV],
      through: [u, atV],
      direction: [1, 0],
      ends: null,
      words: `grid line ${rowName(row - 1)} | ${rowName(row)}`,
    },
  ]
}

function steps(point: Point, { neighbours }: SnapFrom): readonly LineInReach[] {
  return neighbours.flatMap((through): readonly LineInReach[] => {
    const [du, dv] = [point[0] - through[0], point[1] - through[1]]
    if (Math.hypot(du, dv) <= samePointMm) return []
    const step = Math.round((Math.atan2(dv, du) * 180) / Math.PI / stepDeg)
    const degrees = step * stepDeg
    const direction = unitAt(degrees)
    const along = du * direction[0] + dv * direction[1]
    const foot: Point = [through[0] + along * direction[0], through[1] + along * direction[1]]
    const mm = Math.hypot(foot[0] - point[0], foot[1] - point[1])
    if (mm > Math.abs(along) * stepShare) return []
    return [{ mm, foot, through, direction, ends: null, words: `edge at ${degrees}°` }]
  })
}

/** Exact along the axes, where a cosine of 90 degrees would leave a crumb. */
function unitAt(degrees: number): Point {
  if (degrees % 180 === 0) return [degrees % 360 === 0 ? 1 : -1, 0]
  if (degrees % 90 === 0) return [0, ((degrees % 360) + 360) % 360 === 90 ? 1 : -1]
  const angle = (degrees * Math.PI) / 180
  return [Math.cos(angle), Math.sin(angle)]
}

function drawnLines(point: Point, { lines }: SnapTargets, reachMm: number): readonly LineInReach[] {
  return lines.flatMap(({ points, closed, words }) => {
    const count = closed ? points.length : points.length - 1
    const found: LineInReach[] = []
    for (let i = 0; i < count; i += 1) {
      const a = points[i]!
      const b = points[(i + 1) % points.length]!
      const { mm, at } = nearestOnSegment(point, a, b)
      const lengthMm = Math.hypot(b[0] - a[0], b[1] - a[1])
      if (mm > reachMm || lengthMm === 0) continue
      const direction: Point = [(b[0] - a[0]) / lengthMm, (b[1] - a[1]) / lengthMm]
      found.push({ mm, foot: at, through: a, direction, ends: [a, b], words })
    }
    return found
  })
}

function crossingsOf(lines: readonly LineInReach[]): readonly SnapPoint[] {
  const found: SnapPoint[] = []
  for (const [i, p] of lines.entries()) {
    for (const q of lines.slice(i + 1)) {
      // Chords of one curve meet at its points, which are no crossing that anybody means.
      if (p.words === q.words) continue
      const at = crossingOf(p, q)
      if (at !== null) found.push({ at, words: `${p.words} and ${q.words}` })
    }
  }
  return found
}

function crossingOf(p: LineInReach, q: LineInReach): Point | null {
  const cross = p.direction[0] * q.direction[1] - p.direction[1] * q.direction[0]
  if (Math.abs(cross) < 1e-3) return null
  const [du, dv] = [q.through[0] - p.through[0], q.through[1] - p.through[1]]
  const along = (du * q.direction[1] - dv * q.direction[0]) / cross
  const at: Point = [p.through[0] + along * p.direction[0], p.through[1] + along * p.direction[1]]
  return [p, q].every(({ ends }) => ends === null || nearestOnSegment(at, ends[0], ends[1]).mm <= samePointMm)
    ? at
    : null
}
