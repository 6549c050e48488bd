import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type PictureToFace, type Pixel, pictureToFace } from '#lib/core/geometry/homography/index'
import type { Point } from '#lib/core/geometry/index'

/**
 * Sources: OpenCV (open source), cv2.findHomography with method 0, and MINPACK through SciPy; versions and command stand in
 * homography-opencv.json, made by homography-opencv.py beside it. Both make the same sum least as we do: of the squared
 * distances on the face, in mm. All cameras and marks are invented.
 *
 * OpenCV stops after ten steps on figures that it doesn't scale: with strong perspective and noise its own sum is up to 3 %
 * above MINPACK's, so there it bounds our sum, and MINPACK tells the places.
 */
interface Told {
  readonly placedMm: readonly Point[]
  readonly residualsMm: readonly number[]
  readonly sumMm2: number
}

interface Reference {
  readonly source: string
  readonly cases: readonly {
    readonly name: string
    readonly noiseMm: number
    readonly marks: readonly { readonly atPx: Pixel; readonly atMm: Point }[]
    readonly tracedPx: readonly Pixel[]
    readonly opencv: Told
    /** Null with four marks: the solution is one. */
    readonly minpack: Told | null
  }[]
}

const reference: Reference = JSON.parse(readFileSync('tests/reference/homography-opencv.json', 'utf8'))

/** Places and residuals, mm. */
const toleranceMm = 0.001

/** Sums of squares, relative: nothing but rounding. */
const toleranceOfSum = 1e-9

function fitted({ marks, tracedPx }: Reference['cases'][number]): PictureToFace {
  const outcome = pictureToFace({
    marks: marks.map((mark, index) => ({ ...mark, tag: `M${index + 1}` })),
    outlinePx: null,
    pointsPx: tracedPx,
    placesMm: [],
    mirrored: false,
    curvature: { kind: 'flat' },
  })
  if (!outcome.ok) throw new Error(outcome.reason)
  return outcome.result.value
}

const residualsOf = ({ marks }: PictureToFace) =>
  marks.map(({ fittedMm: [u, v], atMm }) => Math.hypot(u - atMm[0], v - atMm[1]))

const sumOfSquares = (values: readonly number[]) => values.reduce((total, value) => total + value * value, 0)

function expectAlike(ours: PictureToFace, theirs: Told): void {
  expect(ours.pointsMm).toHaveLength(theirs.placedMm.length)
  for (const [index, [u, v]] of theirs.placedMm.entries()) {
    const [ourU, ourV] = ours.pointsMm[index]!
    expect(Math.hypot(ourU - u, ourV - v), `point ${index + 1}`).toBeLessThan(toleranceMm)
  }
  for (const [index, residual] of residualsOf(ours).entries()) {
    expect(Math.abs(residual - theirs.residualsMm[index]!), `mark ${index + 1}`).toBeLessThan(toleranceMm)
  }
}

const converged = ({ opencv, minpack }: Reference['cases'][number]) =>
  minpack === null || opencv.sumMm2 <= minpack.sumMm2 * (1 + toleranceOfSum)

describe(reference.source, () => {
  test.each(reference.cases.filter(converged))('OpenCV, $name: places and residuals', (each) => {
    expectAlike(fitted(each), each.opencv)
  })

  test.each(reference.cases.filter((each) => !converged(each)))(
    'OpenCV, stopped short of the least sum, $name: our sum is below its own',
    (each) => {
      expect(sumOfSquares(residualsOf(fitted(each)))).toBeLessThan(each.opencv.sumMm2)
    },
  )

  test.each(
    reference.cases.flatMap((each) => (each.minpack === null ? [] : [{ ...each, least: each.minpack }])),
  )('MINPACK, $name: places, residuals and the least sum', (each) => {
    const ours = fitted(each)
    expectAlike(ours, each.least)
    expect(Math.abs(sumOfSquares(residualsOf(ours)) / each.least.sumMm2 - 1)).toBeLessThan(toleranceOfSum)
  })

  test('cases of each kind are there', () => {
    expect(reference.cases.filter(converged).length).toBeGreaterThanOrEqual(4)
    expect(reference.cases.filter(({ minpack }) => minpack !== null).length).toBeGreaterThanOrEqual(5)
  })
})
