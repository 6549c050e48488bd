import { chordErrorMm, distanceBetweenPoints, type Point } from '#lib/core/geometry/index'
import { tooManyPoints } from './dxf-room'
import type { DxfShape } from './dxf-shape'
import { withinReach } from './dxf-values'
import { type Ellipse, flattenEllipse, longestHalfAxis, mostEllipsePoints } from './ellipse'
import { type Matrix, moved, turned } from './matrix'
import { edgesOfPath, type Path, type Vertex } from './path'
import { flattenSpline, type Spline } from './spline'

type Source = Pick<DxfShape, 'entity' | 'line'>

/** Points of a curve that was placed first and flattened then, both ends included, mm. `most`: else Refused. */
export function ellipsePoints(
  ellipse: Ellipse,
  plane: Matrix,
  source: Source,
  most: number,
): readonly Point[] {
  const placed: Ellipse = {
    ...ellipse,
    centre: moved(plane, ellipse.centre),
    first: turned(plane, ellipse.first),
    second: turned(plane, ellipse.second),
  }
  withinReach(longestHalfAxis(placed), source)
  return [arcStart(placed), ...arcPoints(placed, source, most)]
}

/** A rational curve of points moved is the moved curve, so its control points are placed. */
export function splinePoints(spline: Spline, plane: Matrix, source: Source, most: number): readonly Point[] {
  const controls = spline.controls.map((point) => reached(moved(plane, point), source))
  const points = flattenSpline({ ...spline, controls }, most)
  if (points === null) throw tooManyPoints()
  return points
}

/** Corners of a polyline whose arcs a placing presses to arcs of ellipses; these come flattened. */
export function pressedCorners(
  path: Pick<Path, 'vertices' | 'closed'>,
  plane: Matrix,
  source: Source,
  most: number,
): readonly Vertex[] {
  const vertices: Vertex[] = []
  const add = (at: Point) => vertices.push({ at: reached(at, source), bulge: 0 })
  for (const { from, to, bulge } of edgesOfPath(path)) {
    add(moved(plane, from))
    const arc = pressedArc(from, to, bulge, plane)
    if (arc !== null)
      arcPoints(arc, source, most - vertices.length)
        .slice(0, -1)
        .forEach(add)
    if (vertices.length > most) throw tooManyPoints()
  }
  if (!path.closed) add(moved(plane, path.vertices.at(-1)!.at))
  return vertices
}

/** Null where the edge is straight, or so flat that it lies within the chord error. */
function pressedArc(from: Point, to: Point, bulge: number, plane: Matrix): Ellipse | null {
  const largest = longestHalfAxis({ first: [plane[0], plane[1]], second: [plane[2], plane[3]] })
  const riseMm = ((Math.abs(bulge) * distanceBetweenPoints(from, to)) / 2) * largest
  if (riseMm <= chordErrorMm) return null
  const offAxis = (1 - bulge * bulge) / (4 * bulge)
  const centre: Point = [
    (from[0] + to[0]) / 2 - offAxis * (to[1] - from[1]),
    (from[1] + to[1]) / 2 + offAxis * (to[0] - from[0]),
  ]
  const spoke: Point = [from[0] - centre[0], from[1] - centre[1]]
  return {
    centre: moved(plane, centre),
    first: turned(plane, spoke),
    second: turned(plane, [-spoke[1], spoke[0]]),
    startRad: 0,
    sweepRad: 4 * Math.atan(bulge),
  }
}

function arcPoints(ellipse: Ellipse, source: Source, most: number): readonly Point[] {
  if (!(mostEllipsePoints(ellipse) <= most)) throw tooManyPoints()
  return flattenEllipse(ellipse).map((point) => reached(point, source))
}

function arcStart({ centre, first, second, startRad }: Ellipse): Point {
  const [cos, sin] = [Math.cos(startRad), Math.sin(startRad)]
  return [centre[0] + cos * first[0] + sin * second[0], centre[1] + cos * first[1] + sin * second[1]]
}

/** The point as it is. Throws Refused when it lies too far. */
export function reached([u, v]: Point, source: Source): Point {
  return [withinReach(u, source), withinReach(v, source)]
}
