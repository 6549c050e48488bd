import fc from 'fast-check'
import type { Loop, Point, Region } from '#lib/core/geometry/index'

export const regionOf = (outer: Loop, holes: readonly Loop[] = []): Region => ({ outer, holes })

/** A box from corner to corner, counter-clockwise. */
export const box = (uMin: number, vMin: number, uMax: number, vMax: number): Loop => [
  [uMin, vMin],
  [uMax, vMin],
  [uMax, vMax],
  [uMin, vMax],
]

const coordinate = fc.double({ min: -200, max: 200, noNaN: true, noDefaultInfinity: true })

export const somePoint: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate)

/** Seen from its middle the outline never turns back, so it can't cross itself; concave ones are among them. */
export const starOutline: fc.Arbitrary<Loop> = fc
  .record({
    centre: somePoint,
    radii: fc.array(fc.double({ min: 15, max: 90, noNaN: true }), { minLength: 5, maxLength: 24 }),
    turn: fc.double({ min: 0, max: 6, noNaN: true }),
  })
  .map(({ centre, radii, turn }) =>
    radii.map((radius, index): Point => {
      const angle = turn + (2 * Math.PI * index) / radii.length
      return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
    }),
  )

/** Corners on a circle are convex. */
export const convexOutline: fc.Arbitrary<Loop> = fc
  .record({
    centre: somePoint,
    radius: fc.double({ min: 10, max: 150, noNaN: true }),
    shares: fc.array(fc.double({ min: 0.3, max: 1, noNaN: true }), { minLength: 3, maxLength: 20 }),
  })
  .map(({ centre, radius, shares }) => {
    const whole = shares.reduce((sum, share) => sum + share, 0)
    let angle = 0
    return shares.map((share): Point => {
      angle += (2 * Math.PI * share) / whole
      return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
    })
  })

/** A traced outline: a wavy circle with noise, always the same for the same seed. */
export function noisyOutline(points: number, noiseMm: number, seed = 1): Loop {
  let state = seed
  const random = () => {
    state = (state * 16_807) % 2_147_483_647
    return state / 2_147_483_647
  }
  return Array.from({ length: points }, (_, index) => {
    const angle = (2 * Math.PI * index) / points
    const radius = 150 + 30 * Math.sin(3 * angle) + (random() - 0.5) * noiseMm
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const
  })
}
