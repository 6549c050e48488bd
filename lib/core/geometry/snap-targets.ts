import type { LocationGrid } from '../repair/types'
import { figure } from '../units/figure'
import { grow } from './grow'
import type { Loop, Point } from './types'

/** A point that a drawn one may be caught by, with what it is in words: "dowel D03". */
export interface SnapPoint {
  readonly at: Point
  readonly words: string
}

/** A line that a drawn point may be caught by. */
export interface SnapLine {
  readonly points: readonly Point[]
  readonly closed: boolean
  readonly words: string
}

/** All of a face that drawing can be caught by. Plain data: it is made on the server and sent along. */
export interface SnapTargets {
  readonly points: readonly SnapPoint[]
  readonly lines: readonly SnapLine[]
  readonly grid: LocationGrid
}

interface SnapFace {
  readonly boundary: Loop
  readonly grid: LocationGrid
  readonly lines: readonly {
    readonly name: string
    readonly points: readonly Point[]
    readonly closed: boolean
  }[]
  readonly dowels: readonly { readonly tag: string; readonly at: Point }[]
  readonly patches: readonly { readonly name: string; readonly face: readonly Loop[] }[]
  readonly openings: readonly {
    readonly name: string
    readonly regions: readonly { readonly outer: Loop; readonly holes: readonly Loop[] }[]
  }[]
}

/** A curve comes as very many short chords: their ends are no corners that anybody means. */
const leastCornerDeg = 12

/** Everything on a face that a drawn outline can be laid to; `edgeMarginMm` is the shop's margin inside the boundary. */
export function snapTargets(face: SnapFace, edgeMarginMm: number): SnapTargets {
  const outlines: readonly SnapLine[] = [
    ...face.patches.flatMap(({ name, face: loops }) =>
      loops.map((points) => ({ points, closed: true, words: name })),
    ),
    ...face.openings.flatMap(({ name, regions }) =>
      regions
        .flatMap(({ outer, holes }) => [outer, ...holes])
        .map((points) => ({ points, closed: true, words: `opening of ${name}` })),
    ),
    ...face.lines.map(({ name, points, closed }) => ({ points, closed, words: name })),
  ]
  const boundary: SnapLine = { points: face.boundary, closed: true, words: 'the boundary' }
  return {
    points: [
      ...face.dowels.map(({ tag, at }) => ({ at, words: `dowel ${tag}` })),
      ...[boundary, ...outlines].flatMap(cornersOf),
    ],
    lines: [boundary, ...inset(face.boundary, edgeMarginMm), ...outlines],
    grid: face.grid,
  }
}

function inset(boundary: Loop, marginMm: number): readonly SnapLine[] {
  if (!(marginMm > 0)) return []
  const words = `${figure(marginMm, 1)} mm inside the boundary`
  return grow([{ outer: boundary, holes: [] }], -marginMm)
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .map((points) => ({ points, closed: true, words }))
}

function cornersOf({ points, closed, words }: SnapLine): readonly SnapPoint[] {
  return points
    .filter((at, i) => {
      const before = points[i - 1] ?? (closed ? points[points.length - 1] : undefined)
      const after = points[i + 1] ?? (closed ? points[0] : undefined)
      return before === undefined || after === undefined || turnDeg(before, at, after) >= leastCornerDeg
    })
    .map((at) => ({ at, words: `corner of ${words}` }))
}

function turnDeg(before: Point, at: Point, after: Point): number {
  const into = Math.atan2(at[1] - before[1], at[0] - before[0])
  const out = Math.atan2(after[1] - at[1], after[0] - at[0])
  const turn = Math.abs(((out - into) * 180) / Math.PI) % 360
  return Math.min(turn, 360 - turn)
}
