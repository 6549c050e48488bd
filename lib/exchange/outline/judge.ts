import { dropRepeatedPoints, type Loop, loopArea } from '#lib/core/geometry/index'
import { type Finding, worst } from '#lib/core/result'
import { figure } from '#lib/core/units'
import { note, placeName, stop } from './finding'
import { farthestMm, mostPoints } from './limits'
import { measured } from './measure'
import { selfCrossed } from './self-crossing'
import { severalLoops } from './several'
import { sizeUnlikely, unitUnknown } from './size'
import type { Drawing, DrawnLoop, LoopReading, OutlineReading, Verdict } from './types'

const verdicts = { stop: 'refuse', look: 'ask', note: 'accept-with-notice' } as const satisfies Record<
  Finding['severity'],
  Verdict
>

/** The verdict on what a reader found: the gravest finding decides; how such files are always read is said as well. */
export function judge(drawing: Drawing): OutlineReading {
  const { loops, findings } = drawing
  const refused = worst(findings) === 'stop'
  const judged = refused || loops.length === 0 ? { loops: [], findings: [] } : judgeLoops(loops)
  const unit = judged.loops.length === 0 ? [] : unitFindings(drawing, judged.loops)
  const all = [...findings, ...judged.findings, ...unit].sort((a, b) => gravity(a) - gravity(b))
  const severity = worst(all)
  const said = drawing.convention === undefined || judged.loops.length === 0 ? [] : [drawing.convention]
  return {
    verdict: severity === null ? 'accept' : verdicts[severity],
    unit: drawing.unit,
    loops: judged.loops,
    dropped: drawing.dropped,
    ...(drawing.layers === undefined ? {} : { layers: drawing.layers }),
    findings: [...all, ...said],
  }
}

/** A reading that ended before there was anything to judge. */
export function refusal(findings: readonly Finding[]): OutlineReading {
  return { verdict: 'refuse', unit: null, loops: [], dropped: 0, findings }
}

function gravity({ severity }: Finding): number {
  return ['stop', 'look', 'note'].indexOf(severity)
}

interface Judged {
  readonly loops: readonly LoopReading[]
  readonly findings: readonly Finding[]
}

function judgeLoops(loops: readonly DrawnLoop[]): Judged {
  const [only] = loops
  if (loops.length === 1 && only!.role !== 'hole') return judgeOne(only!)
  const unusable = loops.flatMap(({ points }) => unusableLoop(points) ?? [])
  return unusable.length > 0 ? { loops: [], findings: unusable.slice(0, 1) } : judgeSeveral(loops)
}

/** Roles first; whether each loop can be cut is asked only where roles are settled. */
function judgeSeveral(loops: readonly DrawnLoop[]): Judged {
  const several = severalLoops(loops)
  if (worst(several.findings) === 'stop') return several
  const each = several.drawn.map((loop, index) => judgeOne(loop, several.loops[index]!.role))
  const findings = each.flatMap((judged) => judged.findings)
  return {
    loops: worst(findings) === 'stop' ? several.loops : each.flatMap((judged) => judged.loops),
    findings: [...several.findings, ...findings],
  }
}

function judgeOne(loop: DrawnLoop, role: LoopReading['role'] = 'outer'): Judged {
  const unusable = unusableLoop(loop.points)
  if (unusable !== null) return { loops: [], findings: [unusable] }
  const reading = measured(loop.points, role)
  const crossed = selfCrossed(loop.points, loop.asGiven)
  const enclosedMm2 = crossed === null ? reading.areaMm2 : crossed.enclosedMm2
  if (enclosedMm2 !== null && isLine(reading, enclosedMm2)) {
    return { loops: [], findings: [noArea(loop.points)] }
  }
  return {
    loops: [
      crossed === null
        ? reading
        : { ...reading, points: loop.points, areaMm2: enclosedMm2 ?? reading.areaMm2 },
    ],
    findings: [...(crossed === null ? [] : [crossed.finding]), ...layerFindings(loop)],
  }
}

/** What can't be measured at all. */
function unusableLoop(points: Loop): Finding | null {
  const far = points.find(([u, v]) => Math.abs(u) > farthestMm || Math.abs(v) > farthestMm)
  if (far !== undefined) {
    return stop(
      'too-far',
      `The outline reaches more than ${farthestMm / 1000} m from the origin.`,
      placeName(far),
      'Check the unit, or move the outline near the origin of the drawing.',
    )
  }
  if (points.length > mostPoints) {
    return stop(
      'too-many-points',
      `With its arcs flattened the outline has ${points.length} points; at most ${mostPoints} can be used.`,
      null,
      'Simplify the outline in the drawing program, for example to a polyline with arcs.',
      { points: points.length, mostPoints },
    )
  }
  const distinct = dropRepeatedPoints(points).length
  if (distinct >= 3) return null
  return stop(
    'too-few-points',
    `The outline has ${distinct} ${distinct === 1 ? 'point' : 'points'}; it needs at least three.`,
    points.length === 0 ? null : placeName(points[0]!),
    'Give the outline all of its corners.',
    { points: distinct },
  )
}

/** Thinner than this for its length squared, an outline is a line; a ratio, so that it holds in any unit. */
const thinnest = 4e-5

function isLine({ boundsMm: [uMin, vMin, uMax, vMax] }: LoopReading, enclosedMm2: number): boolean {
  return enclosedMm2 < thinnest * Math.max(uMax - uMin, vMax - vMin) ** 2
}

function noArea(points: Loop): Finding {
  return stop(
    'no-area',
    `The outline encloses next to no area (${figure(loopArea(points), 6)} mm2): its points lie along one line.`,
    placeName(points[0]!),
    'Check the points and their order.',
    { areaMm2: loopArea(points) },
  )
}

function layerFindings({ layers }: DrawnLoop): readonly Finding[] {
  if (layers.length < 2) return []
  return [
    note(
      'several-layers',
      `The outline is put together from ${layers.length} layers: ${layers.slice(0, 10).join(', ')}.`,
      null,
      {
        layers: layers.length,
      },
    ),
  ]
}

function unitFindings({ unit }: Drawing, loops: readonly LoopReading[]): readonly Finding[] {
  const { boundsMm } = loops[0]!
  const finding = unit === null ? unitUnknown(boundsMm) : sizeUnlikely(boundsMm, unit)
  return finding === null ? [] : [finding]
}
