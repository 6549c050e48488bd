import { distanceBetweenPoints, type Point, samePointMm } from '#lib/core/geometry/index'
import { ellipsePoints, pressedCorners, reached, splinePoints } from './dxf-curves'
import { fromBehind, type Placing, placedIn } from './dxf-placing'
import { corner, type DxfShape, span } from './dxf-shape'
import { joinExactMm } from './limits'
import { determinant, isSimilarity, type Matrix, moved } from './matrix'
import type { Path, Vertex } from './path'

/**
 * A shape as it lies in the model, mm. Arcs stay arcs where the placing leaves circles round; all else that is curved is
 * flattened after it is placed, within 0.005 mm. A single curve that comes back to its beginning is closed, whether the
 * file says so or not. Throws Refused beyond `most` points, and where it reaches too far.
 */
export function placedPath(shape: DxfShape, layer: string, onto: Placing, most: number): Path {
  const { plane, zScale, zShift } = shape.mirrored ? placedIn(onto, fromBehind) : onto
  const { entity, line } = shape
  const heightsMm = span(shape.heights.map((z) => zScale * z + zShift))
  return { entity, line, layer, heightsMm, ...courseOf(shape, plane, most) }
}

function courseOf(
  shape: DxfShape,
  plane: Matrix,
  most: number,
): Pick<Path, 'vertices' | 'closed' | 'curved'> {
  const { course, closed } = shape
  if (course.kind === 'ellipse') return loose(ellipsePoints(course.ellipse, plane, shape, most))
  if (course.kind === 'spline') return loose(splinePoints(course.spline, plane, shape, most))
  const { vertices } = course
  if (isSimilarity(plane) || vertices.every(({ bulge }) => bulge === 0)) {
    const turn = determinant(plane) < 0 ? -1 : 1
    return {
      vertices: vertices.map(({ at, bulge }): Vertex => {
        return { at: reached(moved(plane, at), shape), bulge: turn * bulge + 0 }
      }),
      closed,
    }
  }
  return { vertices: pressedCorners({ vertices, closed }, plane, shape, most), closed, curved: true }
}

function loose(points: readonly Point[]): Pick<Path, 'vertices' | 'closed' | 'curved'> {
  const distinct = points.filter((point, index) => {
    return index === 0 || distanceBetweenPoints(points[index - 1]!, point) > samePointMm
  })
  const closed = distinct.length > 3 && distanceBetweenPoints(distinct[0]!, distinct.at(-1)!) <= joinExactMm
  return { vertices: (closed ? distinct.slice(0, -1) : distinct).map(corner), closed, curved: true }
}
