import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { hatch, inside, type Xy } from '#lib/core/drawing/index'

/** A star-shaped outline: free radii at even angles, so mostly not convex. */
const star = fc
  .array(fc.double({ min: 10, max: 100, noNaN: true }), { minLength: 3, maxLength: 24 })
  .map((radii) =>
    radii.map((radius, i): Xy => {
      const angle = (2 * Math.PI * i) / radii.length + 0.1234
      return [200 + radius * Math.cos(angle), 200 + radius * Math.sin(angle)]
    }),
  )

function area(loop: readonly Xy[]): number {
  return Math.abs(
    loop.reduce((sum, [x, y], i) => {
      const [nx, ny] = loop[(i + 1) % loop.length]!
      return sum + (x * ny - nx * y) / 2
    }, 0),
  )
}

describe('hatching', () => {
  test('every line rises to the right at 45 degrees and stays inside', () => {
    fc.assert(
      fc.property(star, fc.double({ min: 2, max: 20, noNaN: true }), (loop, spacing) => {
        for (const [[ax, ay], [bx, by]] of hatch([loop], spacing, 'ink').segments) {
          expect(bx - ax).toBeGreaterThan(0)
          expect((by - ay) / (bx - ax)).toBeCloseTo(-1, 6)
          for (const share of [0.001, 0.25, 0.5, 0.75, 0.999]) {
            const at: Xy = [ax + share * (bx - ax), ay + share * (by - ay)]
            if (bx - ax > 1e-6) expect(inside(at, [loop])).toBe(true)
          }
        }
      }),
      { numRuns: 60 },
    )
  })

  test('line length times spacing comes to the area when the ruling is fine', () => {
    fc.assert(
      fc.property(star, (loop) => {
        const spacing = 0.2
        const length = hatch([loop], spacing, 'ink').segments.reduce(
          (sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]),
          0,
        )
        expect(Math.abs(length * spacing - area(loop))).toBeLessThan(0.02 * area(loop) + 5)
      }),
      { numRuns: 25 },
    )
  })

  test('leaves a hole free', () => {
    const square = (half: number): readonly Xy[] => [
      [-half, -half],
      [half, -half],
      [half, half],
      [-half, half],
    ]
    const { segments } = hatch([square(50), square(20)], 5, 'ink')
    for (const [a, b] of segments) {
      const middle: Xy = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
      expect(Math.max(Math.abs(middle[0]), Math.abs(middle[1]))).toBeGreaterThan(20)
    }
    expect(segments.length).toBeGreaterThan(20)
  })

  test('refuses a spacing of nothing', () => {
    expect(() => hatch([], 0, 'ink')).toThrow(/spacing must be above zero, got 0 mm/)
  })
})
