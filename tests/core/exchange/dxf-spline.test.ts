import { describe, expect, test } from 'vitest'
import { circleSpline, clamped, spline } from './draw-curves'
import { codes, dxf, line, type Pair, polyline, read, square, type XY } from './draw-dxf'
import { readCase } from './read-case'

const arch: readonly XY[] = [
  [0, 0],
  [0, 80],
  [200, 80],
  [200, 0],
]

describe('splines', () => {
  test('a circle of four rational arcs is the circle', () => {
    const { loops, verdict, findings } = read(dxf([circleSpline([40, 30], 150)]))
    expect({ verdict, findings }).toEqual({ verdict: 'accept', findings: [] })
    const { points, areaMm2, perimeterMm } = loops[0]!
    for (const [index, [u, v]] of points.entries()) {
      const [nextU, nextV] = points[(index + 1) % points.length]!
      expect(Math.hypot(u - 40, v - 30)).toBeCloseTo(150, 9)
      expect(150 - Math.hypot((u + nextU) / 2 - 40, (v + nextV) / 2 - 30)).toBeLessThanOrEqual(0.005)
    }
    expect(Math.abs(areaMm2 - Math.PI * 22_500)).toBeLessThan((2 / 3) * 0.005 * 2 * Math.PI * 150)
    expect(perimeterMm).toBeCloseTo(2 * Math.PI * 150, 1)
  })

  test('a cubic arch with its chord encloses 0.6 of its box, drawn either way', () => {
    // y = 3 h t (1 - t), dx = 6 l t (1 - t) dt: the integral is 0.6 h l.
    for (const controls of [arch, [...arch].reverse()]) {
      const reading = read(dxf([spline(3, clamped(3, 4), controls), line([0, 0], [200, 0])]))
      expect(reading).toMatchObject({ verdict: 'accept', findings: [] })
      expect(Math.abs(reading.loops[0]!.areaMm2 - 0.6 * 80 * 200)).toBeLessThan((2 / 3) * 0.005 * 300)
      expect(reading.loops[0]!.boundsMm[3]).toBeGreaterThan(60 - 1.01e-4)
      expect(reading.loops[0]!.boundsMm[3]).toBeLessThanOrEqual(60)
    }
  })

  test('degree 1 is a polyline, corner for corner', () => {
    const corners = [...square(100), [0, 0] as const]
    const reading = read(dxf([spline(1, clamped(1, 5), corners)]))
    expect(reading).toMatchObject({ verdict: 'accept', loops: [{ areaMm2: 10_000 }] })
    expect(reading.loops[0]!.points).toHaveLength(4)
  })

  test('raised to degree 5, a curve stays the same', () => {
    let controls: readonly XY[] = arch
    for (let degree = 3; degree < 5; degree++) {
      const raised = controls
      controls = Array.from({ length: degree + 2 }, (_, index): XY => {
        const share = index / (degree + 1)
        const [a, b] = [raised[index - 1] ?? [0, 0], raised[index] ?? [0, 0]]
        return [share * a[0] + (1 - share) * b[0], share * a[1] + (1 - share) * b[1]]
      })
    }
    const reading = read(dxf([spline(5, clamped(5, 6), controls), line([0, 0], [200, 0])]))
    expect(Math.abs(reading.loops[0]!.areaMm2 - 9600)).toBeLessThan(1)
  })

  test('one that goes round by its knots alone is the same as with its points repeated', () => {
    const { reading, bytes } = readCase('T25')
    const text = new TextDecoder().decode(bytes)
    const lines = text.slice(text.indexOf('AcDbSpline')).split('ENDSEC')[0]!.split(/\r?\n/)
    const numbers = (code: number) =>
      lines.flatMap((value, index) =>
        index % 2 === 0 && Number(lines[index - 1]) === code ? [Number(value)] : [],
      )
    const [xs, ys] = [numbers(10), numbers(20)]
    const controls = xs.slice(0, -3).map((x, index): XY => [x, ys[index]!])
    const again = read(dxf([spline(3, numbers(40).slice(0, 14), controls, { flags: 3 })]))
    expect(again.loops).toEqual(reading.loops)
  })

  test('one drawn twice is dropped, also reversed', () => {
    const there = spline(3, clamped(3, 4), arch)
    const back = spline(3, clamped(3, 4), [...arch].reverse())
    const reading = read(dxf([there, back, line([0, 0], [200, 0])]))
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', dropped: 1 })
  })

  test('inches are inches', () => {
    const reading = read(dxf([circleSpline([0, 0], 2)], 1))
    expect(Math.abs(reading.loops[0]!.areaMm2 - Math.PI * 50.8 ** 2)).toBeLessThan(1.1)
  })

  test('one marked as closed whose ends lie apart is asked about', () => {
    const reading = read(dxf([spline(3, clamped(3, 4), arch, { flags: 1 }), line([0, 0], [200, 0])]))
    expect(reading).toMatchObject({
      verdict: 'ask',
      findings: [{ code: 'spline-not-closed', figures: { apartMm: 200 } }],
    })
  })
})

