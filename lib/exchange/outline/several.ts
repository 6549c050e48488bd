import { loopArea, loopBounds, pointInLoop } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { counted, stop } from './finding'
import { measured } from './measure'
import { lengthWords, sizeWords } from './size'
import type { DrawnLoop, LoopReading } from './types'

/** Beyond this many loops their nesting is not sought; the drawing is something else than an outline. */
const mostLoops = 200

/** How many are named one by one. */
const mostNamed = 10

interface Placed {
  readonly loop: DrawnLoop
  readonly reading: LoopReading
}

/**
 * Loops with the roles that follow from containment, whatever their order in the file, largest first, and why they
 * are refused: this version cuts an opening along one outline.
 */
export function severalLoops(loops: readonly DrawnLoop[]): {
  readonly loops: readonly LoopReading[]
  readonly findings: readonly Finding[]
} {
  const sorted = [...loops].sort((a, b) => loopArea(b.points) - loopArea(a.points))
  const placed = sorted.slice(0, mostLoops).map((loop, index): Placed => {
    return { loop, reading: measured(loop.points, loop.role ?? roleOf(loop, sorted.slice(0, index))) }
  })
  const outers = placed.filter(({ reading }) => reading.role === 'outer')
  const holes = placed.filter(({ reading }) => reading.role === 'hole')
  const more = loops.length - placed.length
  const findings: Finding[] = []
  if (holes.length > 0) findings.push(holesRefused(outers[0] ?? null, holes))
  if (outers.length + more > 1) findings.push(severalOutlines(outers, more))
  return { loops: more > 0 ? [] : placed.map(({ reading }) => reading), findings }
}

/** A hole lies in an odd number of larger loops. Judged by one point, so loops that cross are not told apart. */
function roleOf(loop: DrawnLoop, larger: readonly DrawnLoop[]): 'outer' | 'hole' {
  const [point] = loop.points
  const [u, v] = point!
  const depth = larger.filter(({ points }) => {
    const [uMin, vMin, uMax, vMax] = loopBounds(points)
    return u >= uMin && u <= uMax && v >= vMin && v <= vMax && pointInLoop(point!, points)
  }).length
  return depth % 2 === 1 ? 'hole' : 'outer'
}

function holesRefused(outer: Placed | null, holes: readonly Placed[]): Finding {
  return stop(
    'holes',
    `The outline${outer === null ? '' : ` (${loopWords(outer)})`} has ${counted(holes.length, 'hole', 'holes')} in it: ${list(holes)}. ` +
      'This version reads an outline without holes.',
    null,
    'Save a drawing with the outer loop alone; enter holes that are dowels or bushes as locating points.',
    {
      holes: holes.length,
      holesMm2: holes.map(({ reading }) => reading.areaMm2),
      holesBoundsMm: holes.flatMap(({ reading }) => reading.boundsMm),
    },
  )
}

function severalOutlines(outers: readonly Placed[], more: number): Finding {
  return stop(
    'several-outlines',
    `The drawing holds ${outers.length + more} outlines: ${list(outers)}${more > 0 ? ', and more that were not looked at' : ''}. ` +
      'One is read at a time.',
    null,
    'Save one drawing for each opening, or leave only the layer of the one that is meant.',
    {
      outlines: outers.length + more,
      outlinesMm2: outers.map(({ reading }) => reading.areaMm2),
      outlinesBoundsMm: outers.flatMap(({ reading }) => reading.boundsMm),
    },
  )
}

function list(placed: readonly Placed[]): string {
  const named = placed.slice(0, mostNamed).map(loopWords)
  return [...named, ...(placed.length > mostNamed ? [`${placed.length - mostNamed} more`] : [])].join('; ')
}

/** "30 x 30 mm at u 55 to 85, v 35 to 65 mm, layer 0" */
function loopWords({ loop, reading: { boundsMm } }: Placed): string {
  const [uMin, vMin, uMax, vMax] = boundsMm.map(lengthWords)
  const layers = loop.layers.length === 0 ? '' : `, layer ${loop.layers.slice(0, 5).join(', ')}`
  return `${sizeWords(boundsMm)} at u ${uMin} to ${uMax}, v ${vMin} to ${vMax} mm${layers}`
}
