import type { Point } from '#lib/core/geometry/index'
import type { PlanOutlines } from './plan-outlines'

/** A line of words under the drawing; the base line begins at `at`, mm, y up. */
export interface NoteText {
  readonly at: Point
  readonly heightMm: number
  readonly text: string
}

/** A stroke of a fibre arrow or of the line of 0 degrees that it is measured from. */
export type NoteLine = readonly [Point, Point]

const textMm = 4
const rowMm = 9
const marginMm = 15
const arrowMm = 7

/**
 * The words of a drawing and an arrow for each ply (`numbers`: how the file's follow from u and v of the face), in rows below the outlines: title, view, state, then each layer
 * with what it is. They keep clear of the outlines, so that what cuts them sees nothing but closed lines.
 */
export function layOutNotes(
  { title, view, notes, layers, boundsMm }: PlanOutlines,
  numbers: string,
): {
  readonly texts: readonly NoteText[]
  readonly lines: readonly NoteLine[]
} {
  const [left, bottom] = boundsMm
  const top = bottom - marginMm
  const head = [title, `${view}. ${numbers}`, ...notes]
  const baseOf = (row: number) => top - row * rowMm
  const texts = head.map((text, row): NoteText => ({ at: [left, baseOf(row)], heightMm: textMm, text }))
  const listed = layers.map(({ code, title: what }, index): NoteText => {
    const base = baseOf(head.length + index)
    return { at: [left + 2 * arrowMm + 6, base], heightMm: textMm, text: `${code}: ${what}` }
  })
  const lines = layers.flatMap(({ directionInViewDeg }, index): readonly NoteLine[] => {
    if (directionInViewDeg === null) return []
    return arrow([left + arrowMm, baseOf(head.length + index) + textMm / 2], directionInViewDeg)
  })
  return { texts: [...texts, ...listed], lines }
}

/** A fibre runs both ways, so both ends have a head. A short stroke to the right shows 0 degrees. */
function arrow([x, y]: Point, directionDeg: number): readonly NoteLine[] {
  const along = (degrees: number, length: number, [fromX, fromY]: Point): Point => {
    const angle = (degrees * Math.PI) / 180
    return [fromX + Math.cos(angle) * length, fromY + Math.sin(angle) * length]
  }
  const half = arrowMm / 2
  const ends = [0, 180].map((turn) => along(directionDeg + turn, half, [x, y]))
  const heads = ends.flatMap((end, index): readonly NoteLine[] => {
    const back = directionDeg + (index === 0 ? 180 : 0)
    return [back + 20, back - 20].map((degrees) => [end, along(degrees, 1.8, end)] as const)
  })
  return [[ends[0]!, ends[1]!], ...heads, [[x, y], along(0, half, [x, y])]]
}
