import { overlap } from './boxes'
import { hatch } from './hatch'
import { textBox } from './labels'
import { path, text } from './primitives'
import { describePulls } from './pull-description'
import { layOut, type PullFate, type PullStrokes, type StripLayout, type StripSize, xOf } from './pull-layout'
import type { Role } from './styles'
import { textWidthMm } from './text-width'
import type { Box, DisplayList, Item, Shape, Xy } from './types'

export type { PullFate, PullStrokes, StripSize } from './pull-layout'

interface StrokeRule {
  /** Height above the baseline in strip units. */
  readonly height: number
  readonly wide: boolean
  readonly role: Role
  readonly top: 'plain' | 'bar' | 'cross'
}

/** Height, width and the stroke's top tell the four apart without colour. */
const strokeRules: Readonly<Record<PullFate, StrokeRule>> = {
  usual: { height: 16, wide: false, role: 'ink', top: 'plain' },
  harder: { height: 25, wide: true, role: 'due', top: 'plain' },
  forced: { height: 35, wide: true, role: 'due', top: 'bar' },
  stuck: { height: 45, wide: true, role: 'held', top: 'cross' },
}

/** A mould's pulls as strokes, the harder the taller, with coats below and patches above. Drawing mm are paper mm. */
export function pullStrip(strokes: PullStrokes, size: StripSize): DisplayList {
  const layout = layOut(strokes, size)
  const shown = strokes.pulls.length - layout.firstPull + 1
  return {
    title: `Pull strip of ${strokes.pulls.length} ${strokes.pulls.length === 1 ? 'pull' : 'pulls'}`,
    description: describePulls(strokes, shown),
    widthMm: layout.widthMm,
    heightMm: layout.heightMm,
    denominator: 1,
    textMm: layout.textMm,
    placement: null,
    legend: [],
    omittedLabels: [],
    items: [
      ...drawSeasons(strokes, layout),
      ...drawPatches(strokes, layout),
      path(
        [
          [
            [0, layout.baseline],
            [layout.widthMm, layout.baseline],
          ],
        ],
        false,
        'thin',
        'ink',
      ),
      ...drawPulls(strokes, layout),
      ...drawCoats(strokes, layout),
    ],
  }
}

function drawPulls(strokes: PullStrokes, layout: StripLayout): readonly Shape[] {
  return strokes.pulls.flatMap((pull, index) => {
    const number = index + 1
    if (number < layout.firstPull) return []
    const rule = strokeRules[pull.went]
    const x = xOf(number, layout)
    const top = layout.baseline - rule.height * layout.unit
    const half = Math.min(layout.pitch * 0.48, 6 * layout.unit)
    const style = rule.wide ? 'stroke-wide' : 'stroke-narrow'
    const tops: Readonly<Record<StrokeRule['top'], readonly (readonly Xy[])[]>> = {
      plain: [],
      bar: [
        [
          [x - half, top],
          [x + half, top],
        ],
      ],
      cross: [
        [
          [x - half, top - half],
          [x + half, top + half],
        ],
        [
          [x - half, top + half],
          [x + half, top - half],
        ],
      ],
    }
    const stroke = path(
      [
        [
          [x, layout.baseline],
          [x, top],
        ],
        ...tops[rule.top],
      ],
      false,
      style,
      rule.role,
    )
    return pull.cleared ? [stroke] : [stroke, notCleared(x, layout)]
  })
}

function notCleared(x: number, layout: StripLayout): Shape {
  return {
    kind: 'circle',
    centre: [x, layout.baseline],
    radiusMm: Math.min(layout.pitch * 0.42, 3.2 * layout.unit),
    style: 'thin',
    role: 'held',
    fill: 'sheet',
  }
}

/** A triangle below the baseline between two pulls; several coats there are one triangle. */
function drawCoats(strokes: PullStrokes, layout: StripLayout): readonly Shape[] {
  const places = [...new Set(strokes.coats.map((coat) => coat.afterPull))].sort((a, b) => a - b)
  return places
    .filter((after) => after >= layout.firstPull - 1)
    .map((after) => {
      const x = xOf(after, layout) + layout.pitch / 2
      const half = Math.min(5 * layout.unit, Math.max(layout.pitch * 0.6, 3 * layout.unit))
      const tip = layout.baseline + 5 * layout.unit
      const triangle: readonly Xy[] = [
        [x, tip],
        [x - half, tip + half * 1.8],
        [x + half, tip + half * 1.8],
      ]
      return path([triangle], true, 'hair', 'act', 'solid')
    })
}

function drawPatches(strokes: PullStrokes, layout: StripLayout): readonly Item[] {
  const { unit, baseline, textMm } = layout
  const last = Math.max(strokes.pulls.length, ...strokes.patches.map((patch) => patch.fromPull))
  const taken: Box[] = []
  return strokes.patches.flatMap((patch, index) => {
    const bottom = baseline - 54 * unit - layout.patchRows[index]! * layout.rowMm
    const to = Math.max(patch.fromPull, patch.toPull ?? last)
    if (to < layout.firstPull) return []
    const left = Math.max(
      layout.left,
      xOf(Math.max(patch.fromPull, layout.firstPull), layout) - layout.pitch / 2,
    )
    const right = Math.max(left + 8 * unit, xOf(to, layout) + layout.pitch / 2)
    const bar: readonly Xy[] = [
      [left, bottom - 8 * unit],
      [right, bottom - 8 * unit],
      [right, bottom],
      [left, bottom],
    ]
    const shapes: Shape[] = [path([bar], true, 'thin', 'ink', 'sheet'), hatch([bar], 4 * unit, 'ink')]
    if (!layout.labelled) return shapes
    const width = textWidthMm(patch.label, textMm)
    const middle = Math.min(layout.widthMm - width / 2, Math.max(width / 2, (left + right) / 2))
    const at: Xy = [middle, bottom - 12 * unit]
    const box = textBox(patch.label, textMm, at, 'middle')
    if (taken.some((other) => overlap(box, other))) return shapes
    taken.push(box)
    return [...shapes, text(at, patch.label, textMm, { anchor: 'middle', role: 'soft' })]
  })
}

function drawSeasons(strokes: PullStrokes, layout: StripLayout): readonly Item[] {
  const { unit, baseline, textMm } = layout
  const taken: Box[] = []
  return strokes.seasons
    .filter((season) => season.beforePull >= layout.firstPull)
    .flatMap((season) => {
      const x = xOf(season.beforePull, layout) - layout.pitch / 2
      const mark = path(
        [
          [
            [x, baseline - 46 * unit],
            [x, baseline + (layout.labelled ? 32 : 14) * unit],
          ],
        ],
        false,
        'hair',
        'soft',
      )
      if (!layout.labelled) return [mark]
      // Right of its mark, or left of it at the end of the strip.
      const room = x + 4 * unit + textWidthMm(season.label, textMm) <= layout.widthMm
      const anchor = room ? 'start' : 'end'
      const at: Xy = [x + (room ? 4 : -4) * unit, baseline + 32 * unit]
      const box = textBox(season.label, textMm, at, anchor)
      if (box.left < 0 || taken.some((other) => overlap(box, other))) return [mark]
      taken.push(box)
      return [mark, text(at, season.label, textMm, { role: 'soft', anchor })]
    })
}
