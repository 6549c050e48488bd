import type { DxfEntity } from './dxf-sections'
import { flagsOf, realOr } from './dxf-values'

/** Bit of group 70 of a POLYLINE whose vertices are given in the drawing's own axes. */
export const threeDimensional = 8

/** Kinds that are given in a plane of their own, by the direction that it is seen from (groups 210 to 230). */
const planar = new Set(['ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE', 'INSERT', 'ELLIPSE'])

/**
 * How an entity's plane stands to x and y of the drawing. By the rule of the arbitrary axis the plane that is seen from
 * (0, 0, -1) has its x along -x and its y along y of the drawing. Lines, splines and polylines in space are given in the
 * drawing's axes, so they are never turned; an ellipse has its centre and its axis in them, and is tilted by either.
 */
export function facing(entity: DxfEntity): 'front' | 'mirrored' | 'tilted' {
  if (!planar.has(entity.type)) return 'front'
  if (entity.type === 'POLYLINE' && (flagsOf(entity) & threeDimensional) !== 0) return 'front'
  const [x, y, z] = [realOr(entity, 210, 0), realOr(entity, 220, 0), realOr(entity, 230, 1)]
  const axis = entity.type === 'ELLIPSE' ? [11, 21, 31].map((code) => realOr(entity, code, 0)) : [0, 0, 0]
  const level =
    Math.hypot(x, y) <= hair * Math.abs(z) && Math.abs(axis[2]!) <= hair * Math.hypot(axis[0]!, axis[1]!)
  if (!level || z === 0) return 'tilted'
  return z > 0 ? 'front' : 'mirrored'
}

/** Slope that is left to rounding. */
const hair = 1e-6
