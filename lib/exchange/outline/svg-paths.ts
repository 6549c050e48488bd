import { distanceBetweenPoints, type Point, samePointMm } from '#lib/core/geometry/index'
import { lineName, Refused, stop } from './finding'
import { farthestMm, mostVertices } from './limits'
import { type Matrix, moved } from './matrix'
import type { Path } from './path'
import { flattenBezier, flattenSvgArc } from './svg-curves'
import type { SvgSegment } from './svg-path-data'
import type { SvgElement } from './svg-xml'

/** Half axes beyond this make a line of an arc, and its middle can't be told exactly, mm. */
const largestAxisMm = 1000 * farthestMm

interface Growing {
  readonly points: Point[]
  closed: boolean
  curved: boolean
}

/** What an element draws, as pieces in mm. Points that repeat the one before are left out: writers add them freely. */
export function svgPaths(
  element: SvgElement,
  segments: readonly SvgSegment[],
  toMm: Matrix,
  layer: string,
): readonly Path[] {
  const pieces: Growing[] = []
  let [at, start]: Point[] = [
    [0, 0],
    [0, 0],
  ]
  let piece: Growing | null = null
  let count = 0
  const begin = (): Growing => {
    const begun: Growing = { points: [placed(element, toMm, at!)], closed: false, curved: false }
    pieces.push(begun)
    return begun
  }
  for (const segment of segments) {
    if (segment[0] === 'M') {
      at = [segment[1], segment[2]]
      start = at
      piece = null
      continue
    }
    if (segment[0] === 'Z') {
      if (piece !== null) piece.closed = true
      at = start
      piece = null
      continue
    }
    piece ??= begin()
    const end: Point = [segment.at(-2) as number, segment.at(-1) as number]
    placed(element, toMm, end)
    const points = pointsOf(element, segment, at!, end, toMm)
    if (segment[0] !== 'L') piece.curved = true
    for (const point of points) {
      if (distanceBetweenPoints(piece.points.at(-1)!, point) > samePointMm) piece.points.push(point)
    }
    count += points.length
    if (count > mostVertices) throw tooManyPoints(element)
    at = end
  }
  return pieces.map((drawn) => pathOf(element, drawn, layer))
}

function pointsOf(
  element: SvgElement,
  segment: Exclude<SvgSegment, readonly ['Z']>,
  at: Point,
  end: Point,
  toMm: Matrix,
): readonly Point[] {
  switch (segment[0]) {
    case 'Q': {
      const [, x, y] = segment
      return flattenBezier([at, [x, y], end].map((handle) => placed(element, toMm, handle as Point)))
    }
    case 'C': {
      const [, x1, y1, x2, y2] = segment
      return flattenBezier(
        [at, [x1, y1], [x2, y2], end].map((handle) => placed(element, toMm, handle as Point)),
      )
    }
    case 'A': {
      const [, rx, ry, turnDeg, large, sweep] = segment
      const arc = { from: at, to: end, rx, ry, turnDeg, large: large === 1, sweep: sweep === 1 }
      const { points, largestMm } = flattenSvgArc(arc, toMm)
      if (largestMm > largestAxisMm || !Number.isFinite(largestMm)) throw arcTooLarge(element)
      return points
    }
    default:
      return [placed(element, toMm, end)]
  }
}

function pathOf(element: SvgElement, { points, closed, curved }: Growing, layer: string): Path {
  const backAtStart = points.length > 1 && distanceBetweenPoints(points[0]!, points.at(-1)!) <= samePointMm
  const kept = closed && backAtStart ? points.slice(0, -1) : points
  return {
    entity: element.name,
    line: element.line,
    layer,
    vertices: kept.map((at) => ({ at, bulge: 0 })),
    closed,
    ...(curved ? { curved } : {}),
    heightsMm: [0, 0],
  }
}

/** A point in mm. Throws Refused when it lies beyond what a face can have. */
function placed(element: SvgElement, toMm: Matrix, point: Point): Point {
  const at = moved(toMm, point)
  if (Math.abs(at[0]) <= farthestMm && Math.abs(at[1]) <= farthestMm) return at
  throw new Refused(
    stop(
      'too-far',
      `A ${element.name} reaches more than ${farthestMm / 1000} m from the corner of the page.`,
      lineName(element.line),
      'Check width, height and viewBox of the page, or move the outline onto it.',
      { line: element.line },
    ),
  )
}

function arcTooLarge(element: SvgElement): Refused {
  return new Refused(
    stop(
      'svg-arc',
      `An arc of this ${element.name} has a radius above ${largestAxisMm / 1e6} km.`,
      lineName(element.line),
      'Draw the arc anew, or as a line, and save the SVG again.',
      { line: element.line },
    ),
  )
}

export function tooManyPoints(element: SvgElement): Refused {
  return new Refused(
    stop(
      'too-many-points',
      `With its curves flattened the drawing holds more than ${mostVertices} points.`,
      lineName(element.line),
      'Save a drawing that holds nothing but the outline.',
      { mostVertices },
    ),
  )
}
