import { pointInLoop } from '../geometry/index'
import type { Box, Xy } from './types'

export type Segment = readonly [Xy, Xy]

export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

export function within(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom
  )
}

export function grown(box: Box, byMm: number): Box {
  return { left: box.left - byMm, top: box.top - byMm, right: box.right + byMm, bottom: box.bottom + byMm }
}

export function boxRound(centre: Xy, halfWidthMm: number, halfHeightMm: number): Box {
  return {
    left: centre[0] - halfWidthMm,
    top: centre[1] - halfHeightMm,
    right: centre[0] + halfWidthMm,
    bottom: centre[1] + halfHeightMm,
  }
}

/** RangeError when there is no point. */
export function boxOf(points: readonly Xy[]): Box {
  const box = {
    left: Number.POSITIVE_INFINITY,
    top: Number.POSITIVE_INFINITY,
    right: Number.NEGATIVE_INFINITY,
    bottom: Number.NEGATIVE_INFINITY,
  }
  for (const [x, y] of points) {
    box.left = Math.min(box.left, x)
    box.top = Math.min(box.top, y)
    box.right = Math.max(box.right, x)
    box.bottom = Math.max(box.bottom, y)
  }
  if (!(box.left <= box.right)) throw new RangeError('no points to make a box of')
  return box
}

export function segmentsOf(line: readonly Xy[], closed: boolean): readonly Segment[] {
  const segments: Segment[] = []
  for (let i = 1; i < line.length; i += 1) segments.push([line[i - 1]!, line[i]!])
  if (closed && line.length > 2) segments.push([line[line.length - 1]!, line[0]!])
  return segments
}

/** The part of a segment that lies in a box, or null (Liang and Barsky 1984). */
export function clipSegment([[x0, y0], [x1, y1]]: Segment, box: Box): Segment | null {
  const dx = x1 - x0
  const dy = y1 - y0
  let enter = 0
  let leave = 1
  const sides: readonly (readonly [number, number])[] = [
    [-dx, x0 - box.left],
    [dx, box.right - x0],
    [-dy, y0 - box.top],
    [dy, box.bottom - y0],
  ]
  for (const [run, room] of sides) {
    if (run === 0) {
      if (room < 0) return null
    } else if (run < 0) {
      enter = Math.max(enter, room / run)
    } else {
      leave = Math.min(leave, room / run)
    }
    if (enter > leave) return null
  }
  return [
    [x0 + enter * dx, y0 + enter * dy],
    [x0 + leave * dx, y0 + leave * dy],
  ]
}

export function crosses(segment: Segment, box: Box): boolean {
  const [[x0, y0], [x1, y1]] = segment
  if (Math.max(x0, x1) < box.left || Math.min(x0, x1) > box.right) return false
  if (Math.max(y0, y1) < box.top || Math.min(y0, y1) > box.bottom) return false
  return clipSegment(segment, box) !== null
}

/** The pieces of a line that lie in a box, each as an open line; neighbours are joined up again. */
export function clipLine(line: readonly Xy[], closed: boolean, box: Box): readonly (readonly Xy[])[] {
  const pieces: Xy[][] = []
  for (const segment of segmentsOf(line, closed)) {
    const part = clipSegment(segment, box)
    if (part === null) continue
    const last = pieces[pieces.length - 1]
    const end = last?.[last.length - 1]
    if (last && end && end[0] === part[0][0] && end[1] === part[0][1]) last.push(part[1])
    else pieces.push([part[0], part[1]])
  }
  return joinAround(pieces)
}

/** A closed line that enters the box before its first point comes back in two pieces: make one of them. */
function joinAround(pieces: readonly Xy[][]): readonly (readonly Xy[])[] {
  const first = pieces[0]
  const last = pieces[pieces.length - 1]
  if (!first || !last || first === last) return pieces
  const start = first[0]!
  const end = last[last.length - 1]!
  if (start[0] !== end[0] || start[1] !== end[1]) return pieces
  return [[...last, ...first.slice(1)], ...pieces.slice(1, -1)]
}

/** Whether a point lies inside the loops taken together by the even-odd rule; on a line counts as inside. */
export function inside(point: Xy, loops: readonly (readonly Xy[])[]): boolean {
  return loops.filter((loop) => pointInLoop(point, loop)).length % 2 === 1
}
