import type { Point } from '../geometry/types'

/** An outline while it is drawn: corners in order, closed or not yet, and the corner that is worked on. */
export interface DrawnOutline {
  readonly points: readonly Point[]
  readonly closed: boolean
  readonly selected: number | null
}

/** With what can be taken back and done again. Selecting alone is no step. */
export interface OutlineHistory {
  readonly now: DrawnOutline
  readonly past: readonly DrawnOutline[]
  readonly future: readonly DrawnOutline[]
  /** The drag that the last step belongs to: moves of one drag are one step. */
  readonly stroke: number | null
}

export type OutlineEdit =
  /** At the end of an open outline; after the selected corner of a closed one. */
  | { readonly kind: 'add'; readonly at: Point }
  /** On the edge that begins at a corner. */
  | { readonly kind: 'insert'; readonly edge: number; readonly at: Point; readonly stroke?: number }
  | { readonly kind: 'move'; readonly index: number; readonly to: Point; readonly stroke?: number }
  | { readonly kind: 'remove'; readonly index: number }
  /** The corner added last, or the selected one. */
  | { readonly kind: 'take-back' }
  | { readonly kind: 'close' }
  | { readonly kind: 'open' }
  | { readonly kind: 'clear' }
  | { readonly kind: 'replace'; readonly points: readonly Point[]; readonly closed: boolean }
  /** Sets the end of an edge so that the edge has this length and direction. */
  | { readonly kind: 'edge'; readonly edge: number; readonly lengthMm: number; readonly directionDeg: number }
  | { readonly kind: 'select'; readonly index: number | null }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }

const leastCorners = 3
/** Steps that are kept. */
const mostPast = 200
const mostCorners = 5000

export const nothingDrawn: OutlineHistory = startOutline([], false)

export function startOutline(points: readonly Point[], closed: boolean): OutlineHistory {
  return {
    now: { points, closed: closed && points.length >= leastCorners, selected: null },
    past: [],
    future: [],
    stroke: null,
  }
}

/**
 * The outline after an edit. An edit that can't be (closing two corners, undoing the beginning) changes nothing.
 * RangeError for an index that is no corner, a point that is no point, and a length that is not above 0.
 */
export function editOutline(history: OutlineHistory, edit: OutlineEdit): OutlineHistory {
  switch (edit.kind) {
    case 'undo':
      return undone(history)
    case 'redo':
      return redone(history)
    case 'select': {
      const index = edit.index
      if (index !== null) assertCorner(history.now, index)
      return { ...history, now: { ...history.now, selected: index }, stroke: null }
    }
    default: {
      const now = edited(history.now, edit)
      if (now === history.now) return history
      const stroke = 'stroke' in edit ? (edit.stroke ?? null) : null
      const continues = stroke !== null && stroke === history.stroke
      return {
        now,
        past: continues ? history.past : [...history.past.slice(-(mostPast - 1)), history.now],
        future: [],
        stroke,
      }
    }
  }
}

function edited(
  now: DrawnOutline,
  edit: Exclude<OutlineEdit, { readonly kind: 'undo' | 'redo' | 'select' }>,
): DrawnOutline {
  const { points, closed } = now
  switch (edit.kind) {
    case 'add': {
      assertPoint(edit.at)
      if (points.length >= mostCorners) return now
      const at = closed && now.selected !== null ? now.selected + 1 : points.length
      return { ...now, points: withInserted(points, at, edit.at), selected: at }
    }
    case 'insert': {
      assertPoint(edit.at)
      assertCorner(now, edit.edge)
      if (points.length >= mostCorners) return now
      return {
        ...now,
        points: withInserted(points, edit.edge + 1, edit.at),
        selected: edit.edge + 1,
      }
    }
    case 'move': {
      assertPoint(edit.to)
      const was = assertCorner(now, edit.index)
      if (was[0] === edit.to[0] && was[1] === edit.to[1]) return now
      return { ...now, points: withReplaced(points, edit.index, edit.to), selected: edit.index }
    }
    case 'remove':
      assertCorner(now, edit.index)
      return without(now, edit.index)
    case 'take-back':
      return points.length === 0 ? now : without(now, now.selected ?? points.length - 1)
    case 'close':
      return closed || points.length < leastCorners ? now : { ...now, closed: true, selected: null }
    case 'open':
      return closed ? { ...now, closed: false, selected: null } : now
    case 'clear':
      return points.length === 0 ? now : { points: [], closed: false, selected: null }
    case 'replace':
      for (const point of edit.points) assertPoint(point)
      return {
        points: edit.points.slice(0, mostCorners),
        closed: edit.closed && edit.points.length >= leastCorners,
        selected: null,
      }
    case 'edge':
      return withEdge(now, edit.edge, edit.lengthMm, edit.directionDeg)
  }
}

