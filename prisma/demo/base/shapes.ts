export type Spot = [number, number]

/** A face that lies along u between a lower and an upper line; its ends are cut straight or rounded. */
export interface Band {
  readonly lengthMm: number
  readonly lower: (uMm: number) => number
  readonly upper: (uMm: number) => number
  /** Length over which an end closes in an ellipse; 0 or left out: a straight end. */
  readonly roundLeftMm?: number
  readonly roundRightMm?: number
  readonly stations?: number
}

const tenth = (mm: number) => Math.round(mm * 10) / 10
const spot = (u: number, v: number): Spot => [tenth(u), tenth(v)]

/** The outline of a band, counter-clockwise: along the lower line and back along the upper one. */
export function bandOutline(band: Band): Spot[] {
  const left = band.roundLeftMm ?? 0
  const right = band.roundRightMm ?? 0
  const us = stationsOf(band, left, right)
  const at = (u: number) => {
    const middle = (band.lower(u) + band.upper(u)) / 2
    const half =
      ((band.upper(u) - band.lower(u)) / 2) * Math.min(closing(u, left), closing(band.lengthMm - u, right))
    return [middle - half, middle + half] as const
  }
  const lower = us.map((u) => spot(u, at(u)[0]))
  const upper = us.map((u) => spot(u, at(u)[1])).reverse()
  return withoutTwins([...lower, ...upper])
}

/** Share of its full height that a band has at a distance from a rounded end. */
function closing(fromEndMm: number, roundMm: number): number {
  if (roundMm === 0 || fromEndMm >= roundMm) return 1
  return Math.sqrt(Math.max(0, 1 - ((roundMm - fromEndMm) / roundMm) ** 2))
}

const capSteps = 7

function stationsOf({ lengthMm, stations = 22 }: Band, left: number, right: number): number[] {
  const turn = (step: number) => 1 - Math.cos((step / capSteps) * (Math.PI / 2))
  const cap = Array.from({ length: capSteps }, (_, step) => turn(step))
  const straight = Array.from(
    { length: stations },
    (_, step) => left + ((lengthMm - left - right) * step) / (stations - 1),
  )
  return [
    ...(left === 0 ? [] : cap.map((share) => share * left)),
    ...straight,
    ...(right === 0 ? [] : cap.map((share) => lengthMm - share * right).reverse()),
  ]
}

function withoutTwins(points: readonly Spot[]): Spot[] {
  return points.filter((point, index) => {
    const before = points[(index + points.length - 1) % points.length]
    return !before || Math.hypot(point[0] - before[0], point[1] - before[1]) > 0.05
  })
}

/** The same band drawn in by a width on all sides, about as a trim line runs. */
export function bandInside(band: Band, byMm: number): Spot[] {
  const inner: Band = {
    ...band,
    lengthMm: band.lengthMm - 2 * byMm,
    lower: (u) => band.lower(u + byMm) + byMm,
    upper: (u) => band.upper(u + byMm) - byMm,
    roundLeftMm: Math.max(0, (band.roundLeftMm ?? 0) - byMm),
    roundRightMm: Math.max(0, (band.roundRightMm ?? 0) - byMm),
  }
  return bandOutline(inner).map(([u, v]) => spot(u + byMm, v))
}

/** A strip of a width along the upper line of a band, on its inner side; such as a flange takes. */
export function upperStrip(band: Band, widthMm: number, fromU = 0, toU = band.lengthMm): Spot[] {
  return strip(fromU, toU, (u) => band.upper(u) - widthMm, band.upper)
}

export function lowerStrip(band: Band, widthMm: number, fromU = 0, toU = band.lengthMm): Spot[] {
  return strip(fromU, toU, band.lower, (u) => band.lower(u) + widthMm)
}

function strip(
  fromU: number,
  toU: number,
  lower: (u: number) => number,
  upper: (u: number) => number,
): Spot[] {
  const steps = 12
  const us = Array.from({ length: steps + 1 }, (_, step) => fromU + ((toU - fromU) * step) / steps)
  return [...us.map((u) => spot(u, lower(u))), ...us.map((u) => spot(u, upper(u))).reverse()]
}

/** A rib or frame foot on the back: a strip across a band. */
export function crossStrip(band: Band, atU: number, widthMm: number, clearMm: number): Spot[] {
  const [left, right] = [atU - widthMm / 2, atU + widthMm / 2]
  return box(left, band.lower(atU) + clearMm, right, band.upper(atU) - clearMm)
}

export function box(u0: number, v0: number, u1: number, v1: number): Spot[] {
  return [spot(u0, v0), spot(u1, v0), spot(u1, v1), spot(u0, v1)]
}

export function roundedBox(u0: number, v0: number, u1: number, v1: number, radiusMm: number): Spot[] {
  const steps = 6
  const corners: readonly (readonly [number, number, number])[] = [
    [u1 - radiusMm, v0 + radiusMm, -90],
    [u1 - radiusMm, v1 - radiusMm, 0],
    [u0 + radiusMm, v1 - radiusMm, 90],
    [u0 + radiusMm, v0 + radiusMm, 180],
  ]
  return corners.flatMap(([u, v, from]) =>
    Array.from({ length: steps + 1 }, (_, step) => {
      const turn = ((from + (90 * step) / steps) * Math.PI) / 180
      return spot(u + radiusMm * Math.cos(turn), v + radiusMm * Math.sin(turn))
    }),
  )
}

/** A stretch of a ring between two ellipses, from one angle to a larger one in degrees. */
export function ringArc(
  outerMm: Spot,
  innerMm: Spot,
  fromDeg: number,
  toDeg: number,
  middle: Spot = [0, 0],
): Spot[] {
  const steps = 29
  const arc = ([a, b]: Spot) =>
    Array.from({ length: steps + 1 }, (_, step) => {
      const turn = ((fromDeg + ((toDeg - fromDeg) * step) / steps) * Math.PI) / 180
      return spot(middle[0] + a * Math.cos(turn), middle[1] + b * Math.sin(turn))
    })
  return [...arc(outerMm), ...arc(innerMm).reverse()]
}

/** The other hand: left and right change places, and the outline runs counter-clockwise again. */
export function otherHand(points: readonly Spot[], lengthMm: number): Spot[] {
  return points.map(([u, v]) => spot(lengthMm - u, v)).reverse()
}

/** Upside down about a line of v: as a floor has its other half. */
export function overturned(points: readonly Spot[], heightMm: number): Spot[] {
  return points.map(([u, v]) => spot(u, heightMm - v)).reverse()
}
