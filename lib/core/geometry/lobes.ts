import { enclosed } from './clipping'
import { difference } from './combine'
import { area } from './region'
import type { Loop, Point, Region } from './types'

/**
 * The pieces that a loop encloses, largest first: one for a clean outline, two for a bow-tie, also when its halves
 * have a corner in common instead of a crossing. Areas that the loop runs round twice are pieces too.
 */
export function lobes(loop: Loop): readonly Region[] {
  const once = enclosed(loop, 'even-odd')
  const twice = difference(enclosed(loop, 'non-zero'), once)
  return [...once, ...twice].flatMap(parted).sort((a, b) => area([b]) - area([a]))
}

/** A region whose outline comes back to one of its points is two regions that touch there. */
function parted({ outer, holes }: Region): readonly Region[] {
  const pieces: Loop[] = []
  const path: Point[] = []
  for (const point of outer) {
    const met = path.findIndex((earlier) => earlier[0] === point[0] && earlier[1] === point[1])
    if (met >= 0) pieces.push(path.splice(met))
    path.push(point)
  }
  if (pieces.length === 0) return [{ outer, holes }]
  return [...pieces, path].map((piece, index) => ({
    outer: piece,
    holes: index === pieces.length ? holes : [],
  }))
}
