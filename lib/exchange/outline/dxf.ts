import { type Finding, worst } from '#lib/core/result'
import { layerFindings } from './dxf-layers'
import { dxfPaths } from './dxf-paths'
import { type DxfContents, dxfContents } from './dxf-sections'
import { dxfUnit } from './dxf-unit'
import { leftOut } from './dxf-unread'
import { note, stop } from './finding'
import { joinPaths } from './join'
import type { ChosenUnit, Drawing } from './types'
import { mmPerUnit } from './unit'

/**
 * Closed loops of a DXF in text form: lines, arcs, circles, ellipses, splines and polylines of the model and of the blocks
 * inserted in it, loose ones joined by their ends in whatever order they were drawn. Layers that are off or frozen are left
 * out; where layers are chosen, all others are. Throws Refused where the file is damaged.
 */
export function readDxf(
  text: string,
  chosen: ChosenUnit | null,
  chosenLayers: readonly string[] | null = null,
): Drawing {
  const contents = dxfContents(text)
  const { unit, findings } = dxfUnit(contents.header, chosen)
  const read = dxfPaths(contents, unit === null ? 1 : mmPerUnit(unit), chosenLayers)
  const left = [
    ...findings,
    ...leftOut(read.leftOut),
    ...layerFindings(read.layers, chosenLayers),
    ...endMark(contents),
    ...read.findings,
  ]
  const joined = joinPaths(read.paths, unit)
  const all = [...left, ...joined.findings]
  const isEmpty = joined.loops.length === 0 && worst(all) !== 'stop'
  return { unit, ...joined, layers: read.layers, findings: isEmpty ? [nothingDrawn(), ...all] : all }
}

function endMark({ ended }: DxfContents): readonly Finding[] {
  if (ended) return []
  return [note('no-end-mark', 'The file ends without its mark EOF; all that is drawn was there.', null)]
}

function nothingDrawn(): Finding {
  return stop(
    'nothing-drawn',
    'The model holds no line, arc, circle, ellipse, spline or polyline that can be read.',
    null,
    'Draw the outline in model space as a closed polyline, and save the DXF again.',
  )
}
