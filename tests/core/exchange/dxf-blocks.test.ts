import { describe, expect, test } from 'vitest'
import { readLoops } from '#lib/exchange/outline/index'
import { block, insert } from './draw-blocks'
import { clamped, ellipse, spline } from './draw-curves'
import { arc, circle, codes, dxf, entity, line, type Pair, polyline, read, square, type XY } from './draw-dxf'

/** A square of 10 with one corner cut, so that its mirror image is another figure. */
const flag: readonly XY[] = [
  [0, 0],
  [10, 0],
  [10, 6],
  [6, 10],
  [0, 10],
]

function placed(entities: readonly (readonly Pair[])[], ...blocks: readonly (readonly Pair[])[][]): string {
  return dxf(entities, 4, { blocks: blocks.flat() })
}

const flagBlock = [...block('FLAG', [polyline(flag)])]

/** Corners, wherever the loop begins. */
function cornersOf(text: string): readonly XY[] {
  const { loops, findings } = read(text)
  expect(findings).toEqual([])
  return [...loops[0]!.points]
    .map(([u, v]): XY => [Math.round(u * 1e6) / 1e6 + 0, Math.round(v * 1e6) / 1e6 + 0])
    .sort(inOrder)
}

function inOrder(a: XY, b: XY): number {
  return a[0] - b[0] || a[1] - b[1]
}

function expectCorners(text: string, corners: readonly XY[]): void {
  expect(cornersOf(text)).toEqual([...corners].sort(inOrder))
}

describe('blocks', () => {
  test('scale -1 along x mirrors', () => {
    expectCorners(
      placed([insert('FLAG', [50, 20], { scale: [-1, 1] })], flagBlock),
      flag.map(([x, y]): XY => [50 - x, 20 + y]),
    )
  })

  test('a mirrored arc bulges to the other side', () => {
    const half = [...block('D', [arc([0, 0], 20, 270, 90), line([0, 20], [0, -20])])]
    const { loops } = read(placed([insert('D', [100, 0], { scale: [-2, 2] })], half))
    expect(loops[0]!.boundsMm[0]).toBeCloseTo(60, 9)
    expect(loops[0]!.boundsMm[2]).toBeCloseTo(100, 9)
    expect(Math.abs(loops[0]!.areaMm2 - Math.PI * 800)).toBeLessThan((2 / 3) * 0.005 * 130)
  })

  test('scale comes first, then the turn, about the base point', () => {
    const based = [...block('FLAG', [polyline(flag)], [10, 0])]
    expectCorners(
      placed([insert('flag', [100, 50], { scale: [2, 3], turnDeg: 90 })], based),
      flag.map(([x, y]): XY => [100 - 3 * y, 50 + 2 * (x - 10)]),
    )
  })

  test('nested inserts multiply', () => {
    const inner = [...block('INNER', [insert('FLAG', [1, 2], { scale: [2, 2], turnDeg: 90 })])]
    const outer = [...block('OUTER', [insert('INNER', [5, 0], { scale: [3, 1] })])]
    expectCorners(
      placed([insert('OUTER', [7, 9])], outer, inner, flagBlock),
      flag.map(([x, y]): XY => [7 + 5 + 3 * (1 - 2 * y), 9 + 2 + 2 * x]),
    )
  })

  test('an array steps along its turned axes, unscaled', () => {
    const inserted = insert('FLAG', [0, 0], {
      scale: [0.1, 0.1],
      turnDeg: 90,
      columns: 3,
      rows: 2,
      spacing: [20, 40],
    })
    const { loops } = readLoops({
      name: 'a.dxf',
      text: placed([polyline(square(400, [-200, -200])), inserted], flagBlock),
      unit: null,
    })
    const lowest = loops
      .slice(1)
      .map(({ boundsMm }): XY => [Math.round(boundsMm[2]), Math.round(boundsMm[1])])
      .sort(inOrder)
    expect(lowest).toEqual([
      [-40, 0],
      [-40, 20],
      [-40, 40],
      [0, 0],
      [0, 20],
      [0, 40],
    ])
  })

  test('pieces of a block join with pieces beside it', () => {
    const three = [...block('U', [polyline([...square(100)], false)])]
    const reading = read(placed([insert('U', [0, 0]), line([0, 100], [0, 0])], three))
    expect(reading.loops[0]!.areaMm2).toBe(10_000)
  })

  test('with lettering alone a block is left out with a notice', () => {
    const title = [...block('TITLE', [entity('TEXT'), entity('ATTDEF')])]
    const reading = read(placed([polyline(square(100)), insert('TITLE', [0, 0], { columns: 5 })], title))
    expect(reading).toMatchObject({
      verdict: 'accept-with-notice',
      findings: [{ code: 'lettering-left-out', figures: { count: 2 } }],
    })
  })

  test('what can not be read in a block is refused once, and only where the block is inserted', () => {
    const hatched = [...block('H', [entity('HATCH')])]
    const frame = polyline(square(100))
    expect(read(placed([frame], hatched)).verdict).toBe('accept')
    expect(read(placed([frame, insert('H', [0, 0]), insert('H', [9, 9])], hatched))).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'entity-not-read', figures: { count: 1 } }],
    })
  })
})

