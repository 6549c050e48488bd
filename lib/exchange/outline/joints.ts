import { distanceBetweenPoints, type Point } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { type Chains, chainEnds, type Gap, type Link } from './chain'
import { note, placeName, stop } from './finding'
import { joinMostMm, mostOfAKind } from './limits'
import { pathName } from './path'
import { lengthWords } from './size'

/** Points where lines fork. */
export function branchFindings(branches: Chains['branches']): readonly Finding[] {
  const more = branches.length - mostOfAKind
  return branches.slice(0, mostOfAKind).map(({ at, paths }, index) =>
    stop(
      'branch',
      `${paths.length} ends meet here: ${paths
        .slice(0, 5)
        .map((path) => `${pathName(path)} (line ${path.line})`)
        .join(', ')}${paths.length > 5 ? ' and more' : ''}.${
        more > 0 && index === mostOfAKind - 1 ? ` There are ${more} more such places.` : ''
      }`,
      placeName(at),
      'Delete what does not belong to the outline, or trim its lines so that two ends meet at each corner.',
      { atMm: at, ends: paths.length },
    ),
  )
}

interface FreeEnd {
  readonly at: Point
  readonly link: Link
}

/** Free ends, each with the one nearest to it. A few are written out, the rest is counted. */
export function openFindings(open: Chains['open']): readonly Finding[] {
  let free = open.flatMap((links): FreeEnd[] => {
    const [from, to] = chainEnds(links)
    return [
      { at: from, link: links[0]! },
      { at: to, link: links.at(-1)! },
    ]
  })
  const findings: Finding[] = []
  while (free.length > 0 && findings.length < mostOfAKind) {
    const [end, ...others] = free as [FreeEnd, ...FreeEnd[]]
    const nearest = nearestOf(end, others)
    free = others.filter((other) => other !== nearest)
    findings.push(openEnds(end, nearest, findings.length === mostOfAKind - 1 ? free.length : 0))
  }
  return findings
}

function nearestOf(end: FreeEnd, others: readonly FreeEnd[]): FreeEnd {
  const apart = (other: FreeEnd) => distanceBetweenPoints(end.at, other.at)
  return others.reduce((best, other) => (apart(other) < apart(best) ? other : best), others[0]!)
}

function openEnds(end: FreeEnd, nearest: FreeEnd, more: number): Finding {
  const gapMm = distanceBetweenPoints(end.at, nearest.at)
  const name = ({ at, link: { path } }: FreeEnd) => `${placeName(at)} (${pathName(path)}, line ${path.line})`
  return stop(
    'outline-open',
    `The outline is open: between its end at ${name(end)} and its end at ${name(nearest)} there is a gap of ${lengthWords(gapMm)} mm.${
      more > 0 ? ` There are ${more} more free ends.` : ''
    }`,
    placeName(end.at),
    `Close the gap in the drawing program (ends up to ${joinMostMm} mm apart are joined), or delete what does not belong to the outline.`,
    { gapMm, endsMm: [...end.at, ...nearest.at], line: end.link.path.line },
  )
}

/** Gaps that were bridged, the widest named. */
export function gapFindings(gaps: readonly Gap[]): readonly Finding[] {
  if (gaps.length === 0) return []
  const widest = gaps.reduce((best, gap) => (gap.mm > best.mm ? gap : best))
  const what =
    gaps.length === 1
      ? `A gap of ${lengthWords(widest.mm)} mm between two ends was`
      : `${gaps.length} gaps between ends, up to ${lengthWords(widest.mm)} mm wide, were`
  return [
    note('gap-joined', `${what} closed at the point halfway between them.`, placeName(widest.ends[0]), {
      gapsMm: gaps.map(({ mm }) => mm),
      endsMm: gaps.flatMap(({ ends: [a, b] }) => [...a, ...b]),
    }),
  ]
}

/** Polylines that come back to their first point without being marked as closed. */
export function closedByPoint(closed: Chains['closed'], toleranceMm: number): readonly Finding[] {
  const single = closed.filter(
    (links) =>
      links.length === 1 &&
      distanceBetweenPoints(...chainEnds(links)) <= toleranceMm &&
      links[0]!.path.vertices.length > 2,
  )
  if (single.length === 0) return []
  const { path } = single[0]![0]!
  return [
    note(
      'closed-by-point',
      `${pathName(path)} is not marked as closed, but its last point repeats the first: it is read as closed.`,
      `line ${path.line}`,
      { line: path.line, count: single.length },
    ),
  ]
}
