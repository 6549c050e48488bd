import { loopArea, loopBounds, pointInLoop } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { counted, look, placeName, stop } from './finding'
import { loopsMeeting, type Meeting } from './loops-meeting'
import { measured } from './measure'
import { boundsWords, lengthWords } from './size'
import type { DrawnLoop, LoopReading } from './types'

/** Beyond this many loops their nesting is not sought; the drawing is something else than an outline. */
const mostLoops = 200

/** How many are named one by one. */
const mostNamed = 10

interface Placed {
  readonly loop: DrawnLoop
  readonly reading: LoopReading
}

/** Between an outline and its hole lies at least this on average, mm; else they are the two edges of one drawn line. */
const thinnestMm = 1

/**
 * Loops with the roles that follow from containment, whatever their order in the file, largest first. One outline
 * with holes can be used; stops where there are more outlines, where loops meet, or where the file's own roles
 * contradict what lies in what.
 */
export function severalLoops(loops: readonly DrawnLoop[]): {
  readonly loops: readonly LoopReading[]
  /** The same loops as they were drawn, in the same order. */
  readonly drawn: readonly DrawnLoop[]
  readonly findings: readonly Finding[]
} {
  const sorted = [...loops].sort((a, b) => loopArea(b.points) - loopArea(a.points))
  const placed = sorted.slice(0, mostLoops).map((loop, index): Placed => {
    return { loop, reading: measured(loop.points, loop.role ?? roleOf(loop, sorted.slice(0, index))) }
  })
  const outers = placed.filter(({ reading }) => reading.role === 'outer')
  const holes = placed.filter(({ reading }) => reading.role === 'hole')
  const more = loops.length - placed.length
  const drawn = placed.map(({ loop }) => loop)
  const findings: Finding[] = []
  if (outers.length + more > 1) findings.push(severalOutlines(outers, more))
  else {
    const meeting = loopsMeeting(drawn.map(({ points }) => points))
    if (meeting !== null) findings.push(loopsMeet(placed, meeting))
    else findings.push(...holeFindings(outers, holes))
  }
  return {
    loops: more > 0 ? [] : placed.map(({ reading }) => reading),
    drawn: more > 0 ? [] : drawn,
    findings,
  }
}

/** A hole lies in an odd number of larger loops. Judged by one point: loops that cross are found apart. */
function roleOf(loop: DrawnLoop, larger: readonly DrawnLoop[]): 'outer' | 'hole' {
  const [point] = loop.points
  const [u, v] = point!
  const depth = larger.filter(({ points }) => {
    const [uMin, vMin, uMax, vMax] = loopBounds(points)
    return u >= uMin && u <= uMax && v >= vMin && v <= vMax && pointInLoop(point!, points)
  }).length
  return depth % 2 === 1 ? 'hole' : 'outer'
}

function loopsMeet(placed: readonly Placed[], { at, loops: [a, b] }: Meeting): Finding {
  return stop(
    'loops-meet',
    `Two loops cross or touch: ${loopWords(placed[a]!)}, and ${loopWords(placed[b]!)}. What is cut out can't be told.`,
    placeName(at),
    'Draw them apart, or join them into one loop in the drawing program.',
    { atMm: at },
  )
}

function holeFindings(outers: readonly Placed[], holes: readonly Placed[]): readonly Finding[] {
  const stray = strayHoles(outers[0] ?? null, holes)
  return stray.length > 0 ? stray : thinRing(outers, holes)
}

/** Holes that the file calls so, but that lie outside the outline or in another hole. */
function strayHoles(outer: Placed | null, holes: readonly Placed[]): readonly Finding[] {
  const stray = holes.filter((hole) => {
    const others = holes.filter((other) => other !== hole && other.reading.areaMm2 > hole.reading.areaMm2)
    return (
      outer === null ||
      roleOf(hole.loop, [outer.loop]) !== 'hole' ||
      others.some(({ loop }) => roleOf(hole.loop, [loop]) === 'hole')
    )
  })
  if (stray.length === 0) return []
  return [
    stop(
      'hole-astray',
      `${counted(stray.length, 'hole does', 'holes do')} not lie inside the outline alone: ${list(stray)}.`,
      null,
      'Give as holes only loops that lie inside the outer loop and outside each other.',
      { holes: stray.length },
    ),
  ]
}

function thinRing(outers: readonly Placed[], holes: readonly Placed[]): readonly Finding[] {
  const [outer] = outers
  if (outer === undefined || holes.length === 0) return []
  const netMm2 = holes.reduce((rest, { reading }) => rest - reading.areaMm2, outer.reading.areaMm2)
  const widthMm = netMm2 / outer.reading.perimeterMm
  if (widthMm >= thinnestMm) return []
  return [
    look(
      'thin-ring',
      `Between the outline and what is cut out of it lie ${lengthWords(widthMm)} mm on average: they may be the two edges of one drawn line.`,
      null,
      'If one outline is meant, draw it as a line without width and save it again; else confirm the ring.',
      { widthMm },
    ),
  ]
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
  const layers = loop.layers.length === 0 ? '' : `, layer ${loop.layers.slice(0, 5).join(', ')}`
  return `${boundsWords(boundsMm)}${layers}`
}
