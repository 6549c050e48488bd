import { describe, expect, test } from 'vitest'
import { type Mark, type PictureRequest, pictureToFace } from '#lib/core/geometry/homography/index'
import type { Point } from '#lib/core/geometry/index'
import type { Result } from '#lib/core/result'
import { sources } from '#lib/core/sources'
import { asking, camera, corners, marksAt, measured, middlePx, shot, twelve } from './sample-camera'

/** What a fit says beside its figures, and what it refuses. */

function answered(request: PictureRequest) {
  const outcome = pictureToFace(request)
  if (!outcome.ok) throw new Error(outcome.reason)
  return outcome.result
}

function refused(request: PictureRequest) {
  const outcome = pictureToFace(request)
  if (outcome.ok) throw new Error('answered')
  expect(outcome.findings).toHaveLength(1)
  expect(outcome.findings[0]).toMatchObject({
    severity: 'stop',
    text: outcome.reason,
    cure: expect.any(String),
  })
  return outcome.findings[0]!
}

const codes = ({ findings }: Result<unknown>) => findings.map(({ code }) => code)
const found = ({ findings }: Result<unknown>, code: string) =>
  findings.find((finding) => finding.code === code)
const inPicture = (places: readonly Point[]) => places.map((place) => shot(camera, place))
const swapped = (marks: readonly Mark[], a: number, b: number) =>
  marks.map((mark, index) => ({
    ...mark,
    atPx: marks[index === a ? b : index === b ? a : index]!.atPx,
  }))

const within: readonly Point[] = [
  [60, 50],
  [340, 60],
  [200, 280],
]

describe('residuals', () => {
  test('with four marks none is known, and that is said', () => {
    const result = answered(asking(measured(marksAt(corners), 3, 4), { outlinePx: inPicture(within) }))
    expect(codes(result)).toContain('no-residual')
    expect(result.value).toMatchObject({
      freedom: 0,
      rmsMm: null,
      largestMm: null,
      spreadMm: null,
      outlineSpreadMm: null,
    })
    expect(result.value.marks.map((mark) => [mark.residualMm, mark.fromOthersMm])).toEqual(
      corners.map(() => [null, null]),
    )
    expect(result.value.outlineSlip).toBeGreaterThan(0)
  })

  test('with good marks round a flat outline nothing is said', () => {
    const result = answered(asking(measured(marksAt(twelve), 0.3, 8), { outlinePx: inPicture(within) }))
    expect(result.findings).toEqual([])
  })

  test('with five, each is compared with the other four, but none is blamed', () => {
    const places: readonly Point[] = [...corners, [180, 140]]
    const marks = marksAt(places).map((mark) =>
      mark.tag === 'D5' ? { ...mark, atMm: [186, 140] as const } : mark,
    )
    const result = answered(asking(marks))
    // The four others are exact, so they put it where it is.
    expect(result.value.marks[4]?.fromOthersMm).toBeCloseTo(6, 6)
    expect(result.value.freedom).toBe(2)
    expect(codes(result)).toEqual([])
  })
})

describe('a mark that stands out', () => {
  test('is named, with what the others say without it', () => {
    const marks = measured(marksAt(twelve), 0.3, 21).map((mark) =>
      mark.tag === 'D6' ? { ...mark, atMm: [mark.atMm[0] + 4, mark.atMm[1] - 3] as const } : mark,
    )
    const finding = found(answered(asking(marks)), 'mark-stands-out')
    expect(finding).toMatchObject({ severity: 'look', place: 'D6' })
    const without = answered(asking(marks.filter((mark) => mark.tag !== 'D6')))
    expect(finding?.figures?.othersRmsMm).toBeCloseTo(without.value.rmsMm!, 9)
    expect(finding?.figures?.fromOthersMm).toBeGreaterThan(4)
    expect(found(without, 'mark-stands-out')).toBeUndefined()
  })

  test('by 1 mm among marks without a fault', () => {
    const marks = marksAt(twelve).map((mark) =>
      mark.tag === 'D3' ? { ...mark, atMm: [401, 300] as const } : mark,
    )
    expect(found(answered(asking(marks)), 'mark-stands-out')).toMatchObject({ place: 'D3' })
    expect(codes(answered(asking(marksAt(twelve))))).toEqual([])
  })

  test('is blamed by mere chance in about one picture of twenty', () => {
    const eight = marksAt(twelve.slice(0, 8))
    const pictures = Array.from({ length: 120 }, (_, index) =>
      answered(asking(measured(eight, 0.5, 5003 + 71 * index))),
    )
    const blamed = pictures.filter((picture) => codes(picture).includes('mark-stands-out')).length
    // Six are expected; more than 15 in fewer than one run of a thousand, none in two.
    expect(blamed).toBeLessThanOrEqual(15)
    expect(blamed).toBeGreaterThan(0)
  }, 30_000)
})

