import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Mark,
  type PictureRequest,
  type PictureToFace,
  type Pixel,
  pictureToFace,
  projected,
} from '#lib/core/geometry/homography/index'
import type { Point } from '#lib/core/geometry/index'
import {
  asking,
  type Camera,
  camera,
  corners,
  marksAt,
  measured,
  middlePx,
  shot,
  twelve,
} from './sample-camera'

function fitted(request: PictureRequest): PictureToFace {
  const outcome = pictureToFace(request)
  if (!outcome.ok) throw new Error(outcome.reason)
  return outcome.result.value
}

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const someCamera: fc.Arbitrary<Camera> = fc.record({
  tiltDeg: between(-60, 60),
  turnDeg: between(-180, 180),
  distanceMm: between(600, 4000),
  focalPx: between(1500, 8000),
  aimMm: fc.tuple(between(100, 300), between(50, 250)),
})

/** Four to twelve places near the corners, the edges and within, so that no four of them are all but in a line. */
const somePlaces: fc.Arbitrary<readonly Point[]> = fc
  .record({
    count: fc.integer({ min: 4, max: 12 }),
    jitter: fc.array(between(-20, 20), { minLength: 24, maxLength: 24 }),
  })
  .map(({ count, jitter }) =>
    twelve
      .slice(0, count)
      .map(([u, v], index): Point => [u + jitter[2 * index]!, v + jitter[2 * index + 1]!]),
  )

const inside: fc.Arbitrary<readonly Point[]> = fc.array(fc.tuple(between(0, 400), between(0, 300)), {
  minLength: 3,
  maxLength: 8,
})

describe('marks without a fault', () => {
  test('are put where they are, and so is everything else of the face', () => {
    fc.assert(
      fc.property(someCamera, somePlaces, inside, (by, places, others) => {
        const { marks, pointsMm } = fitted(
          asking(marksAt(places, by), { pointsPx: others.map((place) => shot(by, place)) }),
        )
        for (const { fittedMm, atMm } of marks) expect(apart(fittedMm, atMm)).toBeLessThan(1e-6)
        for (const [index, place] of others.entries()) {
          expect(apart(pointsMm[index]!, place)).toBeLessThan(1e-6)
        }
      }),
    )
  })

  test('the way to the face and back ends where it began', () => {
    fc.assert(
      fc.property(someCamera, somePlaces, inside, (by, places, others) => {
        const pixels = others.map((place) => shot(by, place))
        const { toFace, toPicture, placesPx } = fitted(asking(marksAt(places, by), { placesMm: others }))
        for (const [index, pixel] of pixels.entries()) {
          expect(apart(projected(toPicture, projected(toFace, pixel)), pixel)).toBeLessThan(1e-6)
          expect(apart(placesPx[index]!, pixel)).toBeLessThan(1e-6)
        }
      }),
    )
  })

  test('straight lines stay straight', () => {
    const { pointsMm } = fitted(
      asking(marksAt(corners), {
        pointsPx: [0, 0.2, 0.7, 1].map((share): Pixel => [1500 + 900 * share, 1900 - 700 * share]),
      }),
    )
    const [a, b, c, d] = pointsMm as [Point, Point, Point, Point]
    for (const [u, v] of [b, c]) {
      const off = ((d[0] - a[0]) * (v - a[1]) - (d[1] - a[1]) * (u - a[0])) / apart(a, d)
      expect(Math.abs(off)).toBeLessThan(1e-9)
    }
  })
})

