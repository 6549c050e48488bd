import { distanceBetweenPoints, type Loop, type Point, samePointMm } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { counted, note } from './finding'
import { joinExactMm } from './limits'

/** A corner as it was given, and where: "line 7", "outer[3]". */
export interface Corner {
  readonly point: Point
  readonly place: string
}

/** Corners without those that repeat the one before, and without a last one that repeats the first; both are told. */
export function withoutRepeatedCorners(corners: readonly Corner[]): {
  readonly points: Loop
  readonly findings: readonly Finding[]
} {
  const repeats = corners.filter(({ point }, index) => {
    return index > 0 && distanceBetweenPoints(corners[index - 1]!.point, point) <= samePointMm
  })
  const dropped = new Set(repeats)
  const kept = corners.filter((corner) => !dropped.has(corner))
  const [first, last] = [kept[0], kept.at(-1)]
  const repeatsFirst = kept.length > 1 && distanceBetweenPoints(first!.point, last!.point) <= joinExactMm
  return {
    points: (repeatsFirst ? kept.slice(0, -1) : kept).map(({ point }) => point),
    findings: [
      ...(repeatsFirst ? [lastDropped(last!)] : []),
      ...(repeats.length > 0 ? [repeatsDropped(repeats)] : []),
    ],
  }
}

function lastDropped({ place }: Corner): Finding {
  return note(
    'last-point-dropped',
    'The last point repeats the first and was dropped; an outline is closed as it is.',
    place,
  )
}

function repeatsDropped(repeats: readonly Corner[]): Finding {
  return note(
    'repeated-points-dropped',
    `${counted(repeats.length, 'point repeats the one before and was', 'points repeat the one before and were')} dropped.`,
    repeats[0]!.place,
    { count: repeats.length },
  )
}