describe('unequal scale', () => {
  test('a circle becomes an ellipse, the same as one that was drawn', () => {
    const round = [...block('O', [circle([0, 0], 10)])]
    const [{ points } = { points: [] }] = read(
      placed([insert('O', [200, 100], { scale: [5, 2], turnDeg: 30 })], round),
    ).loops
    const turn = Math.PI / 6
    const drawn = read(dxf([ellipse([200, 100], [50 * Math.cos(turn), 50 * Math.sin(turn)], 0.4)])).loops[0]!
    for (const [u, v] of points) {
      const [x, y] = [u - 200, v - 100]
      const along = (x * Math.cos(turn) + y * Math.sin(turn)) / 50
      const across = (y * Math.cos(turn) - x * Math.sin(turn)) / 20
      expect(Math.hypot(along, across)).toBeCloseTo(1, 9)
    }
    expect(points.length).toBeGreaterThan(100)
    const [loop] = read(placed([insert('O', [200, 100], { scale: [5, 2], turnDeg: 30 })], round)).loops
    expect(Math.abs(loop!.areaMm2 - drawn.areaMm2)).toBeLessThan(0.9)
    drawn.boundsMm.forEach((mm, index) => {
      expect(loop!.boundsMm[index]).toBeCloseTo(mm, 6)
    })
  })

  test.each([
    ['large', 1000, 300],
    ['mirrored', -7, 3],
    ['mirrored the other way', 7, -3],
  ])('rounded corners in a block, %s: chords lie within 0.005 mm', (_, x, y) => {
    const d = [
      ...block('D', [
        polyline([
          [0, -1, 1],
          [0, 1],
          [-2, 1],
          [-2, -1],
        ]),
      ]),
    ]
    const { loops } = read(placed([insert('D', [0, 0], { scale: [x, y] })], d))
    const arcPoints = loops[0]!.points.filter(([u]) => u / x > 1e-9)
    expect(arcPoints.length).toBeGreaterThan(10)
    for (const [u, v] of arcPoints) expect(Math.hypot(u / x, v / y)).toBeCloseTo(1, 9)
    const area = Math.abs(x * y) * (4 + Math.PI / 2)
    expect(loops[0]!.areaMm2).toBeLessThanOrEqual(area)
    expect(loops[0]!.areaMm2).toBeGreaterThan(
      area - (2 / 3) * 0.005 * Math.PI * Math.max(Math.abs(x), Math.abs(y)),
    )
  })

  test('splines and ellipses are flattened after it', () => {
    const knots = [0, 0, 0, 0, 1, 1, 1, 1]
    const bow: readonly XY[] = [
      [0, 0],
      [0, 1],
      [2, 1],
      [2, 0],
    ]
    const small = [...block('S', [spline(3, knots, bow), line([0, 0], [2, 0])])]
    const [loop] = read(placed([insert('S', [0, 0], { scale: [500, 300] })], small)).loops
    expect(Math.abs(loop!.areaMm2 - 0.6 * 2 * 500 * 300)).toBeLessThan((2 / 3) * 0.005 * 1500)
    const egg = [...block('E', [ellipse([0, 0], [1, 0], 0.5)])]
    const [oval] = read(placed([insert('E', [0, 0], { scale: [100, 400] })], egg)).loops
    expect(Math.abs(oval!.areaMm2 - Math.PI * 100 * 200)).toBeLessThan((2 / 3) * 0.005 * 970)
  })
})

