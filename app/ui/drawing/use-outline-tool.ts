'use client'
import { useRef } from 'react'
import {
  type DrawnOutline,
  type FacePlacement,
  type OutlineEdit,
  toFace,
  type Xy,
} from '#lib/core/drawing/index'
import { type Point, type SnapFrom, type Snapped, type SnapTargets, snap } from '#lib/core/geometry/index'
import type { CanvasTool } from './face-canvas'

/** A pointer takes hold of a corner from farther off than a place catches the corner. */
const snapShare = 10 / 12

const closes = 'first point: closes the outline'

/** What the outline offers a corner that is set: steps of angle from its neighbours, and its first point to be closed by. */
export function offersOf({ points, closed }: DrawnOutline, moving: number | null): SnapFrom {
  const [first] = points
  const last = points[points.length - 1]
  if (moving === null) {
    const neighbours = [last, points.length > 1 ? first : undefined].filter((point) => point !== undefined)
    return {
      neighbours,
      own: first && points.length >= 3 && !closed ? [{ at: first, words: closes }] : [],
    }
  }
  const count = points.length
  const before = points[moving - 1] ?? (closed ? points[count - 1] : undefined)
  const after = points[moving + 1] ?? (closed ? points[0] : undefined)
  return { neighbours: [before, after].filter((point) => point !== undefined), own: [] }
}

export interface OutlineTool extends CanvasTool {
  /** Where a point would come to stand, and what catches it; its own place when nothing does. */
  readonly caught: (at: Xy, reachMm: number) => { readonly at: Point; readonly snapped: Snapped | null }
  /** Adds a corner; on the first point it closes the outline. */
  readonly set: (at: Point, snapped: Snapped | null) => void
}

interface Grip {
  readonly index: number
  readonly stroke: number
  readonly reachMm: number
  dragged: boolean
}

/** The pointer's side of drawing an outline on a face. */
export function useOutlineTool(
  outline: DrawnOutline,
  edit: (edit: OutlineEdit) => void,
  placement: FacePlacement,
  targets: SnapTargets | null,
): OutlineTool {
  const grip = useRef<Grip | null>(null)
  const strokes = useRef(0)
  const snapAt = (point: Point, moving: number | null, reachMm: number) =>
    targets === null ? null : snap(point, targets, offersOf(outline, moving), reachMm)
  const { points, closed } = outline
  const set = (at: Point, snapped: Snapped | null) => {
    if (snapped?.words === closes) edit({ kind: 'close' })
    else edit({ kind: 'add', at: rounded(at) })
  }
  return {
    grab: (xy, reachMm) => {
      const at = toFace(placement, xy)
      strokes.current += 1
      const stroke = strokes.current
      const corner = nearest(at, points, reachMm)
      if (corner !== null) {
        grip.current = { index: corner, stroke, reachMm, dragged: false }
        return true
      }
      const middles = points
        .map((from, index) => [from, points[index + 1] ?? (closed ? points[0] : undefined)] as const)
        .map(
          ([from, to]): Point =>
            to ? [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] : [Number.POSITIVE_INFINITY, 0],
        )
      const edge = nearest(at, middles, reachMm)
      if (edge === null) return false
      edit({ kind: 'insert', edge, at: rounded(middles[edge]!), stroke })
      grip.current = { index: edge + 1, stroke, reachMm, dragged: true }
      return true
    },
    drag: (xy) => {
      const now = grip.current
      if (!now) return
      now.dragged = true
      const at = toFace(placement, xy)
      const to = rounded(snapAt(at, now.index, now.reachMm * snapShare)?.at ?? at)
      edit({ kind: 'move', index: now.index, to, stroke: now.stroke })
    },
    drop: () => {
      const now = grip.current
      grip.current = null
      if (!now || now.dragged) return
      if (now.index === 0 && !closed && points.length >= 3) edit({ kind: 'close' })
      else edit({ kind: 'select', index: now.index })
    },
    tap: (xy, reachMm) => {
      const at = toFace(placement, xy)
      if (closed) {
        edit({ kind: 'select', index: null })
        return
      }
      const snapped = snapAt(at, null, reachMm * snapShare)
      set(snapped?.at ?? at, snapped)
    },
    caught: (xy, reachMm) => {
      const at = toFace(placement, xy)
      const snapped = closed ? null : snapAt(at, null, reachMm)
      return { at: snapped?.at ?? at, snapped }
    },
    set,
  }
}

/** A drawn place is meant to a thousandth at best; what is stored reads like it. */
function rounded([u, v]: Point): Point {
  return [Math.round(u * 1000) / 1000, Math.round(v * 1000) / 1000]
}

function nearest(at: Point, points: readonly Point[], reachMm: number): number | null {
  let best: number | null = null
  let bestMm = reachMm
  for (const [index, [u, v]] of points.entries()) {
    const mm = Math.hypot(u - at[0], v - at[1])
    if (mm <= bestMm) {
      best = index
      bestMm = mm
    }
  }
  return best
}
