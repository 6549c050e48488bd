import type { Outcome, Result } from '../../result'
import { counterClockwise } from '../loop'
import type { Point } from '../types'
import { bentUnder } from './bent'
import { type Fit, fitMarks, offMm, worstSpread } from './fit'
import { type LeftOut, leftOut } from './left-out'
import {
  determinantOf,
  enlargementAt,
  inverseProjection,
  leastWeight,
  projected,
  weightOf,
} from './projection'
import { beyondHorizon, inALine, mirroredOtherwise, notConverged, throughInfinity } from './refusals'
import { degenerateRatio, straightness } from './straightness'
import type { Mark, PictureRequest, PictureToFace, Pixel } from './types'
import { warnings } from './warnings'
import { pictureWorking } from './working'

/**
 * Places what was traced in a picture on the face, by marks whose places are known. The face is taken for a plane and the lens
 * for a true one: straight edges must be straight in the picture.
 *
 * A homography keeps straight lines straight, so an outline of straight edges needs its corners only. An arc does not stay an
 * arc: its points are placed one by one and joined by chords, as they were sent. Whoever wants the chords of an arc within
 * 0.01 mm sends points so near to each other: every sqrt(0.08 R) mm on the face for a radius of R mm.
 *
 * No answer when the marks lie in a line, when no view of a plane shows them so, when the picture is mirrored and that was not
 * said (or the other way round), and when something lies at or beyond the horizon. RangeError on fewer than four marks, a tag
 * that comes twice, figures that are none, a radius that isn't above 0.
 */
export function pictureToFace(request: PictureRequest): Outcome<PictureToFace> {
  const { marks, mirrored } = request
  assertRequest(request)
  const line = straightness(marks)
  if (line.ratio < degenerateRatio) return inALine(line)
  const fit = fitMarks(marks)
  if (fit === 'beyond-horizon') return beyondHorizon()
  if (fit === 'not-converged') return notConverged()
  // Pixels run downwards and v upwards: a picture that is not mirrored turns the way round over.
  if (determinantOf(fit.toFace) > 0 !== mirrored) return mirroredOtherwise(mirrored)
  const toPicture = inverseProjection(fit.toFace)
  const lost =
    lostPoint('point of the outline', request.outlinePx ?? [], fit.weightAt) ??
    lostPoint('point of the picture', request.pointsPx, fit.weightAt) ??
    lostPoint('place of the face', request.placesMm, (place) => weightOf(toPicture, place))
  if (lost !== null) return throughInfinity(lost)
  return { ok: true, result: resultOf(request, fit, { line, toPicture }) }
}

function resultOf(
  request: PictureRequest,
  fit: Fit,
  found: {
    readonly line: ReturnType<typeof straightness>
    readonly toPicture: ReturnType<typeof inverseProjection>
  },
): Result<PictureToFace> {
  const { marks, outlinePx } = request
  const others = leftOut(marks, fit.toFace)
  const residuals = residualsOf(marks, fit, others)
  const slip =
    outlinePx === null
      ? null
      : outlinePx.reduce((most, pixel) => Math.max(most, worstSpread(fit.covarianceAt(pixel))), 0)
  const seen = [...marks.map((mark) => mark.atPx), ...(outlinePx ?? [])]
  const grain = seen.map((pixel) => enlargementAt(fit.toFace, pixel).most)
  const value: PictureToFace = {
    toFace: fit.toFace,
    toPicture: found.toPicture,
    ...residuals,
    outlineMm: outlinePx === null ? null : counterClockwise(outlinePx.map(fit.place)),
    outlineSlip: slip,
    outlineSpreadMm: slip === null || residuals.spreadMm === null ? null : slip * residuals.spreadMm,
    pointsMm: request.pointsPx.map(fit.place),
    placesPx: request.placesMm.map((place) => projected(found.toPicture, place)),
    mmPerPixel: { least: least(grain), most: most(grain) },
    viewDeg: viewDegAt(fit, middleOf(outlinePx ?? marks.map((mark) => mark.atPx))),
  }
  const spanned = [...marks.map((mark) => mark.atMm), ...(value.outlineMm ?? [])]
  const bend = bentUnder(spanned, request.curvature, value.viewDeg)
  return {
    value,
    method:
      'plane homography: normalised direct linear transform, then least squares of the residuals on the face in mm',
    working: pictureWorking(value, bend),
    findings: warnings(value, { line: found.line, others, bend }),
  }
}

function residualsOf(
  marks: readonly Mark[],
  fit: Fit,
  others: readonly LeftOut[],
): Pick<PictureToFace, 'marks' | 'freedom' | 'rmsMm' | 'largestMm' | 'spreadMm'> {
  const freedom = 2 * marks.length - 8
  const known = freedom > 0
  return {
    marks: marks.map((mark) => ({
      ...mark,
      fittedMm: fit.place(mark.atPx),
      residualMm: known ? offMm(fit.toFace, mark) : null,
      fromOthersMm: others.find((other) => other.tag === mark.tag)?.fromOthersMm ?? null,
    })),
    freedom,
    rmsMm: known ? Math.sqrt(fit.sumMm2 / marks.length) : null,
    largestMm: known ? most(marks.map((mark) => offMm(fit.toFace, mark))) : null,
    spreadMm: known ? Math.sqrt(fit.sumMm2 / freedom) : null,
  }
}

/**
 * Foreshortening of a small square: its short way over its long way is the cosine of the angle from square on. True in the
 * middle of the picture, about so elsewhere.
 */
function viewDegAt(fit: Fit, pixel: Pixel): number {
  const { least: short, most: long } = enlargementAt(fit.toFace, pixel)
  return (Math.acos(Math.min(1, short / long)) * 180) / Math.PI
}

function lostPoint(
  what: string,
  points: readonly Point[],
  weight: (point: Point) => number,
): { readonly what: string; readonly number: number; readonly at: Point } | null {
  const index = points.findIndex((point) => !(weight(point) > leastWeight))
  return index < 0 ? null : { what, number: index + 1, at: points[index]! }
}

function assertRequest({ marks, outlinePx, pointsPx, placesMm, curvature }: PictureRequest): void {
  if (marks.length < 4) throw new RangeError(`a fit needs at least four marks, got ${marks.length}`)
  const twice = marks.find(({ tag }, index) => marks.findIndex((mark) => mark.tag === tag) !== index)
  if (twice !== undefined) throw new RangeError(`the mark ${twice.tag} is there twice`)
  if (outlinePx !== null && outlinePx.length < 3) {
    throw new RangeError(`an outline needs at least three points, got ${outlinePx.length}`)
  }
  const points = [
    ...marks.flatMap(({ atPx, atMm }) => [atPx, atMm]),
    ...(outlinePx ?? []),
    ...pointsPx,
    ...placesMm,
  ]
  const none = points.find((point) => !point.every(Number.isFinite))
  if (none !== undefined) throw new RangeError(`(${none[0]}, ${none[1]}) is no point`)
  if (curvature.kind !== 'flat' && !(curvature.radiusMm > 0)) {
    throw new RangeError(`the radius of a bent area must be above 0 mm, got ${curvature.radiusMm}`)
  }
}

function middleOf(points: readonly Point[]): Point {
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length
  return [mean(0), mean(1)]
}

const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b))
const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b))
