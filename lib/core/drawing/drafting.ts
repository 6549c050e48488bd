import { boxOf, boxRound, inside, type Segment, segmentsOf } from './boxes'
import { type LabelWish, placeLabel, textBox } from './labels'
import type { Sizes } from './medium'
import { baselineAbout, centreMarkReach, path, text } from './primitives'
import type { Role } from './styles'
import { textWidthMm } from './text-width'
import type { Box, Shape, TextItem, Xy } from './types'

/** What a drawing holds so far that a further label must respect. Grows while the drawing is made. */
export interface Drafting {
  readonly area: Box
  readonly sizes: Sizes
  readonly taken: Box[]
  readonly lines: Segment[]
  readonly omitted: string[]
}

export function startDrafting(area: Box, sizes: Sizes): Drafting {
  return { area, sizes, taken: [], lines: [], omitted: [] }
}

export function keepLines(draft: Drafting, lines: readonly (readonly Xy[])[], closed: boolean): void {
  for (const line of lines) draft.lines.push(...segmentsOf(line, closed))
}

/** A centre mark's radius: true to size, but never so small that it can't be seen. */
export function markRadius(diameterMm: number, sizes: Sizes): number {
  return Math.max(diameterMm / 2, sizes.markMm)
}

/** What a centre mark takes up: its ring and its two arms, with the corners between the arms left free. */
export function markBoxes(at: Xy, radiusMm: number): readonly Box[] {
  const reach = radiusMm * centreMarkReach
  const thin = radiusMm * 0.2
  return [boxRound(at, radiusMm * 1.1, radiusMm * 1.1), boxRound(at, reach, thin), boxRound(at, thin, reach)]
}

export interface LabelStyle {
  readonly role: Role
  readonly weight: TextItem['weight']
  readonly sizeMm: number
}

/** A label beside a point, with a leader when it had to go further; nothing (and noted) when there is no room. */
export function labelBeside(
  draft: Drafting,
  wish: Omit<LabelWish, 'sizeMm'>,
  style: LabelStyle,
): readonly Shape[] {
  const placed = placeLabel({ ...wish, sizeMm: style.sizeMm }, draft.area, draft.taken, draft.lines)
  if (!placed) {
    draft.omitted.push(wish.text)
    return []
  }
  draft.taken.push(placed.box)
  const words = text(placed.at, wish.text, style.sizeMm, {
    role: style.role,
    weight: style.weight,
    halo: true,
  })
  return placed.leader ? [path([placed.leader], false, 'dimension', style.role), words] : [words]
}

/**
 * The name of an area: in its middle when it fits there, else outside on the first free side, else wherever
 * there is room.
 */
export function labelArea(
  draft: Drafting,
  loops: readonly (readonly Xy[])[],
  words: string,
  style: LabelStyle,
  middleFirst: boolean,
): readonly Shape[] {
  const box = boxOf(loops.flat())
  const centre: Xy = [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
  const gap = style.sizeMm * 0.5
  const width = textWidthMm(words, style.sizeMm)
  const middle: Xy = [centre[0], baselineAbout(centre[1], style.sizeMm)]
  const fitsMiddle = width < (box.right - box.left) * 0.92 && inside(centre, loops)
  const spots: readonly Xy[] = [
    ...(middleFirst && fitsMiddle ? [middle] : []),
    [centre[0], box.bottom + gap + style.sizeMm * 0.7],
    [centre[0], box.top - gap],
    [box.right + gap + width / 2, middle[1]],
    [box.left - gap - width / 2, middle[1]],
  ]
  const turned = middleFirst && !fitsMiddle ? labelUpright(draft, box, loops, words, style) : null
  if (turned) return [turned]
  for (const at of spots) {
    const place = textBox(words, style.sizeMm, at, 'middle')
    if (!isFree(draft, place)) continue
    draft.taken.push(place)
    return [text(at, words, style.sizeMm, { ...style, anchor: 'middle', halo: true })]
  }
  const at = inside(centre, loops) ? centre : (loops[0]?.[0] ?? centre)
  return labelBeside(draft, { text: words, at, clearMm: gap }, style)
}

/** Along a tall narrow area, read from the right; null when it does not fit there. */
function labelUpright(
  draft: Drafting,
  box: Box,
  loops: readonly (readonly Xy[])[],
  words: string,
  style: LabelStyle,
): TextItem | null {
  const centre: Xy = [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
  const length = textWidthMm(words, style.sizeMm)
  const fits = length < (box.bottom - box.top) * 0.92 && box.right - box.left > style.sizeMm
  const place = boxRound(centre, style.sizeMm / 2, length / 2)
  if (!fits || !inside(centre, loops) || !isFree(draft, place)) return null
  draft.taken.push(place)
  const at: Xy = [baselineAbout(centre[0], style.sizeMm), centre[1]]
  return text(at, words, style.sizeMm, { ...style, anchor: 'middle', halo: true, turnDeg: -90 })
}

function isFree(draft: Drafting, box: Box): boolean {
  const { area, taken } = draft
  if (box.left < area.left || box.right > area.right || box.top < area.top || box.bottom > area.bottom) {
    return false
  }
  return taken.every(
    (other) =>
      box.left >= other.right ||
      other.left >= box.right ||
      box.top >= other.bottom ||
      other.top >= box.bottom,
  )
}
