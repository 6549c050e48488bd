import type { Finding } from '#lib/core/result'
import { chain, type JoinLimits, type Link } from './chain'
import { withoutDoubles } from './doubled'
import { flattener } from './flatten'
import { branchFindings, closedByPoint, gapFindings, openFindings } from './joints'
import { joinExactMm, joinMostMm } from './limits'
import { isLengthless, type Path, withoutRepeats } from './path'
import { dropFindings, heightFindings } from './pieces'
import type { Drawing, DrawnLoop, FileUnit } from './types'

/**
 * Closed loops out of drawn pieces: doubles dropped, loose pieces joined by their ends in whatever order they were
 * drawn, and what was done on the way. No loops where ends fork or stay open.
 */
export function joinPaths(paths: readonly Path[], unit: FileUnit | null): Omit<Drawing, 'unit'> {
  const limits = joinLimits(paths, unit)
  const tidied = paths.map((path) => withoutRepeats(path, limits.exactMm))
  const drawn = tidied.filter(({ path }) => !isLengthless(path, limits.exactMm))
  const lengthless = tidied.flatMap(({ path }) => (isLengthless(path, limits.exactMm) ? [path] : []))
  const repeats = drawn.reduce((sum, each) => sum + each.repeats, 0)
  const { kept, doubled } = withoutDoubles(
    drawn.map(({ path }) => path),
    limits.exactMm,
  )
  const chains = chain(
    kept.filter(({ closed }) => !closed),
    limits,
  )
  const rings = kept.filter(({ closed }) => closed).map((path): Link[] => [{ path, backwards: false }])
  const stops = [...branchFindings(chains.branches), ...openFindings(chains.open)]
  const toPoints = flattener()
  const closed = stops.length > 0 ? [] : [...rings, ...chains.closed]
  const findings: Finding[] = [
    ...stops,
    ...heightFindings(kept),
    ...dropFindings(doubled, lengthless, repeats),
    ...closedByPoint(chains.closed, limits.exactMm),
    ...gapFindings(chains.gaps),
  ]
  return {
    loops: closed.map((links) => loopOf(links, toPoints)),
    dropped: doubled.length + lengthless.length,
    findings,
  }
}

function loopOf(links: readonly Link[], toPoints: ReturnType<typeof flattener>): DrawnLoop {
  return {
    points: toPoints(links),
    layers: [...new Set(links.map(({ path }) => path.layer))].filter((layer) => layer !== ''),
    asGiven: links.every(
      ({ path }) => path.curved !== true && path.vertices.every(({ bulge }) => bulge === 0),
    ),
    role: null,
  }
}

/**
 * How far ends may lie apart. While the unit is not known, numbers are taken as mm but could be metres: then the
 * tolerances shrink with the drawing, so that nothing is joined that the right unit would keep apart.
 */
function joinLimits(paths: readonly Path[], unit: FileUnit | null): JoinLimits {
  if (unit !== null) return { exactMm: joinExactMm, mostMm: joinMostMm }
  let [uMin, vMin, uMax, vMax] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { vertices } of paths) {
    for (const { at } of vertices) {
      uMin = Math.min(uMin, at[0])
      vMin = Math.min(vMin, at[1])
      uMax = Math.max(uMax, at[0])
      vMax = Math.max(vMax, at[1])
    }
  }
  const shrink = Math.min(1, Math.hypot(uMax - uMin, vMax - vMin) / 1000)
  return shrink > 0
    ? { exactMm: joinExactMm * shrink, mostMm: joinMostMm * shrink }
    : { exactMm: joinExactMm, mostMm: joinMostMm }
}