describe('splines that can not be read', () => {
  const knots = clamped(3, 4)
  const fit: readonly Pair[] = [
    [0, 'SPLINE'],
    [8, 'CUT'],
    [70, 8],
    [71, 3],
    [74, 2],
    [11, 0],
    [21, 0],
    [11, 50],
    [21, 50],
  ]

  test('fit points alone are refused by name', () => {
    const reading = read(dxf([polyline(square(100)), fit]))
    expect(codes(reading)).toEqual(['entity-not-read'])
    expect(reading.findings[0]!.text).toContain('1 SPLINE given by fit points alone')
    expect(reading.findings[0]!.cure).toContain('control points')
  })

  test('fit points beside control points change nothing', () => {
    const more: readonly Pair[] = [
      [11, 0],
      [21, 0],
      [31, 0],
    ]
    const reading = read(dxf([spline(3, knots, arch, { more }), line([0, 0], [200, 0])]))
    expect(Math.abs(reading.loops[0]!.areaMm2 - 9600)).toBeLessThan(1)
  })

  const twice = [...arch, ...arch]
  test.each([
    ['a knot lost', spline(3, knots.slice(1), arch), '8 knots, and 7 are there'],
    ['knots that fall', spline(3, [0, 0, 0, 0, 1, 1, 0.5, 1], arch), 'knot 7 is less'],
    ['degree 0', spline(0, clamped(0, 4), arch), 'degree is 0'],
    ['degree 26', spline(26, clamped(26, 27), arch), 'degree is 26'],
    ['degree 2.5', spline(2.5, knots, arch), 'degree is 2.5'],
    ['too few points', spline(3, [0, 0, 0, 1, 1, 1, 1], arch.slice(1)), 'too few for degree 3'],
    ['all knots alike', spline(3, Array(8).fill(5), arch), 'no length'],
    ['a weight of 0', spline(3, knots, arch, { weights: [1, 0, 1, 1] }), 'weights run from 0 to 1'],
    ['a negative weight', spline(3, knots, arch, { weights: [1, -1, 1, 1] }), 'weights run from -1'],
    ['a weight lost', spline(3, knots, arch, { weights: [1, 1, 1] }), '3 weights for 4'],
    ['torn in its middle', spline(3, [0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2], twice), 'torn at knot 1'],
  ])('%s', (_, pairs, words) => {
    const reading = read(dxf([pairs]))
    expect(codes(reading)).toEqual(['spline-damaged'])
    expect(reading.findings[0]!.text).toContain(words)
    expect(reading.findings[0]!.place).toMatch(/^line \d+$/)
  })

  test('a control point lost is told by the count that the curve states', () => {
    const lame = spline(3, knots, arch).map((pair) => (pair[0] === 73 ? ([73, 5] as const) : pair))
    expect(read(dxf([lame])).findings[0]!.text).toContain('says 5 control points, but 4')
  })
})
