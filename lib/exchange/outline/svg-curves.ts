import { chordErrorMm, distanceBetweenPoints, type Point } from '#lib/core/geometry/index'
import { type Ellipse, flattenEllipse, longestHalfAxis } from './ellipse'
import { composed, type Matrix, moved, turned } from './matrix'

/**
 * Points of a Bezier curve of any degree from its first handle, left out, to its last. Chords stay within 0.005 mm:
 * a step h of a curve with second derivative up to D leaves it by at most h^2 D / 8. Where the curve turns back along
 * u or v there is a point, so bounds are true.
 */
export function flattenBezier(handles: readonly Point[]): readonly Point[] {
  const degree = handles.length - 1
  let sharpest = 0
  for (let i = 0; i + 2 <= degree; i += 1) {
    const [a, b, c] = [handles[i]!, handles[i + 1]!, handles[i + 2]!]
    sharpest = Math.max(sharpest, Math.hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1]))
  }
  const second = degree * (degree - 1) * sharpest
  const count = Math.max(1, Math.ceil(Math.sqrt(second / (8 * chordErrorMm))))
  const even = Array.from({ length: count }, (_, index) => (index + 1) / count)
  const stops = [...even, ...turningShares(handles, 0), ...turningShares(handles, 1)].sort((a, b) => a - b)
  return stops.map((share) => (share === 1 ? handles[degree]! : onBezier(handles, share)))
}

function onBezier(handles: readonly Point[], share: number): Point {
  let row = handles
  while (row.length > 1) {
    row = row.slice(1).map((next, index): Point => {
      const [x, y] = row[index]!
      return [x + share * (next[0] - x), y + share * (next[1] - y)]
    })
  }
  return row[0]!
}

/** Shares strictly between the ends at which a curve of degree 2 or 3 runs square to an axis. */
function turningShares(handles: readonly Point[], axis: 0 | 1): readonly number[] {
  const steps = handles.slice(1).map((next, index) => next[axis] - handles[index]![axis])
  const [p, q, r] = steps
  // Slope p (1-t)^2 + 2 q t (1-t) + r t^2, or p (1-t) + q t for degree 2.
  const [a, b, c] = r === undefined ? [0, q! - p!, p!] : [p! - 2 * q! + r, 2 * (q! - p!), p!]
  return quadraticRoots(a, b, c).filter((share) => share > 1e-9 && share < 1 - 1e-9)
}

function quadraticRoots(a: number, b: number, c: number): readonly number[] {
  if (Math.abs(a) < 1e-12 * (Math.abs(b) + Math.abs(c))) return b === 0 ? [] : [-c / b]
  const under = b * b - 4 * a * c
  if (!(under >= 0)) return []
  const sum = -(b + (b < 0 ? -1 : 1) * Math.sqrt(under)) / 2
  return sum === 0 ? [0] : [sum / a, c / sum]
}

/** An elliptical arc as SVG writes it, in the numbers of its own path. */
export interface SvgArc {
  readonly from: Point
  readonly to: Point
  readonly rx: number
  readonly ry: number
  readonly turnDeg: number
  readonly large: boolean
  readonly sweep: boolean
}

/**
 * Points of an arc from its beginning, left out, to its end, in mm; chords stay within 0.005 mm. A straight line
 * where a radius is 0, as the format says (SVG 1.1, appendix F.6). `largestMm` is the longest half axis, for the
 * caller to judge.
 */
export function flattenSvgArc(
  arc: SvgArc,
  toMm: Matrix,
): { readonly points: readonly Point[]; readonly largestMm: number } {
  const end = moved(toMm, arc.to)
  if (distanceBetweenPoints(arc.from, arc.to) === 0) return { points: [], largestMm: 0 }
  if (arc.rx === 0 || arc.ry === 0) return { points: [end], largestMm: 0 }
  const ellipse = ellipseOf(arc, toMm)
  const largestMm = longestHalfAxis(ellipse)
  if (!Number.isFinite(largestMm)) return { points: [], largestMm }
  return { points: [...flattenEllipse(ellipse).slice(0, -1), end], largestMm }
}

/** From the two ends to centre and angles (F.6.5), radii that don't reach made larger (F.6.6), then to mm. */
function ellipseOf(arc: SvgArc, toMm: Matrix): Ellipse {
  const turnRad = (arc.turnDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)]
  const half: Point = [(arc.from[0] - arc.to[0]) / 2, (arc.from[1] - arc.to[1]) / 2]
  const [x, y] = [cos * half[0] + sin * half[1], -sin * half[0] + cos * half[1]]
  let [rx, ry] = [Math.abs(arc.rx), Math.abs(arc.ry)]
  const reach = (x / rx) ** 2 + (y / ry) ** 2
  if (reach > 1) {
    rx *= Math.sqrt(reach)
    ry *= Math.sqrt(reach)
  }
  const unit: Point = [x / rx, y / ry]
  const square = unit[0] ** 2 + unit[1] ** 2
  const off = Math.sqrt(Math.max(0, 1 / square - 1)) * (arc.large === arc.sweep ? -1 : 1)
  const inner: Point = [off * unit[1], -off * unit[0]]
  const axes: Matrix = [cos * rx, sin * rx, -sin * ry, cos * ry, 0, 0]
  const middle: Point = [(arc.from[0] + arc.to[0]) / 2, (arc.from[1] + arc.to[1]) / 2]
  const shift = turned(axes, inner)
  const startRad = Math.atan2(unit[1] - inner[1], unit[0] - inner[0])
  const endRad = Math.atan2(-unit[1] - inner[1], -unit[0] - inner[0])
  const turn = (((endRad - startRad) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  const all = composed(toMm, axes)
  return {
    centre: moved(toMm, [middle[0] + shift[0], middle[1] + shift[1]]),
    first: [all[0], all[1]],
    second: [all[2], all[3]],
    startRad,
    sweepRad: arc.sweep ? turn : turn - 2 * Math.PI,
  }
}
