import { describe, expect, test } from 'vitest'
import { ellipse } from './draw-curves'
import { codes, dxf, entity, line, polyline, read, square, type XY } from './draw-dxf'

/** Of an ellipse: pi (a + b) times the sum of squared binomials of 1/2 times h^n (Ivory's series), from memory. */
function perimeterOf(a: number, b: number): number {
  const h = ((a - b) / (a + b)) ** 2
  let [binomial, sum] = [1, 0]
  for (let n = 0; n < 200; n++) {
    sum += binomial * binomial * h ** n
    binomial *= (0.5 - n) / (n + 1)
  }
  return Math.PI * (a + b) * sum
}

describe('whole ellipses', () => {
  test.each([
    ['upright', 50, 0.6, 0],
    ['slim and turned', 200, 0.05, 37],
    ['nearly a circle', 80, 0.999, 200],
    ['higher than wide, as its ratio says', 30, 2.5, 90],
  ])('%s: area, perimeter, bounds', (_, half, ratio, turnDeg) => {
    const turn = (turnDeg * Math.PI) / 180
    const major: XY = [half * Math.cos(turn), half * Math.sin(turn)]
    const reading = read(dxf([ellipse([300, 200], major, ratio)]))
    expect(reading).toMatchObject({ verdict: 'accept', findings: [] })
    const [{ areaMm2, perimeterMm, boundsMm } = { areaMm2: 0, perimeterMm: 0, boundsMm: [] }] = reading.loops
    const other = half * ratio
    const perimeter = perimeterOf(half, other)
    // A chord loses a third of its rise for each radian of turn, and two thirds of the rise along its length.
    expect(perimeterMm).toBeLessThan(perimeter)
    expect(perimeterMm).toBeGreaterThan(perimeter - (0.005 * 2 * Math.PI) / 3 - 1e-4)
    expect(areaMm2).toBeLessThan(Math.PI * half * other)
    expect(areaMm2).toBeGreaterThan(Math.PI * half * other - (2 / 3) * 0.005 * perimeter)
    const reach = [
      Math.hypot(half * Math.cos(turn), other * Math.sin(turn)),
      Math.hypot(half * Math.sin(turn), other * Math.cos(turn)),
    ]
    const bounds = [300 - reach[0]!, 200 - reach[1]!, 300 + reach[0]!, 200 + reach[1]!]
    for (const [index, mm] of bounds.entries()) expect(boundsMm[index]).toBeCloseTo(mm, 6)
  })

  test.each([
    ['from 0 to 0', 0, 0],
    ['from 1 round to 1', 1, 1 + 2 * Math.PI],
    ['from -pi to pi', -Math.PI, Math.PI],
    ['from 0 to a full turn rounded down', 0, 6.28318],
    ['from 0 to a full turn rounded up', 0, 6.2832],
    ['from a full turn to 0', 2 * Math.PI, 0],
  ])('%s is whole', (_, from, to) => {
    const reading = read(dxf([ellipse([0, 0], [50, 0], 0.5, { from, to })]))
    expect(reading.verdict).toBe('accept')
    expect(Math.abs(reading.loops[0]!.areaMm2 - Math.PI * 1250)).toBeLessThan((2 / 3) * 0.005 * 243)
  })

  test('one drawn twice is dropped', () => {
    const one = ellipse([0, 0], [50, 20], 0.5)
    expect(read(dxf([one, one]))).toMatchObject({ verdict: 'accept-with-notice', dropped: 1 })
  })
})

describe('parts of ellipses', () => {
  const [a, b] = [60, 30]
  const at = (t: number, up: number): XY => [100 + a * Math.cos(t), 50 + up * b * Math.sin(t)]

  test.each([
    ['a short arc', 0.3, 1.4, 1],
    ['more than half', 0.5, 4.5, 1],
    ['across the first half axis', 5.5, 1, 1],
    ['seen from behind it runs the other way', 0.3, 1.4, -1],
    ['more than half, from behind', 0.5, 4.5, -1],
  ])('%s, closed by its chord', (_, from, to, up) => {
    const sweep = (to - from + 2 * Math.PI) % (2 * Math.PI)
    const reading = read(
      dxf([ellipse([100, 50], [a, 0], b / a, { from, to, up }), line(at(to, up), at(from, up))]),
    )
    expect(reading).toMatchObject({ verdict: 'accept', findings: [] })
    const area = (a * b * (sweep - Math.sin(sweep))) / 2
    expect(Math.abs(reading.loops[0]!.areaMm2 - area)).toBeLessThan((2 / 3) * 0.005 * 300)
    for (const [u, v] of reading.loops[0]!.points) {
      expect(Math.hypot((u - 100) / a, (v - 50) / b)).toBeCloseTo(1, 9)
    }
    const middle = at(from + sweep / 2, up)
    const nearest = reading.loops[0]!.points.map(([u, v]) => Math.hypot(u - middle[0], v - middle[1]))
    expect(Math.min(...nearest)).toBeLessThan(2)
  })
})

describe('ellipses that can not be read', () => {
  test.each([
    ['a ratio of 0', ellipse([0, 0], [50, 0], 0), 'ellipse-axis'],
    ['no half axis', ellipse([0, 0], [0, 0], 0.5), 'ellipse-axis'],
    ['a half axis as long as a town', ellipse([0, 0], [1e9, 0], 0.5), 'too-far'],
    ['nothing but a centre', entity('ELLIPSE'), 'dxf-value-missing'],
  ])('%s', (_, pairs, code) => {
    expect(codes(read(dxf([pairs])))).toEqual([code])
  })

  test('a tilted one is refused by name', () => {
    const tilted = ellipse([0, 0], [50, 0], 0.5).map((pair) => (pair[0] === 31 ? ([31, 10] as const) : pair))
    const reading = read(dxf([polyline(square(100)), tilted]))
    expect(codes(reading)).toEqual(['entity-not-read'])
    expect(reading.findings[0]!.text).toContain('ELLIPSE in a tilted plane')
  })
})
