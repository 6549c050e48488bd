import type { Point } from '#lib/core/geometry/index'
import { facing } from './dxf-extrusion'
import type { DxfEntity } from './dxf-sections'
import { corner, cornered, type DxfShape } from './dxf-shape'
import { pointOf, real, realOr } from './dxf-values'
import { lineName, Refused, stop } from './finding'
import type { Vertex } from './path'

export function lineShape(entity: DxfEntity): DxfShape {
  const ends = [corner(pointOf(entity, 10)), corner(pointOf(entity, 11))]
  const heights = [realOr(entity, 30, 0), realOr(entity, 31, 0)]
  return cornered(entity, ends, { closed: false, heights, mirrored: false })
}

export function circleShape(entity: DxfEntity): DxfShape {
  const [x, y] = pointOf(entity, 10)
  const radius = radiusOf(entity)
  const halves: readonly Vertex[] = [
    { at: [x + radius, y], bulge: 1 },
    { at: [x - radius, y], bulge: 1 },
  ]
  return cornered(entity, halves, { closed: true, ...planeOf(entity) })
}

/** Counter-clockwise from the start angle to the end angle; equal angles are the full circle. */
export function arcShape(entity: DxfEntity): DxfShape {
  const [x, y] = pointOf(entity, 10)
  const radius = radiusOf(entity)
  const [startDeg, endDeg] = [real(entity, 50), real(entity, 51)]
  const turnDeg = (((endDeg - startDeg) % 360) + 360) % 360
  if (turnDeg === 0) return circleShape(entity)
  const parts = turnDeg > 180 ? 2 : 1
  const bulge = Math.tan((turnDeg / parts / 4) * (Math.PI / 180))
  const corners = Array.from({ length: parts + 1 }, (_, index): Vertex => {
    const angle = ((startDeg + (turnDeg * index) / parts) * Math.PI) / 180
    const at: Point = [tidy(x + radius * Math.cos(angle)), tidy(y + radius * Math.sin(angle))]
    return { at, bulge: index < parts ? bulge : 0 }
  })
  return cornered(entity, corners, { closed: false, ...planeOf(entity) })
}

function planeOf(entity: DxfEntity): { readonly heights: readonly number[]; readonly mirrored: boolean } {
  return { heights: [realOr(entity, 30, 0)], mirrored: facing(entity) === 'mirrored' }
}

function radiusOf(entity: DxfEntity): number {
  const radius = real(entity, 40)
  if (radius > 0) return radius
  throw new Refused(
    stop(
      'radius',
      `The radius of this ${entity.type} is ${radius}; it must be above 0.`,
      lineName(entity.line),
      'Delete it in the drawing, or give it its radius.',
      { line: entity.line },
    ),
  )
}

/** Ends of arcs come from angles; a billionth of a unit more or less is not theirs. */
function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9 + 0
}
