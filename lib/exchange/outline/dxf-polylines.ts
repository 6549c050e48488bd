import { facing, threeDimensional } from './dxf-extrusion'
import type { DxfEntity } from './dxf-sections'
import { cornered, type DxfShape } from './dxf-shape'
import { flagsOf, partsFrom, pointOf, realOr } from './dxf-values'
import type { Vertex } from './path'

/** Bits of group 70 of a POLYLINE and its VERTEX entities. */
const closedFlag = 1
const splineControl = 16

/** Vertices follow one another in the entity's own groups: 10 begins one, 20 and 42 belong to it. */
export function lightPolylineShape(entity: DxfEntity): DxfShape {
  const vertices = partsFrom(entity, 10).map((part): Vertex => {
    return { at: pointOf(part, 10), bulge: bulgeOf(part) }
  })
  return cornered(entity, vertices, {
    closed: (flagsOf(entity) & closedFlag) !== 0,
    heights: [realOr(entity, 38, 0)],
    mirrored: facing(entity) === 'mirrored',
  })
}

/** `followers` are the VERTEX entities that belong to it. */
export function polylineShape(entity: DxfEntity, followers: readonly DxfEntity[]): DxfShape {
  const flags = flagsOf(entity)
  const inSpace = (flags & threeDimensional) !== 0
  const drawn = followers.filter((vertex) => (flagsOf(vertex) & splineControl) === 0)
  const vertices = drawn.map((vertex): Vertex => {
    return { at: pointOf(vertex, 10), bulge: inSpace ? 0 : bulgeOf(vertex) }
  })
  return cornered(entity, vertices, {
    closed: (flags & closedFlag) !== 0,
    heights: inSpace ? drawn.map((vertex) => realOr(vertex, 30, 0)) : [realOr(entity, 30, 0)],
    mirrored: facing(entity) === 'mirrored',
  })
}

function bulgeOf(entity: DxfEntity): number {
  return realOr(entity, 42, 0)
}