describe('marks in a line', () => {
  const line = (offMm: number): readonly Point[] => [
    [0, 100],
    [130, 100 + offMm],
    [260, 100 - offMm],
    [400, 100],
  ]

  test('all of them: refused', () => {
    expect(refused(asking(marksAt(line(0))))).toMatchObject({ code: 'marks-in-line', place: null })
  })

  test('all but one: refused, and that one is named', () => {
    const places: readonly Point[] = [[150, 280], ...line(0).slice(1)]
    expect(refused(asking(marksAt(places)))).toMatchObject({ code: 'marks-in-line', place: 'D1' })
    expect(refused(asking(marksAt([...places, [60, 100]])))).toMatchObject({
      code: 'marks-in-line',
      place: 'D1',
    })
  })

  test('three at one place, or two of four: refused', () => {
    const twice: readonly Point[] = [corners[0]!, corners[0]!, corners[1]!, corners[2]!]
    expect(refused(asking(marksAt(twice))).code).toBe('marks-in-line')
    const thrice: readonly Point[] = [corners[0]!, corners[0]!, corners[0]!, corners[1]!, corners[2]!]
    expect(refused(asking(marksAt(thrice))).code).toBe('marks-in-line')
  })

  test('nearly: told with the figure, and how the outline slips', () => {
    const result = answered(asking(marksAt(line(4)), { outlinePx: inPicture(within) }))
    const finding = found(result, 'marks-nearly-in-line')
    expect(finding?.severity).toBe('look')
    expect(finding?.figures?.widthToLength).toBeGreaterThan(0.002)
    expect(finding?.figures?.widthToLength).toBeLessThan(0.05)
    expect(result.value.outlineSlip).toBeGreaterThan(20)
  })

  test('two lines of three that cross fix the fit', () => {
    const places: readonly Point[] = [
      [0, 0],
      [200, 150],
      [400, 300],
      [400, 0],
      [0, 300],
    ]
    expect(codes(answered(asking(marksAt(places))))).toEqual([])
  })
})

describe('an outline outside its marks', () => {
  const cornerOf: readonly Point[] = [
    [0, 0],
    [80, 0],
    [80, 60],
    [0, 60],
  ]

  test('far from marks in a corner: how far, and how it slips', () => {
    const result = answered(asking(marksAt(cornerOf), { outlinePx: inPicture(within) }))
    const finding = found(result, 'outline-outside-marks')
    // The farthest is [340, 60]: 260 mm off the edge u = 80.
    expect(finding).toMatchObject({ severity: 'look' })
    expect(finding?.figures?.beyondMm).toBeCloseTo(260, 6)
    expect(finding?.figures?.spanMm).toBeCloseTo(100, 6)
    expect(finding?.figures?.outlineSlip).toBe(result.value.outlineSlip)
    expect(result.value.outlineSlip).toBeGreaterThan(5)
  })

  test('a little: noted', () => {
    const outline: readonly Point[] = [
      [50, -10],
      [350, 50],
      [200, 250],
    ]
    const finding = found(
      answered(asking(marksAt(twelve), { outlinePx: inPicture(outline) })),
      'outline-outside-marks',
    )
    expect(finding?.severity).toBe('note')
    expect(finding?.figures?.beyondMm).toBeCloseTo(10, 6)
  })
})

describe('the way round', () => {
  const mirror = (marks: readonly Mark[]) =>
    marks.map(({ atPx: [x, y], ...mark }) => ({ ...mark, atPx: [4032 - x, y] as const }))

  test('a mirrored picture is refused unless it was said', () => {
    expect(refused(asking(mirror(marksAt(twelve)))).code).toBe('picture-mirrored')
    expect(answered(asking(mirror(marksAt(twelve)), { mirrored: true })).findings).toEqual([])
  })

  test('one that was said to be mirrored and is not', () => {
    expect(refused(asking(marksAt(twelve), { mirrored: true })).code).toBe('picture-not-mirrored')
  })

  test('two marks swapped: over the diagonal it is a mirrored picture, along an edge no picture at all', () => {
    const four = marksAt(corners)
    expect(refused(asking(swapped(four, 0, 2))).code).toBe('picture-mirrored')
    expect(refused(asking(swapped(four, 0, 1))).code).toBe('marks-beyond-horizon')
  })
})

test('marks that have nothing to do with their places: the fit does not come to rest, and that is said', () => {
  const nowhere: readonly Mark[] = [
    { tag: 'D1', atPx: [3800, 2300], atMm: [110, 210] },
    { tag: 'D2', atPx: [2300, 2700], atMm: [190, 290] },
    { tag: 'D3', atPx: [1400, 2700], atMm: [130, 0] },
    { tag: 'D4', atPx: [2900, 1900], atMm: [180, 10] },
    { tag: 'D5', atPx: [3500, 2100], atMm: [50, 160] },
  ]
  expect(refused(asking(nowhere)).code).toBe('fit-not-converged')
})

