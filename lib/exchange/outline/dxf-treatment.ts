import { facing } from './dxf-extrusion'
import type { DxfEntity } from './dxf-sections'
import { flagsOf, realOr } from './dxf-values'

/**
 * read: part of the outline; lettering: never part of one; nothing: draws nothing; invisible: marked as not shown; sheet:
 * on a sheet of the layout.
 */
export type Treatment = 'read' | 'lettering' | 'nothing' | 'invisible' | 'sheet' | 'unread'

const read = new Set(['LINE', 'ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE', 'ELLIPSE', 'SPLINE', 'INSERT'])

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

/** Bits of group 70 of a POLYLINE that is a mesh. */
const meshFlags = 16 | 64

export function treatment(entity: DxfEntity): Treatment {
  if (nothing.has(entity.type)) return 'nothing'
  if (realOr(entity, 67, 0) === 1) return 'sheet'
  if (realOr(entity, 60, 0) === 1) return 'invisible'
  if (lettering.has(entity.type)) return 'lettering'
  return hindrance(entity) === null ? 'read' : 'unread'
}

/** Why an entity that could be part of the outline is not read; null when it is. */
export function hindrance(entity: DxfEntity): 'kind' | 'mesh' | 'tilted' | 'fit-points' | null {
  if (!read.has(entity.type)) return 'kind'
  if (entity.type === 'POLYLINE' && (flagsOf(entity) & meshFlags) !== 0) return 'mesh'
  if (entity.type === 'SPLINE' && !has(entity, 10) && has(entity, 11)) return 'fit-points'
  return facing(entity) === 'tilted' ? 'tilted' : null
}

function has({ tags }: DxfEntity, code: number): boolean {
  return tags.some((tag) => tag.code === code)
}
