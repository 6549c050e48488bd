import type { Point } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import type { DxfEntity } from './dxf-sections'
import { treatment } from './dxf-unread'
import { flagsOf, layerOf, lengthMm, real, realOr } from './dxf-values'
import { lineName, look, Refused, stop } from './finding'
import { mostVertices } from './limits'
import type { Path, Vertex } from './path'

/** Bits of group 70 of a POLYLINE and its VERTEX entities. */
const closedFlag = 1
const threeDimensional = 8
const splineControl = 16

/** Lines, arcs, circles and polylines as paths in mm. Throws Refused on values that can't be used. */
export function dxfPaths(
  entities: readonly DxfEntity[],
  mmPerUnit: number,
): { readonly paths: readonly Path[]; readonly findings: readonly Finding[] } {
  const paths: Path[] = []
  const findings: Finding[] = []
  let vertices = 0
  for (const [index, entity] of entities.entries()) {
    if (treatment(entity) !== 'read') continue
    const path = pathOf(entity, verticesAfter(entities, index), mmPerUnit)
    if (path.vertices.length === 0) continue
    paths.push(path)
    findings.push(...vertexCount(entity, path.vertices.length))
    vertices += path.vertices.length
    if (vertices > mostVertices) throw tooMany()
  }
  return { paths, findings }
}

function pathOf(entity: DxfEntity, followers: readonly DxfEntity[], mmPerUnit: number): Path {
  switch (entity.type) {
    case 'LINE':
      return lineOf(entity, mmPerUnit)
    case 'ARC':
      return arcOf(entity, mmPerUnit)
    case 'CIRCLE':
      return circleOf(entity, mmPerUnit)
    case 'LWPOLYLINE':
      return lightPolylineOf(entity, mmPerUnit)
    default:
      return polylineOf(entity, followers, mmPerUnit)
  }
}

function lineOf(entity: DxfEntity, mmPerUnit: number): Path {
  const from = pointOf(entity, 10, mmPerUnit)
  const to = pointOf(entity, 11, mmPerUnit)
  const heights = [30, 31].map((code) => realOr(entity, code, 0) * mmPerUnit)
  return pathWith(entity, [corner(from), corner(to)], false, heights)
}

function circleOf(entity: DxfEntity, mmPerUnit: number): Path {
  const [u, v] = pointOf(entity, 10, mmPerUnit)
  const radius = radiusOf(entity, mmPerUnit)
  const halves: readonly Vertex[] = [
    { at: [u + radius, v], bulge: 1 },
    { at: [u - radius, v], bulge: 1 },
  ]
  return pathWith(entity, halves, true, [realOr(entity, 30, 0) * mmPerUnit])
}

/** Counter-clockwise from the start angle to the end angle; equal angles are the full circle. */
function arcOf(entity: DxfEntity, mmPerUnit: number): Path {
  const [u, v] = pointOf(entity, 10, mmPerUnit)
  const radius = radiusOf(entity, mmPerUnit)
  const [startDeg, endDeg] = [real(entity, 50), real(entity, 51)]
  const turnDeg = (((endDeg - startDeg) % 360) + 360) % 360
  if (turnDeg === 0) return circleOf(entity, mmPerUnit)
  const parts = turnDeg > 180 ? 2 : 1
  const bulge = Math.tan((turnDeg / parts / 4) * (Math.PI / 180))
  const corners = Array.from({ length: parts + 1 }, (_, index): Vertex => {
    const angle = ((startDeg + (turnDeg * index) / parts) * Math.PI) / 180
    const at: Point = [tidy(u + radius * Math.cos(angle)), tidy(v + radius * Math.sin(angle))]
    return { at, bulge: index < parts ? bulge : 0 }
  })
  return pathWith(entity, corners, false, [realOr(entity, 30, 0) * mmPerUnit])
}

