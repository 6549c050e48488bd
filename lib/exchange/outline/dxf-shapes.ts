import { distanceBetweenPoints } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { arcShape, circleShape, lineShape } from './dxf-arcs'
import type { DxfItem } from './dxf-blocks'
import { ellipseShape } from './dxf-ellipse'
import { lightPolylineShape, polylineShape } from './dxf-polylines'
import type { DxfEntity } from './dxf-sections'
import type { DxfShape } from './dxf-shape'
import { splineShape } from './dxf-spline'
import { realOr } from './dxf-values'
import { lineName, look } from './finding'
import { joinMostMm } from './limits'
import type { Path } from './path'
import { lengthWords } from './size'

/** What an entity draws, in its own numbers. Throws Refused on values that can't be used. */
export function shapeOf({ entity, followers }: Pick<DxfItem, 'entity' | 'followers'>): DxfShape {
  switch (entity.type) {
    case 'LINE':
      return lineShape(entity)
    case 'ARC':
      return arcShape(entity)
    case 'CIRCLE':
      return circleShape(entity)
    case 'LWPOLYLINE':
      return lightPolylineShape(entity)
    case 'ELLIPSE':
      return ellipseShape(entity)
    case 'SPLINE':
      return splineShape(entity)
    default:
      return polylineShape(entity, followers)
  }
}

/** Points that the file gives; those of a curve without length are gone through as well, though it has but one. */
export function givenPoints({ course }: DxfShape): number {
  if (course.kind === 'ellipse') return 1
  return course.kind === 'spline' ? course.spline.controls.length : course.vertices.length
}

/** A polyline that holds fewer or more vertices than it says has lost some. */
export function vertexCount(entity: DxfEntity, { course }: DxfShape): readonly Finding[] {
  if (entity.type !== 'LWPOLYLINE' || course.kind !== 'corners') return []
  const found = course.vertices.length
  const stated = realOr(entity, 90, found)
  if (stated === found || found === 0) return []
  return [
    look(
      'vertices-missing',
      `The polyline says that it has ${stated} vertices, but ${found} are there.`,
      lineName(entity.line),
      'Compare the outline with the drawing, and save the DXF again if it differs.',
      { stated, found, line: entity.line },
    ),
  ]
}

/** A curve that the file calls closed, but whose ends lie farther apart than ends are joined. */
export function closedApart(shape: DxfShape, path: Path): readonly Finding[] {
  if (shape.course.kind !== 'spline' || !shape.closed || path.closed) return []
  const apartMm = distanceBetweenPoints(path.vertices[0]!.at, path.vertices.at(-1)!.at)
  if (apartMm <= joinMostMm) return []
  return [
    look(
      'spline-not-closed',
      `The SPLINE is marked as closed, but by its numbers its ends lie ${lengthWords(apartMm)} mm apart; it is read as it runs.`,
      lineName(shape.line),
      'Compare the outline with the drawing, and save the DXF again if it differs.',
      { apartMm, line: shape.line },
    ),
  ]
}