describe('blocks that can not be placed', () => {
  test('one that holds itself, through another', () => {
    const a = [...block('A', [polyline(flag), insert('B', [1, 1])])]
    const b = [...block('B', [insert('a', [1, 1])])]
    const reading = read(placed([insert('A', [0, 0])], a, b))
    expect(codes(reading)).toEqual(['block-in-itself'])
    expect(reading.findings[0]!.text).toContain('A > B > A')
  })

  const nested = (levels: number) =>
    Array.from({ length: levels }, (_, index) => [
      ...block(`L${index}`, [index + 1 < levels ? insert(`L${index + 1}`, [1, 0]) : polyline(flag)]),
    ])

  test('16 levels are read, 17 are not', () => {
    expect(read(placed([insert('L0', [0, 0])], ...nested(16))).verdict).toBe('accept')
    const reading = read(placed([insert('L0', [0, 0])], ...nested(17)))
    expect(codes(reading)).toEqual(['blocks-too-deep'])
    expect(reading.findings[0]!.figures).toMatchObject({ mostNested: 16 })
  })

  test('a deep block is found also where a shallow place was looked at before', () => {
    const reading = read(placed([insert('L1', [0, 0]), insert('L0', [0, 0])], ...nested(17)))
    expect(codes(reading)).toEqual(['blocks-too-deep'])
  })

  test('a giant array, and blocks that multiply, are refused at once with their figure', () => {
    const begun = performance.now()
    const giant = read(placed([insert('FLAG', [0, 0], { columns: 30_000, rows: 30_000 })], flagBlock))
    expect(giant).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'blocks-too-many', figures: { pieces: 1_800_000_000 } }],
    })
    const bomb = Array.from({ length: 15 }, (_, index) => [
      ...block(`L${index}`, index < 14 ? Array(10).fill(insert(`L${index + 1}`, [1, 0])) : [entity('TEXT')]),
    ])
    expect(codes(read(placed([insert('L0', [0, 0])], ...bomb)))).toEqual(['blocks-too-many'])
    expect(performance.now() - begun).toBeLessThan(1000)
  })

  test('a block with many points, inserted often, meets the limit of points', () => {
    const ring = polyline(Array.from({ length: 2000 }, (_, index): XY => [index % 50, index / 50]))
    const reading = read(
      placed([insert('R', [0, 0], { columns: 60, spacing: [90, 0] })], [...block('R', [ring])]),
    )
    expect(codes(reading)).toEqual(['too-many-points'])
  })

  test('a curve without length, inserted often, meets it as well', () => {
    const still = spline(3, clamped(3, 5000), Array(5000).fill([1, 1]))
    const text = placed([insert('S', [0, 0], { columns: 200, rows: 200 })], [...block('S', [still])])
    const begun = performance.now()
    expect(codes(read(text))).toEqual(['too-many-points'])
    expect(performance.now() - begun).toBeLessThan(5000)
  })

  test.each([
    ['a block that is not there', insert('NONE', [0, 0]), 'block-missing'],
    ['a block of another file', insert('XREF', [0, 0]), 'block-elsewhere'],
    ['scale 0', insert('FLAG', [0, 0], { scale: [0, 1] }), 'insert-scale'],
    ['columns below 0', insert('FLAG', [0, 0], { columns: -2 }), 'insert-array'],
    ['columns and a half', insert('FLAG', [0, 0], { columns: 1.5 }), 'insert-array'],
    ['scaled off the map', insert('FLAG', [0, 0], { scale: [1e300, 1e300] }), 'too-far'],
  ])('%s', (_, inserted, code) => {
    const elsewhere = [...block('XREF', [], [0, 0], 4)]
    const reading = read(placed([polyline(square(400, [-99, -99])), inserted], flagBlock, elsewhere))
    expect(reading).toMatchObject({ verdict: 'refuse', findings: [{ code }] })
    expect(reading.findings[0]!.place).toMatch(/^line \d+$/)
  })
})
