import type { Point } from '#lib/core/geometry/index'
import type { DxfEntity } from './dxf-sections'
import { type DxfShape, named, span } from './dxf-shape'
import { flagsOf, partsFrom, pointOf, real, realOr, reals } from './dxf-values'
import { lineName, Refused, stop } from './finding'

const closedFlags = 1 | 2

/** Beyond this a curve is no drawn one, and its sums lose their figures. */
const highestDegree = 25

/** Heaviest control point over the lightest; further apart, rounding decides where the curve runs. */
const mostWeightRatio = 1e6

/**
 * A B-spline by degree, knots, control points and weights. It runs over the knots that all of its basis functions reach:
 * a closed one that isn't clamped has its first control points once more at its end. Where only the knots go on round, the
 * control points do as well. Throws Refused on a curve that its numbers don't fix.
 */
export function splineShape(entity: DxfEntity): DxfShape {
  const parts = partsFrom(entity, 10)
  const found = parts.map((part) => pointOf(part, 10))
  const weightsFound = reals(entity, 41)
  const [degree, knots] = [real(entity, 71), reals(entity, 40)]
  const closed = (flagsOf(entity) & closedFlags) !== 0
  assertWhole(entity, { degree, points: found.length, weights: weightsFound })
  const goesRound = closed && knots.length === found.length + 2 * degree + 1
  const around = <Item>(items: readonly Item[]) => (goesRound ? [...items, ...items.slice(0, degree)] : items)
  const controls: readonly Point[] = around(found)
  const weights = weightsFound.length === 0 ? null : around(weightsFound)
  assertKnots(entity, knots, degree, controls.length)
  return {
    ...named(entity),
    course: { kind: 'spline', spline: { degree, knots, controls, weights } },
    closed,
    heights: span(parts.map((part) => realOr(part, 30, 0))),
    mirrored: false,
  }
}

function assertWhole(
  entity: DxfEntity,
  { degree, points, weights }: { degree: number; points: number; weights: readonly number[] },
): void {
  if (!Number.isInteger(degree) || degree < 1 || degree > highestDegree) {
    throw unfixed(entity, `its degree is ${degree}; from 1 to ${highestDegree} can be read`)
  }
  const stated = realOr(entity, 73, points)
  if (stated !== points) throw unfixed(entity, `it says ${stated} control points, but ${points} are there`)
  if (points <= degree) throw unfixed(entity, `${points} control points are too few for degree ${degree}`)
  if (weights.length === 0) return
  if (weights.length !== points) {
    throw unfixed(entity, `it has ${weights.length} weights for ${points} control points`)
  }
  const lightest = weights.reduce((a, b) => Math.min(a, b))
  const heaviest = weights.reduce((a, b) => Math.max(a, b))
  if (!(lightest > 0 && heaviest <= mostWeightRatio * lightest)) {
    throw unfixed(
      entity,
      `its weights run from ${lightest} to ${heaviest}; they must be above 0 and within 1 to ${mostWeightRatio}`,
    )
  }
}

function assertKnots(entity: DxfEntity, knots: readonly number[], degree: number, points: number): void {
  const needed = points + degree + 1
  if (knots.length !== needed) {
    throw unfixed(
      entity,
      `${points} control points of degree ${degree} need ${needed} knots, and ${knots.length} are there`,
    )
  }
  const falls = knots.findIndex((knot, index) => index > 0 && knot < knots[index - 1]!)
  if (falls !== -1) throw unfixed(entity, `knot ${falls + 1} is less than the one before`)
  const [first, last] = [knots[degree]!, knots[points]!]
  if (!(first < last && Number.isFinite(knots.at(-1)! - knots[0]!))) {
    throw unfixed(entity, `it runs from knot ${first} to knot ${last}, which is no length`)
  }
  const torn = knots.findIndex((knot, index) => {
    return index > degree && knot > first && knot < last && knot === knots[index + degree]
  })
  if (torn !== -1)
    throw unfixed(entity, `it is torn at knot ${knots[torn]}, which stands ${degree + 1} times`)
}

function unfixed(entity: DxfEntity, what: string): Refused {
  return new Refused(
    stop(
      'spline-damaged',
      `This SPLINE can't be read: ${what}.`,
      lineName(entity.line),
      'Save the drawing again as DXF, or convert the curve to a polyline with arcs.',
      { line: entity.line },
    ),
  )
}
