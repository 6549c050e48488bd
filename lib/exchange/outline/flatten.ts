import { distanceBetweenPoints, flattenBulge, type Point } from '#lib/core/geometry/index'
import type { Link } from './chain'
import { lineName, Refused, stop } from './finding'
import { farthestMm, mostPoints } from './limits'
import { edgesOfPath, type Path } from './path'

/** Points of all loops of a drawing together; several loops are shown before they are refused. */
const mostOfAllLoops = 10 * mostPoints

/** Turns chains into points, and refuses once all of them together have more than can be shown. */
export function flattener(): (links: readonly Link[]) => readonly Point[] {
  let total = 0
  return (links) => {
    const points: Point[] = []
    for (const link of links) {
      const piece = pathPoints(link.path, mostOfAllLoops - total)
      total += piece.length
      append(points, link.backwards ? [...piece].reverse() : piece)
    }
    return closedUp(points)
  }
}

/** Corners and points of the arcs between them, both ends included; of a closed path the first point once more. */
function pathPoints(path: Path, room: number): readonly Point[] {
  const points: Point[] = [path.vertices[0]!.at]
  for (const { from, to, bulge } of edgesOfPath(path)) {
    const radiusMm =
      bulge === 0 ? 0 : (distanceBetweenPoints(from, to) * (1 + bulge * bulge)) / 4 / Math.abs(bulge)
    if (Math.abs(bulge) > 1 && !(radiusMm <= farthestMm)) throw arcTooLarge(path, radiusMm)
    for (const point of flattenBulge(from, to, bulge).slice(1)) points.push(point)
    if (points.length > room) throw tooMany(path)
  }
  return points
}

/** Two ends that don't quite meet become the point between them. */
function append(points: Point[], piece: readonly Point[]): void {
  const [first, ...rest] = piece
  const last = points.pop()
  points.push(last === undefined ? first! : between(last, first!))
  for (const point of rest) points.push(point)
}

/** Without the last point, which the first one repeats. */
function closedUp(points: readonly Point[]): readonly Point[] {
  return [between(points.at(-1)!, points[0]!), ...points.slice(1, -1)]
}

function between(a: Point, b: Point): Point {
  return a[0] === b[0] && a[1] === b[1] ? a : [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
}

function arcTooLarge({ entity, line }: Path, radiusMm: number): Refused {
  return new Refused(
    stop(
      'bulge',
      `An arc of this ${entity} has a radius of ${radiusMm.toPrecision(4)} mm.`,
      lineName(line),
      'Draw the arc anew and save the DXF again.',
      { line },
    ),
  )
}

function tooMany({ line }: Path): Refused {
  return new Refused(
    stop(
      'too-many-points',
      `With its arcs flattened the drawing has more than ${mostOfAllLoops} points.`,
      lineName(line),
      'Save a drawing that holds nothing but the outline.',
      { mostOfAllLoops },
    ),
  )
}