function without(now: DrawnOutline, index: number): DrawnOutline {
  const points = now.points.filter((_, i) => i !== index)
  const selected = points.length === 0 ? null : now.closed ? Math.min(index, points.length - 1) : null
  return { points, closed: now.closed && points.length >= leastCorners, selected }
}

function withEdge(now: DrawnOutline, edge: number, lengthMm: number, directionDeg: number): DrawnOutline {
  if (!(lengthMm > 0 && Number.isFinite(lengthMm) && Number.isFinite(directionDeg))) {
    throw new RangeError(
      `an edge needs a length above 0 mm and a direction, got ${lengthMm} mm at ${directionDeg}°`,
    )
  }
  const from = assertCorner(now, edge)
  const end = endOfEdge(now, edge)
  if (end === null) throw new RangeError(`no edge begins at corner ${edge + 1}`)
  const angle = (directionDeg * Math.PI) / 180
  const to: Point = [from[0] + lengthMm * Math.cos(angle), from[1] + lengthMm * Math.sin(angle)]
  return { ...now, points: withReplaced(now.points, end, to), selected: end }
}

/** The corner at which the edge from a corner ends; null after the last corner of an open outline. */
export function endOfEdge({ points, closed }: DrawnOutline, edge: number): number | null {
  if (points.length < 2) return null
  if (edge < points.length - 1) return edge + 1
  return closed ? 0 : null
}

/** Length and direction from u of the edge that begins at a corner; null where none does. */
export function edgeOf(
  outline: DrawnOutline,
  edge: number,
): { readonly lengthMm: number; readonly directionDeg: number } | null {
  const end = endOfEdge(outline, edge)
  const from = outline.points[edge]
  const to = end === null ? undefined : outline.points[end]
  if (from === undefined || to === undefined) return null
  const [du, dv] = [to[0] - from[0], to[1] - from[1]]
  return { lengthMm: Math.hypot(du, dv), directionDeg: (Math.atan2(dv, du) * 180) / Math.PI }
}

function undone({ now, past, future }: OutlineHistory): OutlineHistory {
  const before = past[past.length - 1]
  if (before === undefined) return { now, past, future, stroke: null }
  return { now: before, past: past.slice(0, -1), future: [now, ...future], stroke: null }
}

function redone({ now, past, future }: OutlineHistory): OutlineHistory {
  const [next, ...rest] = future
  if (next === undefined) return { now, past, future, stroke: null }
  return { now: next, past: [...past, now], future: rest, stroke: null }
}

function withInserted(points: readonly Point[], at: number, point: Point): readonly Point[] {
  return [...points.slice(0, at), point, ...points.slice(at)]
}

function withReplaced(points: readonly Point[], index: number, point: Point): readonly Point[] {
  return points.map((old, i) => (i === index ? point : old))
}

function assertCorner({ points }: DrawnOutline, index: number): Point {
  const point = points[index]
  if (point === undefined) throw new RangeError(`no corner ${index + 1} among ${points.length}`)
  return point
}

function assertPoint([u, v]: Point): void {
  if (!(Number.isFinite(u) && Number.isFinite(v))) throw new RangeError(`no point: (${u}, ${v})`)
}
