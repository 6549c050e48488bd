import type { Point } from './types'

/** How far off the nearest point of something is, and where that point lies. */
export interface Nearest {
  readonly mm: number
  readonly at: Point
}

/** The point of the segment a-b that is nearest to `point`. */
export function nearestOnSegment(point: Point, a: Point, b: Point): Nearest {
  const [du, dv] = [b[0] - a[0], b[1] - a[1]]
  const lengthSquared = du * du + dv * dv
  const along = lengthSquared === 0 ? 0 : ((point[0] - a[0]) * du + (point[1] - a[1]) * dv) / lengthSquared
  const share = Math.min(1, Math.max(0, along))
  const at: Point = share === 1 ? b : [a[0] + share * du, a[1] + share * dv]
  return { mm: Math.hypot(point[0] - at[0], point[1] - at[1]), at }
}

/** The point of segment c-d that is nearest to segment a-b; 0 mm where they cross or touch. */
export function nearestBetweenSegments(a: Point, b: Point, c: Point, d: Point): Nearest {
  const crossing = properCrossing(a, b, c, d)
  if (crossing !== null) return { mm: 0, at: crossing }
  let best: Nearest = nearestOnSegment(a, c, d)
  const fromB = nearestOnSegment(b, c, d)
  if (fromB.mm < best.mm) best = fromB
  for (const end of [c, d]) {
    const { mm } = nearestOnSegment(end, a, b)
    if (mm < best.mm) best = { mm, at: end }
  }
  return best
}

/** Where a-b and c-d cross at a point inside both; null when they only touch, lie along each other or miss. */
export function properCrossing(a: Point, b: Point, c: Point, d: Point): Point | null {
  const sideA = turn(c, d, a)
  const sideB = turn(c, d, b)
  if (sideA > 0 === sideB > 0 || sideA === 0 || sideB === 0) return null
  const sideC = turn(a, b, c)
  const sideD = turn(a, b, d)
  if (sideC > 0 === sideD > 0 || sideC === 0 || sideD === 0) return null
  const share = sideA / (sideA - sideB)
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]
}

/** Twice the area of triangle a-b-c: positive when c lies to the left of a-b. */
export function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}
