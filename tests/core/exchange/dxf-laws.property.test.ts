import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { flattenSpline } from '#lib/exchange/outline/spline'
import { block, insert } from './draw-blocks'
import { clamped, ellipse } from './draw-curves'
import { arc, dxf, line, type Pair, polyline, read, type XY } from './draw-dxf'

/** A slot with a round and a straight end; a D of an arc and a line; an egg. */
const figures: readonly (readonly (readonly Pair[])[])[] = [
  [
    polyline([
      [0, 0, -0.3],
      [60, 0, 1],
      [60, 20],
      [0, 20],
    ]),
  ],
  [arc([5, 5], 20, 300, 120), line([15, 5 - 10 * Math.sqrt(3)], [-5, 5 + 10 * Math.sqrt(3)])],
  [ellipse([3, 4], [30, 10], 0.6, { from: 1, to: 4 }), line(onEgg(1), onEgg(4))],
]

function onEgg(t: number): XY {
  return [3 + 30 * Math.cos(t) - 6 * Math.sin(t), 4 + 10 * Math.cos(t) + 18 * Math.sin(t)]
}

const figure = fc.constantFrom(...figures)
const place = fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }))
const turnDeg = fc.double({ min: -360, max: 360, noNaN: true })

describe('laws of INSERT', () => {
  test('a similarity, mirrored or not, gives the area times its scale squared', () => {
    const scale = fc.double({ min: 0.2, max: 30, noNaN: true })
    fc.assert(
      fc.property(figure, place, scale, fc.boolean(), turnDeg, (entities, at, size, flipped, turn) => {
        const own = read(dxf(entities)).loops[0]!
        const options = { scale: [flipped ? -size : size, size] as const, turnDeg: turn }
        const reading = read(dxf([insert('F', at, options)], 4, { blocks: block('F', entities) }))
        expect(reading.verdict).toBe('accept')
        const loss = (2 / 3) * 0.005 * own.perimeterMm
        const difference = reading.loops[0]!.areaMm2 - own.areaMm2 * size * size
        expect(Math.abs(difference)).toBeLessThan(loss * size * size + loss * size)
      }),
      { numRuns: 60 },
    )
  })

  test('seen from behind twice, a figure lies as it was', () => {
    fc.assert(
      fc.property(figure, place, turnDeg, (entities, at, turn) => {
        const direct = read(dxf([insert('F', at, { turnDeg: turn })], 4, { blocks: block('F', entities) }))
        const blocks = [
          ...block('F', entities),
          ...block('TWICE', [
            insert('F', [-at[0], at[1]], { mirrored: true, turnDeg: -turn, scale: [-1, 1] }),
          ]),
        ]
        // From behind, x runs the other way: so does the turn, and the scale of -1 turns the figure back.
        const again = read(dxf([insert('TWICE', [0, 0])], 4, { blocks }))
        const mirrors = [
          ...block('F', entities),
          ...block('ONCE', [insert('F', at, { mirrored: true, turnDeg: turn })]),
        ]
        const undone = read(dxf([insert('ONCE', [0, 0], { mirrored: true })], 4, { blocks: mirrors }))
        for (const { loops } of [again, undone]) {
          expect(loops[0]!.areaMm2).toBeCloseTo(direct.loops[0]!.areaMm2, 6)
          loops[0]!.boundsMm.forEach((mm, index) => {
            expect(mm).toBeCloseTo(direct.loops[0]!.boundsMm[index]!, 6)
          })
        }
      }),
      { numRuns: 60 },
    )
  })

  test('one insert of several scales is the same as several inserts within one another', () => {
    const factor = fc.constantFrom(-3, -1, -0.5, 0.25, 1, 2)
    fc.assert(
      fc.property(figure, factor, factor, factor, factor, (entities, a, b, c, d) => {
        const once = read(
          dxf([insert('F', [0, 0], { scale: [a * c, b * d] })], 4, { blocks: block('F', entities) }),
        )
        const blocks = [...block('F', entities), ...block('G', [insert('F', [0, 0], { scale: [a, b] })])]
        const twice = read(dxf([insert('G', [0, 0], { scale: [c, d] })], 4, { blocks }))
        expect(twice.loops[0]!.areaMm2).toBeCloseTo(once.loops[0]!.areaMm2, 6)
        expect(twice.loops[0]!.boundsMm.map((mm) => mm.toFixed(6))).toEqual(
          once.loops[0]!.boundsMm.map((mm) => mm.toFixed(6)),
        )
      }),
      { numRuns: 60 },
    )
  })
})

