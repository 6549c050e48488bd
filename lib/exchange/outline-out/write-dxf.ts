import type { Loop } from '#lib/core/geometry/index'
import type { PatchSheet } from '../sheets/types'
import { dxfTables, type Handles, handles, type Pair } from './dxf-frame'
import { layOutNotes, type NoteLine, type NoteText } from './notes-layout'
import { loopsOfLayer, mmText, type OutlineLayer, type OutlineView, planOutlines } from './plan-outlines'

const notesLayer = 'NOTES'

/**
 * Outlines of a plan as DXF in text form, release AC1015 (2000), in mm ($INSUNITS 4): one layer for the opening, each
 * ply and the footprint, on it closed polylines and nothing else; words and fibre arrows on the layer NOTES. Structure
 * after the DXF reference for that release. RangeError for a plan without plies.
 */
export function writeOutlinesDxf(sheet: PatchSheet, view: OutlineView): string {
  const plan = planOutlines(sheet, view)
  const notes = layOutNotes(plan, plan.mirrored ? 'x = -u, y = v' : 'x = u, y = v')
  const next = handles()
  const named = plan.layers.map((layer) => ({ layer, name: layerName(layer) }))
  const entities = (owner: string): readonly Pair[] => [
    ...named.flatMap(({ layer, name }) =>
      loopsOfLayer(layer).flatMap((loop) => polyline(next, owner, name, loop)),
    ),
    ...notes.texts.flatMap((text) => words(next, owner, text)),
    ...notes.lines.flatMap((line) => stroke(next, owner, line)),
  ]
  const pairs = dxfTables(next, [...named.map(({ name }) => name), notesLayer], plan.boundsMm, entities)
  return pairs.map(([code, value]) => `${`${code}`.padStart(3)}\n${value}\n`).join('')
}

/** "PLY-01 bulk 650 twill -45deg", of signs that every program takes in the name of a layer. */
function layerName({ code, label }: OutlineLayer): string {
  const plain = label.replace(/[^A-Za-z0-9 ._+-]+/g, '_').replace(/\s+/g, ' ')
  return `${code} ${plain}`.trim().slice(0, 60).trimEnd()
}

function polyline(next: Handles, owner: string, layer: string, loop: Loop): readonly Pair[] {
  return [
    [0, 'LWPOLYLINE'],
    ...entity(next, owner, layer),
    [100, 'AcDbPolyline'],
    [90, loop.length],
    [70, 1],
    ...loop.flatMap(([x, y]): readonly Pair[] => [
      [10, mmText(x)],
      [20, mmText(y)],
    ]),
  ]
}

function words(next: Handles, owner: string, { at, heightMm, text }: NoteText): readonly Pair[] {
  return [
    [0, 'TEXT'],
    ...entity(next, owner, notesLayer),
    [100, 'AcDbText'],
    [10, mmText(at[0])],
    [20, mmText(at[1])],
    [30, '0'],
    [40, mmText(heightMm)],
    [1, dxfText(text)],
    [100, 'AcDbText'],
  ]
}

function stroke(next: Handles, owner: string, [from, to]: NoteLine): readonly Pair[] {
  return [
    [0, 'LINE'],
    ...entity(next, owner, notesLayer),
    [100, 'AcDbLine'],
    [10, mmText(from[0])],
    [20, mmText(from[1])],
    [30, '0'],
    [11, mmText(to[0])],
    [21, mmText(to[1])],
    [31, '0'],
  ]
}

function entity(next: Handles, owner: string, layer: string): readonly Pair[] {
  return [
    [5, next()],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, layer],
  ]
}

/** One line in plain ASCII, other letters as \U+XXXX; what the format takes for a code of its own is broken up. */
function dxfText(text: string): string {
  const line = text
    .replace(/\p{Cc}+/gu, ' ')
    .replaceAll('%%', '% %')
    .replaceAll('\\', '/')
    .replaceAll('^', ' ')
  const ascii = Array.from({ length: line.length }, (_, index) => {
    const code = line.charCodeAt(index)
    return code < 127 ? line.charAt(index) : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`
  })
  return ascii.join('').slice(0, 1000)
}