describe('nothing depends on', () => {
  const outline: readonly Point[] = [
    [60, 50],
    [340, 60],
    [200, 280],
  ]
  const noisy = (seed: number) => measured(marksAt(twelve), 0.5, seed)
  const seeds = fc.integer({ min: 1, max: 1e6 })

  /** Moves, turns and scales, keeping the way round. */
  const similarity = fc.record({
    turn: between(-3, 3),
    scale: between(0.05, 20),
    x: between(-1e4, 1e4),
    y: between(-1e4, 1e4),
  })
  const moved = (
    {
      turn,
      scale,
      x,
      y,
    }: { readonly turn: number; readonly scale: number; readonly x: number; readonly y: number },
    [p, q]: Point,
  ): Point => [
    x + scale * (p * Math.cos(turn) - q * Math.sin(turn)),
    y + scale * (p * Math.sin(turn) + q * Math.cos(turn)),
  ]

  const outlinePx = outline.map((place) => shot(camera, place))

  test('where the picture begins, how it is turned and how fine it is', () => {
    fc.assert(
      fc.property(seeds, similarity, (seed, by) => {
        const marks = noisy(seed)
        const plain = fitted(asking(marks, { outlinePx }))
        const other = fitted(
          asking(
            marks.map((mark) => ({ ...mark, atPx: moved(by, mark.atPx) })),
            { outlinePx: outlinePx.map((pixel) => moved(by, pixel)) },
          ),
        )
        expect(other.rmsMm! / plain.rmsMm!).toBeCloseTo(1, 6)
        expect(other.outlineSlip! / plain.outlineSlip!).toBeCloseTo(1, 5)
        for (const [index, point] of plain.outlineMm!.entries()) {
          expect(apart(other.outlineMm![index]!, point)).toBeLessThan(1e-4)
        }
      }),
      { numRuns: 30 },
    )
  })

  test('where the datum of the face is, how it is turned, and its unit', () => {
    fc.assert(
      fc.property(seeds, similarity, (seed, by) => {
        const marks = noisy(seed)
        const plain = fitted(asking(marks, { outlinePx }))
        const other = fitted(
          asking(
            marks.map((mark) => ({ ...mark, atMm: moved(by, mark.atMm) })),
            { outlinePx },
          ),
        )
        expect(other.rmsMm! / (by.scale * plain.rmsMm!)).toBeCloseTo(1, 6)
        expect(other.outlineSlip! / plain.outlineSlip!).toBeCloseTo(1, 5)
        for (const [index, point] of plain.outlineMm!.entries()) {
          expect(apart(other.outlineMm![index]!, moved(by, point)) / by.scale).toBeLessThan(1e-4)
        }
      }),
      { numRuns: 30 },
    )
  })

  test('the order of the marks', () => {
    const marks = noisy(5)
    const plain = fitted(asking(marks, { outlinePx }))
    const turned = fitted(asking([...marks].reverse(), { outlinePx }))
    for (const [index, point] of plain.outlineMm!.entries()) {
      expect(apart(turned.outlineMm![index]!, point)).toBeLessThan(1e-6)
    }
  })

  test('what was sent stays as it was', () => {
    const request = asking(noisy(9), { outlinePx })
    const before = structuredClone(request)
    pictureToFace(request)
    expect(request).toEqual(before)
  })
})

describe('marks with noise of 0.5 mm along u and v', () => {
  const spreadMm = 0.5

  test('the spread that is told is the spread that was put in', () => {
    // 60 pictures with 16 figures to spare: the mean of s² has a standard deviation of sqrt(2 / 960) = 4.6 %.
    const seeds = Array.from({ length: 60 }, (_, index) => 101 + 37 * index)
    const values = seeds.map((seed) => fitted(asking(measured(marksAt(twelve), spreadMm, seed))))
    const variance = values.reduce((sum, value) => sum + value.spreadMm! ** 2, 0) / values.length
    expect(variance / spreadMm ** 2).toBeGreaterThan(0.8)
    expect(variance / spreadMm ** 2).toBeLessThan(1.2)
    for (const { rmsMm, spreadMm: spread, largestMm, marks, freedom } of values) {
      expect(freedom).toBe(16)
      // r_rms² n = s² f, by their definitions.
      expect(rmsMm! ** 2 * 12).toBeCloseTo(spread! ** 2 * 16, 9)
      expect(largestMm).toBe(Math.max(...marks.map((mark) => mark.residualMm!)))
    }
  })

  test('a point is out by the slip that is told, within the marks and beyond', () => {
    // 400 pictures: a standard deviation is known within 1 / sqrt(800) = 3.5 %, and the slip holds to the first order.
    for (const place of [
      [210, 160],
      [-80, 390],
    ] as const) {
      const pixel = shot(camera, place)
      const near: readonly Pixel[] = [pixel, [pixel[0] + 0.01, pixel[1]], [pixel[0], pixel[1] + 0.01]]
      const { outlineSlip } = fitted(asking(marksAt(corners), { outlinePx: near }))
      const off = Array.from({ length: 400 }, (_, index) => {
        const [u, v] = fitted(
          asking(measured(marksAt(corners), spreadMm, 1001 + 53 * index), { pointsPx: [pixel] }),
        ).pointsMm[0]!
        return [u - place[0], v - place[1]] as const
      })
      const mean = (each: (at: Point) => number) => off.reduce((sum, at) => sum + each(at), 0) / off.length
      const [uu, uv, vv] = [mean(([u]) => u * u), mean(([u, v]) => u * v), mean(([, v]) => v * v)]
      const worst = Math.sqrt((uu + vv) / 2 + Math.hypot((uu - vv) / 2, uv))
      expect(worst / (outlineSlip! * spreadMm)).toBeGreaterThan(0.85)
      expect(worst / (outlineSlip! * spreadMm)).toBeLessThan(1.15)
    }
  })
})

