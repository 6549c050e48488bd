import type { Mark, PictureRequest, Pixel } from '#lib/core/geometry/homography/index'
import type { Point } from '#lib/core/geometry/index'

/** Invented pinhole cameras over a face: v upwards on the face, y downwards in the picture. */

export interface Camera {
  /** From square on. */
  readonly tiltDeg: number
  readonly turnDeg: number
  readonly distanceMm: number
  readonly focalPx: number
  /** What the middle of the picture shows. */
  readonly aimMm: Point
}

export const middlePx: Pixel = [2016, 1512]

export const camera: Camera = {
  tiltDeg: 35,
  turnDeg: 10,
  distanceMm: 900,
  focalPx: 3200,
  aimMm: [200, 150],
}

/** The picture of a place of the face. */
export function shot({ tiltDeg, turnDeg, distanceMm, focalPx, aimMm }: Camera, [u, v]: Point): Pixel {
  const [tilt, turn] = [(tiltDeg * Math.PI) / 180, (turnDeg * Math.PI) / 180]
  const [du, dv] = [u - aimMm[0], v - aimMm[1]]
  const right = du * Math.cos(turn) - dv * Math.sin(turn)
  const up = du * Math.sin(turn) + dv * Math.cos(turn)
  const depth = distanceMm + up * Math.sin(tilt)
  return [middlePx[0] + (focalPx * right) / depth, middlePx[1] - (focalPx * up * Math.cos(tilt)) / depth]
}

export const corners: readonly Point[] = [
  [0, 0],
  [400, 0],
  [400, 300],
  [0, 300],
]

/** The corners, the middles of the edges, and four within. */
export const twelve: readonly Point[] = [
  ...corners,
  [200, 0],
  [400, 150],
  [200, 300],
  [0, 150],
  [100, 75],
  [300, 75],
  [300, 225],
  [100, 225],
]

/** Marks at these places, set in the picture without a fault. */
export function marksAt(places: readonly Point[], by: Camera = camera): readonly Mark[] {
  return places.map((atMm, index) => ({ tag: `D${index + 1}`, atPx: shot(by, atMm), atMm }))
}

export function asking(marks: readonly Mark[], more: Partial<PictureRequest> = {}): PictureRequest {
  return {
    marks,
    outlinePx: null,
    pointsPx: [],
    placesMm: [],
    mirrored: false,
    curvature: { kind: 'flat' },
    ...more,
  }
}

/** Numbers of a normal distribution, always the same for the same seed (Box and Muller). */
export function noise(seed: number): () => number {
  let state = seed
  const uniform = () => {
    state = (state * 16_807) % 2_147_483_647
    return state / 2_147_483_647
  }
  for (let index = 0; index < 10; index += 1) uniform()
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}

/** The same marks, whose places on the face were measured with this standard deviation along u and v. */
export function measured(marks: readonly Mark[], spreadMm: number, seed: number): readonly Mark[] {
  const next = noise(seed)
  return marks.map(({ atMm: [u, v], ...mark }) => ({
    ...mark,
    atMm: [u + spreadMm * next(), v + spreadMm * next()],
  }))
}
