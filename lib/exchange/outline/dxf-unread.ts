import type { Finding } from '#lib/core/result'
import type { DxfEntity } from './dxf-sections'
import { layerOf, realOr } from './dxf-values'
import { lineName, note, stop } from './finding'
import { mostOfAKind } from './limits'

/** read: part of the outline; lettering: never part of one; nothing: draws nothing; sheet: on a sheet of the layout. */
export type Treatment = 'read' | 'lettering' | 'nothing' | 'sheet' | 'unread'

const read = new Set(['LINE', 'ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE'])

const nothing = new Set(['VIEWPORT', 'VERTEX', 'SEQEND', 'ATTRIB'])

/** Lettering, measures, pictures and construction lines without ends. */
const lettering = new Set([
  'TEXT',
  'MTEXT',
  'RTEXT',
  'ATTDEF',
  'DIMENSION',
  'ARC_DIMENSION',
  'LARGE_RADIAL_DIMENSION',
  'POINT',
  'LEADER',
  'MLEADER',
  'MULTILEADER',
  'TOLERANCE',
  'XLINE',
  'RAY',
  'IMAGE',
  'WIPEOUT',
  'ACAD_TABLE',
  'OLEFRAME',
  'OLE2FRAME',
  'PDFUNDERLAY',
  'DGNUNDERLAY',
  'DWFUNDERLAY',
])

const convert = 'In the drawing program convert it to a polyline with arcs, then save the DXF again.'

const cures: Readonly<Record<string, string>> = {
  INSERT: 'In the drawing program explode the block into lines, arcs and polylines, then save the DXF again.',
  HATCH:
    'In the drawing program delete the hatch and keep its boundary as a polyline, then save the DXF again.',
  SPLINE: convert,
  ELLIPSE: convert,
  HELIX: convert,
}

const otherwise =
  'In the drawing program explode it or convert it to a polyline with arcs, or delete it, then save the DXF again.'

const turned =
  'In the drawing program explode it in the world axes, seen from its front, then save the DXF again.'

export function treatment(entity: DxfEntity): Treatment {
  if (nothing.has(entity.type)) return 'nothing'
  if (realOr(entity, 67, 0) === 1) return 'sheet'
  if (lettering.has(entity.type)) return 'lettering'
  return read.has(entity.type) && turnedAway(entity) === null && !isMesh(entity) ? 'read' : 'unread'
}

/** What was left out, with its count: notices for lettering, refusals for what could be part of the outline. */
export function leftOut(entities: readonly DxfEntity[]): readonly Finding[] {
  const unread = groups(entities.filter((each) => treatment(each) === 'unread'))
  const left = groups(entities.filter((each) => treatment(each) === 'lettering'))
  const sheet = entities.filter((each) => treatment(each) === 'sheet')
  return [
    ...[...unread].slice(0, mostOfAKind).map(([name, found]) => notRead(name, found)),
    ...(left.size === 0 ? [] : [lettered(left)]),
    ...(sheet.length === 0 ? [] : [onSheet(sheet)]),
  ]
}

function notRead(name: string, found: readonly DxfEntity[]): Finding {
  const [first] = found
  const layers = [...new Set(found.map(layerOf))].slice(0, 5).join(', ')
  return stop(
    'entity-not-read',
    `The drawing holds ${found.length} ${name} on layer ${layers}, which can be part of the outline and is not read in this version.`,
    lineName(first!.line),
    turnedAway(first!) === null ? (cures[first!.type] ?? otherwise) : turned,
    { count: found.length, line: first!.line },
  )
}

function lettered(left: ReadonlyMap<string, readonly DxfEntity[]>): Finding {
  const names = [...left].map(([name, found]) => `${found.length} ${name}`)
  const count = [...left.values()].reduce((sum, found) => sum + found.length, 0)
  return note('lettering-left-out', `Left out, as no part of an outline: ${names.join(', ')}.`, null, {
    count,
  })
}

function onSheet(sheet: readonly DxfEntity[]): Finding {
  return note(
    'sheet-left-out',
    `Left out: ${sheet.length} drawn on a sheet of the layout (paper space), not in the model.`,
    lineName(sheet[0]!.line),
    { count: sheet.length },
  )
}

function groups(entities: readonly DxfEntity[]): ReadonlyMap<string, readonly DxfEntity[]> {
  const found = new Map<string, DxfEntity[]>()
  for (const entity of entities) {
    const name = nameOf(entity)
    const group = found.get(name)
    if (group === undefined) found.set(name, [entity])
    else group.push(entity)
  }
  return found
}

function nameOf(entity: DxfEntity): string {
  if (!read.has(entity.type)) return entity.type.slice(0, 40)
  return `${entity.type} ${isMesh(entity) ? 'as a mesh' : turnedAway(entity)}`
}

/**
 * How an entity's own plane is turned against x and y of the drawing; null when it is not. A line's ends are always
 * given in the drawing's own axes, so it is never turned.
 */
function turnedAway(entity: DxfEntity): 'with mirrored extrusion' | 'in a tilted plane' | null {
  if (entity.type === 'LINE' || !read.has(entity.type)) return null
  const [x, y, z] = [realOr(entity, 210, 0), realOr(entity, 220, 0), realOr(entity, 230, 1)]
  const level = Math.hypot(x, y) <= 1e-6 * Math.abs(z)
  if (level && z > 0) return null
  return level && z < 0 ? 'with mirrored extrusion' : 'in a tilted plane'
}

function isMesh(entity: DxfEntity): boolean {
  return entity.type === 'POLYLINE' && (realOr(entity, 70, 0) & (16 | 64)) !== 0
}