describe('what follows from drawings', () => {
  const square: readonly Point[] = [
    [0, 0],
    [200, 0],
    [200, 200],
    [0, 200],
  ]
  const squareOn: Camera = { ...camera, tiltDeg: 0, turnDeg: 0, aimMm: [100, 100] }
  const slipAt = (place: Point) => {
    const [x, y] = shot(squareOn, place)
    const outlinePx: readonly Pixel[] = [
      [x, y],
      [x + 1e-6, y],
      [x, y + 1e-6],
    ]
    return fitted(asking(marksAt(square, squareOn), { outlinePx })).outlineSlip!
  }

  test('amid a square the diagonals cross: each corner moves the crossing by half its way across, so 1 mm makes sqrt(1/2)', () => {
    expect(slipAt([100, 100])).toBeCloseTo(Math.SQRT1_2, 6)
  })

  test('on a mark 1 mm makes 1 mm', () => expect(slipAt([200, 0])).toBeCloseTo(1, 6))

  test.each([0, 20, 45, 60])('in the middle of the picture a tilt of %d degrees is told', (tiltDeg) => {
    const [x, y] = middlePx
    const outlinePx: readonly Pixel[] = [
      [x - 50, y - 50],
      [x + 50, y - 50],
      [x + 50, y + 50],
      [x - 50, y + 50],
    ]
    const { viewDeg } = fitted(asking(marksAt(twelve, { ...camera, tiltDeg }), { outlinePx }))
    expect(viewDeg).toBeCloseTo(tiltDeg, 4)
  })

  test('square on, a pixel is distance over focal length everywhere', () => {
    const { mmPerPixel } = fitted(asking(marksAt(square, squareOn)))
    expect(mmPerPixel.least).toBeCloseTo(900 / 3200, 9)
    expect(mmPerPixel.most).toBeCloseTo(900 / 3200, 9)
  })

  test('an outline that was traced clockwise comes out counter-clockwise', () => {
    const places: readonly Point[] = [
      [50, 50],
      [50, 250],
      [350, 250],
    ]
    const { outlineMm } = fitted(
      asking(marksAt(corners), { outlinePx: places.map((place) => shot(camera, place)) }),
    )
    expect(apart(outlineMm![0]!, places[0]!)).toBeLessThan(1e-6)
    expect(apart(outlineMm![1]!, places[2]!)).toBeLessThan(1e-6)
  })

  test('a picture of the back, said to be one, is placed all the same', () => {
    const back = (marks: readonly Mark[]) =>
      marks.map(({ atPx: [x, y], ...mark }) => ({ ...mark, atPx: [-x, y] as const }))
    const { marks, toPicture } = fitted(asking(back(marksAt(twelve)), { mirrored: true }))
    for (const { fittedMm, atMm } of marks) expect(apart(fittedMm, atMm)).toBeLessThan(1e-6)
    const [x, y] = shot(camera, [120, 30])
    expect(apart(projected(toPicture, [120, 30]), [-x, y])).toBeLessThan(1e-6)
  })
})
