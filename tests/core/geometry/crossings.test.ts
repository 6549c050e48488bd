import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  area,
  circle,
  crossings,
  type Loop,
  lobes,
  loopArea,
  type Point,
  selfCrossings,
  uncrossed,
} from '#lib/core/geometry/index'
import { noisyOutline, starOutline } from './arbitrary-outlines'

// Case T30: each lobe is a triangle with base 80 and height 50.
const bowTie: Loop = [
  [0, 0],
  [100, 80],
  [100, 0],
  [0, 80],
]

describe('case T30: a bow-tie', () => {
  test('crosses at (50, 40) and encloses two lobes of 2000 mm2', () => {
    expect(selfCrossings(bowTie)).toEqual([{ kind: 'crossing', at: [50, 40], edges: [0, 2] }])
    expect(lobes(bowTie).map((lobe) => area([lobe]))).toEqual([2000, 2000])
  })

  test('its points in another order make the box', () => {
    const order = uncrossed(bowTie)
    expect(crossings(order!)).toEqual([])
    expect(loopArea(order!)).toBe(8000)
  })
})

describe('ways for a loop to meet itself', () => {
  test('two corners on one point', () => {
    const pinched: Loop = [
      [0, 0],
      [50, 40],
      [100, 0],
      [100, 80],
      [50, 40],
      [0, 80],
    ]
    expect(selfCrossings(pinched)).toMatchObject([{ kind: 'touch', at: [50, 40] }])
    expect(lobes(pinched)).toHaveLength(2)
  })

  test('a corner on a side', () => {
    expect(
      selfCrossings([
        [0, 0],
        [100, 0],
        [100, 80],
        [50, 0],
        [0, 80],
      ]),
    ).toMatchObject([{ kind: 'touch', at: [50, 0] }])
  })

  test('a spike that runs back on itself', () => {
    expect(
      selfCrossings([
        [0, 0],
        [100, 0],
        [100, 50],
        [150, 50],
        [100, 50],
        [100, 80],
        [0, 80],
      ]),
    ).toMatchObject([
      { kind: 'touch', at: [100, 50] },
      { kind: 'overlap', at: [150, 50] },
    ])
  })

  test('sides that lie on each other', () => {
    const folded: Loop = [
      [0, 0],
      [100, 0],
      [100, 50],
      [60, 50],
      [60, 0],
      [40, 0],
      [40, 50],
      [0, 50],
    ]
    expect(selfCrossings(folded).map(({ kind }) => kind)).toContain('overlap')
  })

  test('a five-pointed star: five crossings, a middle that is run round twice, five tips', () => {
    const star = [0, 2, 4, 1, 3].map((corner): readonly [number, number] => {
      const angle = (corner * 2 * Math.PI) / 5
      return [100 * Math.cos(angle), 100 * Math.sin(angle)]
    })
    expect(selfCrossings(star)).toHaveLength(5)
    expect(lobes(star)).toHaveLength(6)
  })

  test('a repeated point is no crossing', () => {
    expect(
      crossings([
        [0, 0],
        [0, 0],
        [80, 0],
        [80, 75],
        [0, 75],
        [0, 0],
      ]),
    ).toEqual([])
  })
})

test('clean outlines have none, whichever way they run', () => {
  fc.assert(
    fc.property(starOutline, (outline) => {
      expect(crossings(outline)).toEqual([])
      expect(crossings(outline.toReversed())).toEqual([])
    }),
  )
  expect(crossings(circle([0, 0], 80))).toEqual([])
  expect(crossings(noisyOutline(2000, 0.2))).toEqual([])
})

const gridPoint = fc.tuple(fc.integer({ min: -300, max: 300 }), fc.integer({ min: -300, max: 300 }))

test('every pair of sides is looked at: the same places as trying all of them', () => {
  fc.assert(
    fc.property(fc.array(gridPoint, { minLength: 4, maxLength: 14 }), (points) => {
      const found = selfCrossings(points, 10_000)
        .filter(({ kind }) => kind === 'crossing')
        .map(({ at }) => at)
      const tried = plainCrossings(points)
      const near = (a: Point, places: Loop) => places.some((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-5)
      for (const at of found) expect(near(at, tried)).toBe(true)
      for (const at of tried) expect(near(at, found)).toBe(true)
    }),
  )
})

/** For every pair of sides without a corner in common: signs of four triangles, and where the two lines meet. */
function plainCrossings(points: Loop): Loop {
  const count = points.length
  const twice = (a: Point, b: Point, c: Point) =>
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  const crossed: Point[] = []
  for (let i = 0; i < count; i++) {
    for (let j = i + 2; j < count; j++) {
      const [a, b, c, d] = [points[i]!, points[i + 1]!, points[j]!, points[(j + 1) % count]!]
      if ((j + 1) % count === i || twice(a, b, c) * twice(a, b, d) >= 0) continue
      if (twice(c, d, a) * twice(c, d, b) >= 0) continue
      const share = twice(c, d, a) / (twice(c, d, a) - twice(c, d, b))
      crossed.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])])
    }
  }
  return crossed
}

test('points in any order: what comes out is clean and has the same points', () => {
  fc.assert(
    fc.property(
      starOutline.chain((loop) => fc.shuffledSubarray([...loop], { minLength: loop.length })),
      (points) => {
        const order = uncrossed(points)
        if (order === null) return
        expect(crossings(order)).toEqual([])
        expect(order.toSorted()).toEqual(points.toSorted())
      },
    ),
    { numRuns: 40 },
  )
})

test('thousands of sides in a comb have no crossing, lying or standing', () => {
  const comb = (turned: boolean): Loop => {
    const teeth = Array.from(
      { length: 5000 },
      (_, index) => [index % 2 === 0 ? 0 : 900, index * 0.2] as const,
    )
    const points: Loop = [...teeth, [-50, 1000], [-50, 0]]
    return turned ? points.map(([u, v]) => [v, u] as const) : points
  }
  expect(crossings(comb(false))).toEqual([])
  expect(crossings(comb(true))).toEqual([])
})

test('more crossings than asked for are not listed', () => {
  const tangle = Array.from(
    { length: 400 },
    (_, index) => [(index * 7919) % 997, (index * 104_729) % 991] as const,
  )
  expect(crossings(tangle, 7)).toHaveLength(7)
})