/** Vertices follow one another in the entity's own groups: 10 begins one, 20 and 42 belong to it. */
function lightPolylineOf(entity: DxfEntity, mmPerUnit: number): Path {
  const starts = entity.tags.flatMap(({ code }, index) => (code === 10 ? [index] : []))
  if (starts.length > mostVertices) throw tooMany()
  const vertices = starts.map((start, index): Vertex => {
    const tags = entity.tags.slice(start, starts[index + 1])
    const own = { type: entity.type, line: tags[0]!.line, tags }
    return { at: pointOf(own, 10, mmPerUnit), bulge: bulgeOf(own) }
  })
  const closed = (flagsOf(entity) & closedFlag) !== 0
  return pathWith(entity, vertices, closed, [realOr(entity, 38, 0) * mmPerUnit])
}

function polylineOf(entity: DxfEntity, followers: readonly DxfEntity[], mmPerUnit: number): Path {
  const flags = flagsOf(entity)
  const inSpace = (flags & threeDimensional) !== 0
  const drawn = followers.filter((vertex) => (flagsOf(vertex) & splineControl) === 0)
  const vertices = drawn.map((vertex): Vertex => {
    return { at: pointOf(vertex, 10, mmPerUnit), bulge: inSpace ? 0 : bulgeOf(vertex) }
  })
  const heights = inSpace ? drawn.map((vertex) => realOr(vertex, 30, 0)) : [realOr(entity, 30, 0)]
  return pathWith(
    entity,
    vertices,
    (flags & closedFlag) !== 0,
    heights.map((height) => height * mmPerUnit),
  )
}

/** The VERTEX entities that belong to a POLYLINE. */
function verticesAfter(entities: readonly DxfEntity[], index: number): readonly DxfEntity[] {
  if (entities[index]!.type !== 'POLYLINE') return []
  let end = index + 1
  while (entities[end]?.type === 'VERTEX') end++
  return entities.slice(index + 1, end)
}

function pathWith(
  entity: DxfEntity,
  vertices: readonly Vertex[],
  closed: boolean,
  heightsMm: readonly number[],
): Path {
  const lowest = heightsMm.reduce((least, height) => Math.min(least, height), heightsMm[0] ?? 0)
  const highest = heightsMm.reduce((most, height) => Math.max(most, height), heightsMm[0] ?? 0)
  return {
    entity: entity.type,
    line: entity.line,
    layer: layerOf(entity),
    vertices,
    closed,
    heightsMm: [lowest, highest],
  }
}

/** A polyline that holds fewer or more vertices than it says has lost some. */
function vertexCount(entity: DxfEntity, found: number): readonly Finding[] {
  if (entity.type !== 'LWPOLYLINE') return []
  const stated = realOr(entity, 90, found)
  if (stated === found) return []
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

function pointOf(entity: DxfEntity, code: number, mmPerUnit: number): Point {
  return [
    lengthMm(real(entity, code), mmPerUnit, entity),
    lengthMm(real(entity, code + 10), mmPerUnit, entity),
  ]
}

function radiusOf(entity: DxfEntity, mmPerUnit: number): number {
  const radius = lengthMm(real(entity, 40), mmPerUnit, entity)
  if (radius > 0) return radius
  throw new Refused(
    stop(
      'radius',
      `The radius of this ${entity.type} is ${radius} mm; it must be above 0.`,
      lineName(entity.line),
      'Delete it in the drawing, or give it its radius.',
      { line: entity.line },
    ),
  )
}

function bulgeOf(entity: DxfEntity): number {
  return realOr(entity, 42, 0)
}

function corner(at: Point): Vertex {
  return { at, bulge: 0 }
}

/** Ends of arcs come from angles; a millionth of a micrometre more or less is not theirs. */
function tidy(mm: number): number {
  return Math.round(mm * 1e9) / 1e9 + 0
}

function tooMany(): Refused {
  return new Refused(
    stop(
      'too-many-points',
      `The drawing holds more than ${mostVertices} points.`,
      null,
      'Save a drawing that holds nothing but the outline.',
      { mostVertices },
    ),
  )
}
