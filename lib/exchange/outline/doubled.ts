import { distanceBetweenPoints } from '#lib/core/geometry/index'
import { type Edge, edgesOfPath, type Path } from './path'
import { pointNumbers } from './point-grid'

/**
 * Splits off pieces that draw nothing new: every edge of theirs lies on an edge of another piece, either way round,
 * within the tolerance. Of two alike the first in the file stays; a polyline stays before the lines drawn over it.
 * A line that covers only part of another one is not taken for a double.
 */
export function withoutDoubles(
  paths: readonly Path[],
  toleranceMm: number,
): { readonly kept: readonly Path[]; readonly doubled: readonly Path[] } {
  const numberOf = pointNumbers(toleranceMm)
  const drawn = new Map<string, number[]>()
  const doubled = new Set<Path>()
  const longestFirst = [...paths].sort((a, b) => b.vertices.length - a.vertices.length)
  for (const path of longestFirst) {
    const edges = edgesOfPath(path).map((edge) => keyed(edge, numberOf))
    const isNew = edges.some(({ key, riseMm }) => {
      return !drawn.get(key)?.some((other) => Math.abs(other - riseMm) <= toleranceMm)
    })
    if (!isNew) {
      doubled.add(path)
      continue
    }
    for (const { key, riseMm } of edges) {
      const rises = drawn.get(key)
      if (rises === undefined) drawn.set(key, [riseMm])
      else rises.push(riseMm)
    }
  }
  return { kept: paths.filter((path) => !doubled.has(path)), doubled: [...doubled] }
}

/** An edge by its two ends, lower number first, and the rise of its arc over the chord, signed to that direction. */
function keyed(
  { from, to, bulge }: Edge,
  numberOf: ReturnType<typeof pointNumbers>,
): { readonly key: string; readonly riseMm: number } {
  const [a, b] = [numberOf(from), numberOf(to)]
  const riseMm = (bulge * distanceBetweenPoints(from, to)) / 2
  return a < b ? { key: `${a} ${b}`, riseMm } : { key: `${b} ${a}`, riseMm: -riseMm }
}