describe('through infinity', () => {
  // The depth is 900 + up sin 35°: 0 at 1569 mm below the aim, where the camera's own plane cuts the face.
  const marks = marksAt(corners)
  const horizon = middlePx[1] - 3200 / Math.tan((35 * Math.PI) / 180)

  test('a point of the picture above the horizon is refused by its number', () => {
    const outlinePx = [...inPicture(within), [middlePx[0], horizon - 1] as const]
    expect(refused(asking(marks, { outlinePx }))).toMatchObject({
      code: 'beyond-horizon',
      place: 'point of the outline no. 4',
    })
    expect(refused(asking(marks, { pointsPx: [[middlePx[0], horizon - 1]] })).place).toBe(
      'point of the picture no. 1',
    )
    expect(
      answered(asking(marks, { pointsPx: [[middlePx[0], horizon + 1]] })).value.pointsMm[0]![1],
    ).toBeGreaterThan(1e5)
  })

  test('a place of the face behind the camera is refused', () => {
    const behind = (mm: number): Point => [
      200 - mm * Math.sin((10 * Math.PI) / 180),
      150 - mm * Math.cos((10 * Math.PI) / 180),
    ]
    expect(refused(asking(marks, { placesMm: [[200, 150], behind(1570)] })).place).toBe(
      'place of the face no. 2',
    )
    expect(pictureToFace(asking(marks, { placesMm: [behind(1568)] })).ok).toBe(true)
  })
})

describe('a bent area', () => {
  // Derived: R = 1000 mm over the diagonal of 500 mm: R - sqrt(R² - 250²) = 31.754 mm; 2 (R asin 0.25 - 250) = 5.361 mm.
  test.each(['single', 'double'] as const)('%s: what a plane is off by, from the radius', (kind) => {
    const marks = marksAt(twelve)
    const finding = found(answered(asking(marks, { curvature: { kind, radiusMm: 1000 } })), 'area-bent')
    expect(finding?.severity).toBe('look')
    expect(finding?.figures?.spanMm).toBeCloseTo(500, 9)
    expect(finding?.figures?.sagittaMm).toBeCloseTo(31.754, 3)
    expect(finding?.figures?.longerMm).toBeCloseTo(5.361, 3)
    const view = finding?.figures?.viewDeg as number
    expect(finding?.figures?.sidewaysMm).toBeCloseTo(31.754 * Math.tan((view * Math.PI) / 180), 2)
    expect(Math.abs(view - 35)).toBeLessThan(5)
  })

  test('a span of more than the bend is the whole bend', () => {
    const finding = found(
      answered(asking(marksAt(twelve), { curvature: { kind: 'single', radiusMm: 100 } })),
      'area-bent',
    )
    expect(finding?.figures?.sagittaMm).toBeCloseTo(100, 9)
  })
})

describe('the working', () => {
  const result = answered(
    asking(measured(marksAt(twelve), 0.4, 3), {
      outlinePx: inPicture(within),
      curvature: { kind: 'single', radiusMm: 900 },
    }),
  )

  test('each line names a source that is known', () => {
    for (const { sourceId } of result.working) expect(Object.keys(sources)).toContain(sourceId)
    expect(result.working.map(({ symbol }) => symbol)).toEqual([
      'u',
      'v',
      'f',
      'r_rms',
      'r_max',
      's',
      'k',
      's_outline',
      'h',
      'd',
    ])
  })

  test.each(
    result.working.filter(({ symbol }) => ['u', 'v', 'f', 'r_rms', 's', 's_outline', 'h'].includes(symbol)),
  )('$symbol comes out by hand from the figures that stand there', ({ numbers, value, unit }) => {
    const sum = numbers
      .replaceAll(' x ', ' * ')
      .replaceAll('²', ' ** 2')
      .replaceAll('sqrt', 'Math.sqrt')
      .replaceAll(/- -/g, '+ ')
    expect(sum).toMatch(/^[\d.()+\-*/\sMathsqrte]+$/)
    const byHand = Number(new Function(`return ${sum}`)())
    expect(Math.abs(byHand - value)).toBeLessThan(unit === 'mm' ? 0.01 : 1e-9)
  })
})

describe('misuse', () => {
  const marks = marksAt(corners)
  test.each([
    ['three marks', asking(marks.slice(0, 3)), /at least four marks, got 3/],
    ['a tag twice', asking([...marks, marks[0]!]), /D1 is there twice/],
    [
      'two points as an outline',
      asking(marks, { outlinePx: marks.slice(0, 2).map((mark) => mark.atPx) }),
      /got 2/,
    ],
    ['a figure that is none', asking(marks, { pointsPx: [[Number.NaN, 0]] }), /is no point/],
    ['no radius', asking(marks, { curvature: { kind: 'single', radiusMm: 0 } }), /above 0 mm, got 0/],
  ])('%s: RangeError with the figure', (_what, request, words) => {
    expect(() => pictureToFace(request)).toThrow(RangeError)
    expect(() => pictureToFace(request)).toThrow(words)
  })
})