describe('laws of splines', () => {
  const control = fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 }))
  const curve = fc.integer({ min: 1, max: 7 }).chain((degree) =>
    fc.array(control, { minLength: degree + 1, maxLength: degree + 9 }).chain((controls) =>
      fc.record({
        degree: fc.constant(degree),
        controls: fc.constant(controls),
        knots: fc.constant(clamped(degree, controls.length)),
        weights: fc.array(fc.double({ min: 0.1, max: 20, noNaN: true }), {
          minLength: controls.length,
          maxLength: controls.length,
        }),
      }),
    ),
  )

  test('a curve stays in the hull of its control points, from the first to the last', () => {
    fc.assert(
      fc.property(curve, (spline) => {
        const points = flattenSpline(spline, 100_000)!
        const [first, last] = [spline.controls[0]!, spline.controls.at(-1)!]
        expect(Math.hypot(points[0]![0] - first[0], points[0]![1] - first[1])).toBeLessThan(1e-9)
        expect(Math.hypot(points.at(-1)![0] - last[0], points.at(-1)![1] - last[1])).toBeLessThan(1e-9)
        for (let degrees = 0; degrees < 360; degrees += 15) {
          const [u, v] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
          const reach = (all: readonly XY[]) => Math.max(...all.map((point) => u * point[0] + v * point[1]))
          expect(reach(points)).toBeLessThanOrEqual(reach(spline.controls) + 1e-9)
        }
      }),
      { numRuns: 200 },
    )
  })

  test('chords lie within 0.005 mm of points of the curve that were found another way', () => {
    fc.assert(
      fc.property(curve, (spline) => {
        const points = flattenSpline(spline, 100_000)!
        for (let at = 0.003; at < 1; at += 0.013) {
          const [u, v] = onCurve(spline, at)
          const apart = points.slice(1).map((to, index) => toSegment([u, v], points[index]!, to))
          expect(Math.min(...apart)).toBeLessThan(0.005 + 1e-9)
        }
      }),
      { numRuns: 60 },
    )
  })

  test('reversed, it is the same curve', () => {
    fc.assert(
      fc.property(curve, (spline) => {
        const back = flattenSpline(
          {
            ...spline,
            controls: [...spline.controls].reverse(),
            weights: [...spline.weights].reverse(),
          },
          100_000,
        )!
        const there = flattenSpline(spline, 100_000)!
        expect(back.length).toBeGreaterThanOrEqual(2)
        const step = Math.ceil(back.length / 20)
        for (const point of back.filter((_, index) => index % step === 0)) {
          const apart = there.slice(1).map((to, index) => toSegment(point, there[index]!, to))
          expect(Math.min(...apart, there.length === 1 ? 0 : Infinity)).toBeLessThan(0.005 + 1e-6)
        }
      }),
      { numRuns: 60 },
    )
  })

  test('beyond the room that there is, there is no answer', () => {
    const controls: readonly XY[] = [
      [0, 0],
      [0, 90],
      [90, 90],
    ]
    const bow = { degree: 2, knots: [0, 0, 0, 1, 1, 1], controls, weights: null }
    const count = flattenSpline(bow, 1000)!.length
    expect(count).toBeGreaterThan(10)
    expect(flattenSpline(bow, count)).toHaveLength(count)
    expect(flattenSpline(bow, count - 1)).toBeNull()
  })
})

interface Curve {
  readonly degree: number
  readonly knots: readonly number[]
  readonly controls: readonly XY[]
  readonly weights: readonly number[]
}

/** By basis functions (Cox and de Boor's recursion), which the reader does not use. */
function onCurve({ degree, knots, controls, weights }: Curve, at: number): XY {
  const basis = (index: number, order: number): number => {
    if (order === 0) return at >= knots[index]! && at < knots[index + 1]! ? 1 : 0
    const part = (from: number, to: number, share: number, next: number) =>
      from === to ? 0 : (share / (to - from)) * basis(next, order - 1)
    const [low, high] = [knots[index]!, knots[index + order]!]
    const [lowNext, highNext] = [knots[index + 1]!, knots[index + order + 1]!]
    return part(low, high, at - low, index) + part(lowNext, highNext, highNext - at, index + 1)
  }
  let [x, y, w] = [0, 0, 0]
  for (const [index, [u, v]] of controls.entries()) {
    const weight = weights[index]! * basis(index, degree)
    x += weight * u
    y += weight * v
    w += weight
  }
  return [x / w, y / w]
}

function toSegment([u, v]: XY, [a, b]: XY, [c, d]: XY): number {
  const [du, dv] = [c - a, d - b]
  const square = du * du + dv * dv
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((u - a) * du + (v - b) * dv) / square))
  return Math.hypot(u - a - share * du, v - b - share * dv)
}
