import { chordErrorMm, type Point } from '#lib/core/geometry/index'
import { nearestOnSegment } from '#lib/core/geometry/segment'

/**
 * A B-spline of any degree: `knots` are degree + 1 more than the control points, never fall, and the curve runs from
 * knot [degree] to knot [number of control points].
 */
export interface Spline {
  readonly degree: number
  readonly knots: readonly number[]
  readonly controls: readonly Point[]
  /** One a control point, above 0; null: all alike. */
  readonly weights: readonly number[] | null
}

/** Control point of a rational curve: u and v times the weight, and the weight. */
type Weighted = readonly [number, number, number]

/** Farthest that the flattened curve may fall short of the true one's bounds, mm. */
const boundsErrorMm = 1e-4

/** Halvings of one piece. A curve within 100 m is flat long before; then only rounding would be split further. */
const mostHalvings = 40

/**
 * Points of the curve from its beginning to its end, both included, all on the curve; null when there would be more than
 * `most`. Each span between knots is turned into a rational Bezier piece and halved until its control points lie within
 * 0.005 mm of their chord: the curve lies in their hull, so it does as well.
 */
export function flattenSpline(spline: Spline, most: number): readonly Point[] | null {
  const points: Point[] = []
  for (const piece of bezierPieces(spline)) {
    if (points.length === 0) points.push(flat(piece[0]!))
    const open: { readonly piece: readonly Weighted[]; readonly halvings: number }[] = [
      { piece, halvings: 0 },
    ]
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (points.length + open.length >= most) return null
      if (next.halvings === mostHalvings || isFlat(next.piece)) points.push(flat(next.piece.at(-1)!))
      else {
        const [near, far] = halved(next.piece)
        const halvings = next.halvings + 1
        open.push({ piece: far, halvings }, { piece: near, halvings })
      }
    }
  }
  return points
}

function* bezierPieces({ degree, knots, controls, weights }: Spline): Generator<readonly Weighted[]> {
  const heaviest = (weights ?? [1]).reduce((most, weight) => Math.max(most, weight), 0)
  const weighted = controls.map(([u, v], index): Weighted => {
    const weight = weights === null ? 1 : weights[index]! / heaviest
    return [u * weight, v * weight, weight]
  })
  for (let span = degree; span < controls.length; span++) {
    const [from, to] = [knots[span]!, knots[span + 1]!]
    if (!(from < to)) continue
    yield Array.from({ length: degree + 1 }, (_, index) => {
      const places = Array.from({ length: degree }, (_, place) => (place < degree - index ? from : to))
      return blossom(knots, weighted, span, places)
    })
  }
}

/** De Boor's rule with a place of its own at each step (Ramshaw): Bezier points are those of a span's two ends. */
function blossom(
  knots: readonly number[],
  controls: readonly Weighted[],
  span: number,
  places: readonly number[],
): Weighted {
  const degree = places.length
  let row = controls.slice(span - degree, span + 1)
  for (const [step, place] of places.entries()) {
    row = row.slice(1).map((next, index) => {
      const low = knots[span - degree + step + 1 + index]!
      const high = knots[span + 1 + index]!
      return between(row[index]!, next, (place - low) / (high - low))
    })
  }
  return row[0]!
}

function between([x, y, w]: Weighted, [p, q, v]: Weighted, share: number): Weighted {
  return [x + share * (p - x), y + share * (q - y), w + share * (v - w)]
}

function halved(piece: readonly Weighted[]): readonly [readonly Weighted[], readonly Weighted[]] {
  const [near, far]: [Weighted[], Weighted[]] = [[], []]
  for (let row = piece; row.length > 0; ) {
    near.push(row[0]!)
    far.push(row.at(-1)!)
    const above = row
    row = above.slice(1).map((next, index) => between(above[index]!, next, 0.5))
  }
  return [near, far.reverse()]
}

function isFlat(piece: readonly Weighted[]): boolean {
  const [from, to] = [flat(piece[0]!), flat(piece.at(-1)!)]
  return piece.slice(1, -1).every((control) => {
    const point = flat(control)
    return (
      isBetween(point[0], from[0], to[0]) &&
      isBetween(point[1], from[1], to[1]) &&
      nearestOnSegment(point, from, to).mm <= chordErrorMm
    )
  })
}

function isBetween(value: number, a: number, b: number): boolean {
  return value >= Math.min(a, b) - boundsErrorMm && value <= Math.max(a, b) + boundsErrorMm
}

function flat([x, y, w]: Weighted): Point {
  return [x / w, y / w]
}
