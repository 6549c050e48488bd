import { boxOf, crosses, grown, overlap, type Segment, within } from './boxes'
import { capHeightEm, descentEm, textWidthMm } from './text-width'
import type { Box, Xy } from './types'

/** A label that wants a place beside something. */
export interface LabelWish {
  readonly text: string
  readonly sizeMm: number
  /** The middle of what it belongs to, and how far from it the label must keep. */
  readonly at: Xy
  readonly clearMm: number
}

export interface PlacedLabel {
  /** Start of the baseline. */
  readonly at: Xy
  readonly box: Box
  /** Drawn when the label could not stand beside its thing. */
  readonly leader: Segment | null
}

/** Right first and above the line, as one letters a drawing by hand. */
const besides: readonly Xy[] = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
]
const furtherRings = 14
const directionsPerRing = 16
const costOfRing = 2
const costOfCrossing = 1.2

export function textBox(text: string, sizeMm: number, baseline: Xy, anchor: 'start' | 'middle' | 'end'): Box {
  const width = textWidthMm(text, sizeMm)
  const left = baseline[0] - (anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width)
  return {
    left,
    top: baseline[1] - capHeightEm * sizeMm,
    right: left + width,
    bottom: baseline[1] + descentEm * sizeMm,
  }
}

/**
 * The best free place for a label: beside its thing, else further out on a leader. `taken` boxes are never
 * touched and `area` never left; lines are crossed only when that is cheaper than going further. Null when there
 * is no free place. Same wishes in the same order, same drawing.
 */
export function placeLabel(
  wish: LabelWish,
  area: Box,
  taken: readonly Box[],
  lines: readonly Segment[],
): PlacedLabel | null {
  let best: { cost: number; label: PlacedLabel } | null = null
  for (let ring = 0; ring <= furtherRings; ring += 1) {
    if (best && best.cost <= ring * costOfRing) break
    const candidates = ring === 0 ? besides : circle(ring)
    for (const [order, direction] of candidates.entries()) {
      const label = labelAt(wish, direction, ring)
      if (!isFree(label, wish, area, taken)) continue
      const crossings = lines.filter((line) => crosses(line, label.box)).length
      const cost = ring * costOfRing + order * 0.05 + Math.min(crossings, 3) * costOfCrossing
      if (!best || cost < best.cost) best = { cost, label }
    }
  }
  return best?.label ?? null
}

function circle(ring: number): readonly Xy[] {
  const start = ring % 2 === 0 ? 0 : Math.PI / directionsPerRing
  return Array.from({ length: directionsPerRing }, (_, i) => {
    const angle = start - Math.PI / 4 + (i * 2 * Math.PI) / directionsPerRing
    return [Math.cos(angle), Math.sin(angle)] as const
  })
}

function labelAt(wish: LabelWish, direction: Xy, ring: number): PlacedLabel {
  return ring === 0
    ? labelClose(wish, direction)
    : labelOut(wish, direction, wish.clearMm + ring * wish.sizeMm)
}

/** Close by, a diagonal label stands on or hangs from the height of the point, so that its arms stay free. */
function labelClose(wish: LabelWish, [dx, dy]: Xy): PlacedLabel {
  const { at, sizeMm, clearMm } = wish
  const width = textWidthMm(wish.text, sizeMm)
  const height = capHeightEm * sizeMm
  const lift = dx === 0 ? clearMm * 1.4 : clearMm * 0.35
  const reach = dy === 0 ? clearMm * 1.5 : clearMm
  const left = dx > 0 ? at[0] + reach : dx < 0 ? at[0] - reach - width : at[0] - width / 2
  const baseline =
    dy < 0 ? at[1] - lift - descentEm * sizeMm : dy > 0 ? at[1] + lift + height : at[1] + height / 2
  return { at: [left, baseline], box: textBox(wish.text, sizeMm, [left, baseline], 'start'), leader: null }
}

function labelOut(wish: LabelWish, [dx, dy]: Xy, reachMm: number): PlacedLabel {
  const { at, sizeMm } = wish
  const width = textWidthMm(wish.text, sizeMm)
  const height = capHeightEm * sizeMm
  const near: Xy = [at[0] + dx * reachMm, at[1] + dy * reachMm]
  const start: Xy = [at[0] + dx * wish.clearMm * 0.72, at[1] + dy * wish.clearMm * 0.72]
  const sideways = Math.abs(dx) > 0.35
  const gap = sizeMm * 0.2
  const left = sideways ? (dx > 0 ? near[0] + gap : near[0] - gap - width) : near[0] - width / 2
  const baseline = sideways
    ? near[1] + height / 2
    : dy < 0
      ? near[1] - descentEm * sizeMm
      : near[1] + height + gap
  const box = textBox(wish.text, sizeMm, [left, baseline], 'start')
  return { at: [left, baseline], box, leader: [start, near] }
}

function isFree(label: PlacedLabel, wish: LabelWish, area: Box, taken: readonly Box[]): boolean {
  const padded = grown(label.box, wish.sizeMm * 0.12)
  if (!within(padded, area)) return false
  const leader = label.leader
  const [x, y] = wish.at
  for (const box of taken) {
    if (overlap(padded, box)) return false
    const own = x >= box.left && x <= box.right && y >= box.top && y <= box.bottom
    if (leader && !own && overlap(boxOf(leader), box) && crosses(leader, box)) return false
  }
  return true
}
