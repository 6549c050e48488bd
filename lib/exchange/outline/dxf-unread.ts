import type { Finding } from '#lib/core/result'
import type { DxfEntity } from './dxf-sections'
import { hindrance } from './dxf-treatment'
import { layerOf } from './dxf-values'
import { lineName, note, stop } from './finding'
import { mostOfAKind } from './limits'

/** What lies on layers that are read, but is not read itself. */
export interface LeftOut {
  readonly unread: ReadonlySet<DxfEntity>
  readonly lettering: ReadonlySet<DxfEntity>
  readonly sheet: ReadonlySet<DxfEntity>
  readonly invisible: ReadonlySet<DxfEntity>
}

const convert = 'In the drawing program convert it to a polyline with arcs, then save the DXF again.'

const cures: Readonly<Record<string, string>> = {
  HATCH:
    'In the drawing program delete the hatch and keep its boundary as a polyline, then save the DXF again.',
  HELIX: convert,
}

const otherwise =
  'In the drawing program explode it or convert it to a polyline with arcs, or delete it, then save the DXF again.'

/** What was left out, with its count: notices for lettering, refusals for what could be part of the outline. */
export function leftOut({ unread, lettering, sheet, invisible }: LeftOut): readonly Finding[] {
  return [
    ...[...groups(unread)].slice(0, mostOfAKind).map(([name, found]) => notRead(name, found)),
    ...(lettering.size === 0 ? [] : [lettered(lettering)]),
    ...(sheet.size === 0 ? [] : [aside('sheet-left-out', sheet, 'on a sheet of the layout (paper space)')]),
    ...(invisible.size === 0 ? [] : [aside('invisible-left-out', invisible, 'but marked as not shown')]),
  ]
}

function notRead(name: string, found: readonly DxfEntity[]): Finding {
  const [first] = found
  const layers = [...new Set(found.map(layerOf))].slice(0, 5).join(', ')
  return stop(
    'entity-not-read',
    `The drawing holds ${found.length} ${name} on layer ${layers}, which can be part of the outline and is not read in this version.`,
    lineName(first!.line),
    cureOf(first!),
    { count: found.length, line: first!.line },
  )
}

function cureOf(entity: DxfEntity): string {
  const why = hindrance(entity)
  if (why === 'tilted') {
    return 'In the drawing program explode it in the world axes, seen from its front, then save the DXF again.'
  }
  if (why === 'fit-points') {
    return 'The file does not say how the curve runs between its points: in the drawing program convert it to control points, or to a polyline with arcs, then save the DXF again.'
  }
  return cures[entity.type] ?? otherwise
}

function lettered(lettering: ReadonlySet<DxfEntity>): Finding {
  const names = [...groups(lettering)].map(([name, found]) => `${found.length} ${name}`)
  return note('lettering-left-out', `Left out, as no part of an outline: ${names.join(', ')}.`, null, {
    count: lettering.size,
  })
}

function aside(code: string, found: ReadonlySet<DxfEntity>, where: string): Finding {
  const [first] = found
  return note(code, `Left out: ${found.size} drawn ${where}.`, lineName(first!.line), { count: found.size })
}

function groups(entities: ReadonlySet<DxfEntity>): ReadonlyMap<string, readonly DxfEntity[]> {
  const found = new Map<string, DxfEntity[]>()
  for (const entity of entities) {
    const name = nameOf(entity)
    const group = found.get(name)
    if (group === undefined) found.set(name, [entity])
    else group.push(entity)
  }
  return found
}

const reasons = {
  kind: '',
  mesh: ' as a mesh',
  tilted: ' in a tilted plane',
  'fit-points': ' given by fit points alone',
} as const

function nameOf(entity: DxfEntity): string {
  return `${entity.type.slice(0, 40)}${reasons[hindrance(entity) ?? 'kind']}`
}
