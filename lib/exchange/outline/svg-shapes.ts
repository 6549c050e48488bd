import { lineName, Refused, stop } from './finding'
import { mostVertices } from './limits'
import { shapeLength } from './svg-length'
import { numbersOf } from './svg-matrix'
import { pathSegments, type SvgSegment } from './svg-path-data'
import { tooManyPoints } from './svg-paths'
import { property } from './svg-style'
import type { SvgElement } from './svg-xml'

/** A curve takes six at most, and gives one point at least. */
const mostNumbers = 6 * mostVertices

const shapes = {
  path: pathOf,
  rect: rectOf,
  circle: circleOf,
  ellipse: ellipseOf,
  line: lineOf,
  polyline: (element) => polylineOf(element, false),
  polygon: (element) => polylineOf(element, true),
} as const satisfies Record<string, (element: SvgElement) => readonly SvgSegment[]>

export function isShape({ name }: SvgElement): boolean {
  return Object.hasOwn(shapes, name)
}

/** What a basic shape draws (SVG 1.1, chapter 9), in its own numbers; nothing for one without a size. */
export function segmentsOfShape(element: SvgElement): readonly SvgSegment[] {
  return shapes[element.name as keyof typeof shapes](element)
}

function pathOf(element: SvgElement): readonly SvgSegment[] {
  const data = property(element, 'd') ?? ''
  if (numbersIn(data) > mostNumbers) throw tooManyPoints(element)
  const read = pathSegments(data)
  if (read.ok) return read.segments
  const near = data.slice(Math.max(0, read.at - 1), read.at + 19).replace(/\s+/g, ' ')
  throw new Refused(
    stop(
      'svg-path',
      `The data of this path can't be read from its character ${read.at} on${near === '' ? '' : `, at "${near}"`}.`,
      lineName(element.line),
      'Save the drawing again as plain SVG; if a program wrote it so, save it as DXF instead.',
      { line: element.line, at: read.at },
    ),
  )
}

/** Counted before the data is read, since reading it takes a hundred times as long. */
function numbersIn(data: string): number {
  return data.match(/\d*\.?\d+/g)?.length ?? 0
}

/** One radius stands for both; none is larger than half its side. */
function rectOf(element: SvgElement): readonly SvgSegment[] {
  const [x, y] = [shapeLength(element, 'x', 0), shapeLength(element, 'y', 0)]
  const width = sizeOf(element, 'width')
  const height = sizeOf(element, 'height')
  if (width === 0 || height === 0) return []
  const given = [sizeOr(element, 'rx'), sizeOr(element, 'ry')] as const
  const rx = Math.min(given[0] ?? given[1] ?? 0, width / 2)
  const ry = Math.min(given[1] ?? given[0] ?? 0, height / 2)
  if (rx === 0 || ry === 0) {
    return [['M', x, y], ['L', x + width, y], ['L', x + width, y + height], ['L', x, y + height], ['Z']]
  }
  const corner = (toX: number, toY: number): SvgSegment => ['A', rx, ry, 0, 0, 1, toX, toY]
  return [
    ['M', x + rx, y],
    ['L', x + width - rx, y],
    corner(x + width, y + ry),
    ['L', x + width, y + height - ry],
    corner(x + width - rx, y + height),
    ['L', x + rx, y + height],
    corner(x, y + height - ry),
    ['L', x, y + ry],
    corner(x + rx, y),
    ['Z'],
  ]
}

function circleOf(element: SvgElement): readonly SvgSegment[] {
  const r = sizeOf(element, 'r')
  return ovalOf(element, r, r)
}

function ellipseOf(element: SvgElement): readonly SvgSegment[] {
  const given = [sizeOr(element, 'rx'), sizeOr(element, 'ry')] as const
  return ovalOf(element, given[0] ?? given[1] ?? 0, given[1] ?? given[0] ?? 0)
}

function ovalOf(element: SvgElement, rx: number, ry: number): readonly SvgSegment[] {
  if (rx === 0 || ry === 0) return []
  const [cx, cy] = [shapeLength(element, 'cx', 0), shapeLength(element, 'cy', 0)]
  return [['M', cx + rx, cy], ['A', rx, ry, 0, 0, 1, cx - rx, cy], ['A', rx, ry, 0, 0, 1, cx + rx, cy], ['Z']]
}

function lineOf(element: SvgElement): readonly SvgSegment[] {
  const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((name) => shapeLength(element, name, 0))
  return [
    ['M', x1!, y1!],
    ['L', x2!, y2!],
  ]
}

function polylineOf(element: SvgElement, closed: boolean): readonly SvgSegment[] {
  const values = numbersOf(element.attributes.points ?? '')
  if (values === null || values.length % 2 === 1 || !values.every(Number.isFinite)) {
    throw new Refused(
      stop(
        'svg-points',
        `The points of this ${element.name} are not pairs of numbers.`,
        lineName(element.line),
        'Save the drawing again as plain SVG; if a program wrote it so, save it as DXF instead.',
        { line: element.line },
      ),
    )
  }
  const segments: SvgSegment[] = []
  for (let at = 0; at < values.length; at += 2) {
    segments.push([at === 0 ? 'M' : 'L', values[at]!, values[at + 1]!])
  }
  return closed && segments.length > 0 ? [...segments, ['Z']] : segments
}

/** A size: 0 where it has none. Throws Refused on a negative one. */
function sizeOf(element: SvgElement, name: string): number {
  return sizeOr(element, name) ?? 0
}

function sizeOr(element: SvgElement, name: string): number | null {
  const size = shapeLength(element, name, Number.NaN)
  if (Number.isNaN(size)) return null
  if (size >= 0) return size
  throw new Refused(
    stop(
      'svg-number',
      `${name} of this ${element.name} is ${size}; it can't be below 0.`,
      lineName(element.line),
      'Delete it in the drawing, or give it its size.',
      { line: element.line },
    ),
  )
}
