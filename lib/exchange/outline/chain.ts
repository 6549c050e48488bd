import type { Point } from '#lib/core/geometry/index'
import type { Path } from './path'
import { pointGrid, pointNumbers } from './point-grid'

/** One piece in a chain; `backwards` when it runs against the way it was drawn. */
export interface Link {
  readonly path: Path
  readonly backwards: boolean
}

/** Two ends that don't quite meet and were joined. */
export interface Gap {
  readonly ends: readonly [Point, Point]
  readonly mm: number
}

export interface Chains {
  readonly closed: readonly (readonly Link[])[]
  /** Chains with two free ends. */
  readonly open: readonly (readonly Link[])[]
  /** Gaps that were bridged, of chains closed and open. */
  readonly gaps: readonly Gap[]
  /** Points where three or more ends meet. When there are any, nothing is chained. */
  readonly branches: readonly { readonly at: Point; readonly paths: readonly Path[] }[]
}

export interface JoinLimits {
  /** Ends this close are one point. */
  readonly exactMm: number
  /** Ends this close are joined, and the gap is told. */
  readonly mostMm: number
}

/** End of a path: twice its index, plus 1 for the far end. */
type End = number

/** Looked at when the nearest partner of a free end is sought. */
const mostPartners = 8

/** Chains open paths by their ends, in whatever order and direction they were drawn. */
export function chain(paths: readonly Path[], limits: JoinLimits): Chains {
  const pointOf = (end: End): Point => {
    const { vertices } = paths[end >> 1]!
    return (end % 2 === 0 ? vertices[0] : vertices.at(-1))!.at
  }
  const ends = paths.flatMap((_, index): End[] => [2 * index, 2 * index + 1])
  const meetings = meetingsOf(ends, pointOf, limits.exactMm)
  const branches = meetings
    .filter((meeting) => meeting.length > 2)
    .map((meeting) => ({ at: pointOf(meeting[0]!), paths: meeting.map((end) => paths[end >> 1]!) }))
  if (branches.length > 0) return { closed: [], open: [], gaps: [], branches }
  const mates = new Map<End, End>()
  const join = (a: End, b: End) => mates.set(a, b).set(b, a)
  for (const [a, b] of meetings) if (b !== undefined) join(a!, b)
  const free = ends.filter((end) => !mates.has(end))
  const gaps = nearPairs(free, pointOf, paths, limits.mostMm).map(([a, b, mm]): Gap => {
    join(a, b)
    return { ends: [pointOf(a), pointOf(b)], mm }
  })
  return { ...follow(paths, mates), gaps, branches: [] }
}

/** Ends grouped by the point at which they meet. */
function meetingsOf(ends: readonly End[], pointOf: (end: End) => Point, toleranceMm: number): End[][] {
  const numberOf = pointNumbers(toleranceMm)
  const meetings: End[][] = []
  for (const end of ends) {
    const number = numberOf(pointOf(end))
    if (meetings[number] === undefined) meetings[number] = [end]
    else meetings[number].push(end)
  }
  return meetings
}

/** Free ends paired with their nearest, shortest gaps first; each end once. */
function nearPairs(
  free: readonly End[],
  pointOf: (end: End) => Point,
  paths: readonly Path[],
  mostMm: number,
): readonly (readonly [End, End, number])[] {
  const grid = pointGrid<End>(mostMm)
  for (const end of free) grid.add(pointOf(end), end)
  const pairs = free.flatMap((end) =>
    grid
      .near(pointOf(end), mostPartners)
      .filter(({ item }) => item > end && !(item >> 1 === end >> 1 && isShort(paths[end >> 1]!)))
      .map(({ item, mm }) => [end, item, mm] as const),
  )
  const taken = new Set<End>()
  return [...pairs]
    .sort((p, q) => p[2] - q[2])
    .filter(([a, b]) => {
      if (taken.has(a) || taken.has(b)) return false
      taken.add(a).add(b)
      return true
    })
}

/** A single straight line encloses nothing, however short: its ends are not joined to each other. */
function isShort({ vertices }: Path): boolean {
  return vertices.length === 2 && vertices[0]!.bulge === 0
}

function follow(
  paths: readonly Path[],
  mates: ReadonlyMap<End, End>,
): { readonly closed: readonly (readonly Link[])[]; readonly open: readonly (readonly Link[])[] } {
  const done = new Set<number>()
  const walk = (start: End): Link[] => {
    const links: Link[] = []
    for (let end: End | undefined = start; end !== undefined && !done.has(end >> 1); ) {
      done.add(end >> 1)
      links.push({ path: paths[end >> 1]!, backwards: end % 2 === 1 })
      end = mates.get(end ^ 1)
    }
    return links
  }
  const starts = paths.flatMap((_, index) => [2 * index, 2 * index + 1])
  const open = starts.filter((end) => !mates.has(end)).map(walk)
  const closed = paths.map((_, index) => walk(2 * index))
  return { open: open.filter(hasLinks), closed: closed.filter(hasLinks) }
}

function hasLinks(links: readonly Link[]): boolean {
  return links.length > 0
}

/** Where a chain begins and ends. */
export function chainEnds(links: readonly Link[]): readonly [Point, Point] {
  const [first, last] = [links[0]!, links.at(-1)!]
  return [
    (first.backwards ? first.path.vertices.at(-1) : first.path.vertices[0])!.at,
    (last.backwards ? last.path.vertices[0] : last.path.vertices.at(-1))!.at,
  ]
}
