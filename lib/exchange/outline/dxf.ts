import { type Finding, worst } from '#lib/core/result'
import { chain, type JoinLimits, type Link } from './chain'
import { withoutDoubles } from './doubled'
import { branchFindings, closedByPoint, gapFindings, openFindings } from './dxf-joints'
import { dxfPaths } from './dxf-paths'
import { dropFindings, heightFindings } from './dxf-pieces'
import { type DxfContents, dxfContents } from './dxf-sections'
import { dxfUnit } from './dxf-unit'
import { leftOut } from './dxf-unread'
import { note, stop } from './finding'
import { flattener } from './flatten'
import { joinExactMm, joinMostMm } from './limits'
import { isLengthless, type Path, withoutRepeats } from './path'
import type { ChosenUnit, Drawing, DrawnLoop, FileUnit } from './types'
import { mmPerUnit } from './unit'

/**
 * Closed loops of a DXF in text form: lines, arcs, circles and polylines of the model, loose ones joined by their
 * ends in whatever order they were drawn. Throws Refused where the file is damaged.
 */
export function readDxf(text: string, chosen: ChosenUnit | null): Drawing {
  const contents = dxfContents(text)
  const { unit, findings } = dxfUnit(contents.header, chosen)
  const read = dxfPaths(contents.entities, unit === null ? 1 : mmPerUnit(unit))
  const left = [...findings, ...leftOut(contents.entities), ...endMark(contents), ...read.findings]
  const joined = joinPaths(read.paths, joinLimits(read.paths, unit))
  const all = [...left, ...joined.findings]
  const isEmpty = joined.loops.length === 0 && worst(all) !== 'stop'
  return { unit, ...joined, findings: isEmpty ? [nothingDrawn(), ...all] : all }
}

function joinPaths(paths: readonly Path[], limits: JoinLimits): Omit<Drawing, 'unit'> {
  const tidied = paths.map((path) => withoutRepeats(path, limits.exactMm))
  const drawn = tidied.filter(({ path }) => !isLengthless(path, limits.exactMm))
  const lengthless = tidied.flatMap(({ path }) => (isLengthless(path, limits.exactMm) ? [path] : []))
  const repeats = drawn.reduce((sum, each) => sum + each.repeats, 0)
  const { kept, doubled } = withoutDoubles(
    drawn.map(({ path }) => path),
    limits.exactMm,
  )
  const chains = chain(
    kept.filter(({ closed }) => !closed),
    limits,
  )
  const rings = kept.filter(({ closed }) => closed).map((path): Link[] => [{ path, backwards: false }])
  const stops = [...branchFindings(chains.branches), ...openFindings(chains.open)]
  const toPoints = flattener()
  const closed = stops.length > 0 ? [] : [...rings, ...chains.closed]
  const findings: Finding[] = [
    ...stops,
    ...heightFindings(kept),
    ...dropFindings(doubled, lengthless, repeats),
    ...closedByPoint(chains.closed, limits.exactMm),
    ...gapFindings(chains.gaps),
  ]
  return {
    loops: closed.map((links) => loopOf(links, toPoints)),
    dropped: doubled.length + lengthless.length,
    findings,
  }
}

function loopOf(links: readonly Link[], toPoints: ReturnType<typeof flattener>): DrawnLoop {
  return {
    points: toPoints(links),
    layers: [...new Set(links.map(({ path }) => path.layer))],
    asGiven: links.every(({ path }) => path.vertices.every(({ bulge }) => bulge === 0)),
    role: null,
  }
}

/**
 * How far ends may lie apart. While the unit is not known, numbers are taken as mm but could be metres: then the
 * tolerances shrink with the drawing, so that nothing is joined that the right unit would keep apart.
 */
function joinLimits(paths: readonly Path[], unit: FileUnit | null): JoinLimits {
  if (unit !== null) return { exactMm: joinExactMm, mostMm: joinMostMm }
  let [uMin, vMin, uMax, vMax] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { vertices } of paths) {
    for (const { at } of vertices) {
      uMin = Math.min(uMin, at[0])
      vMin = Math.min(vMin, at[1])
      uMax = Math.max(uMax, at[0])
      vMax = Math.max(vMax, at[1])
    }
  }
  const shrink = Math.min(1, Math.hypot(uMax - uMin, vMax - vMin) / 1000)
  return shrink > 0
    ? { exactMm: joinExactMm * shrink, mostMm: joinMostMm * shrink }
    : { exactMm: joinExactMm, mostMm: joinMostMm }
}

function endMark({ ended }: DxfContents): readonly Finding[] {
  if (ended) return []
  return [note('no-end-mark', 'The file ends without its mark EOF; all that is drawn was there.', null)]
}

function nothingDrawn(): Finding {
  return stop(
    'nothing-drawn',
    'The model holds no line, arc, circle or polyline.',
    null,
    'Draw the outline in model space as a closed polyline, and save the DXF again.',
  )
}
