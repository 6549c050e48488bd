import { gridStrips } from '../geometry/index'
import { gridDensity } from './border'
import type { FaceOnSheet } from './face-sheet'
import type { Sizes } from './medium'
import { toFace } from './placement'
import { baselineAbout, text } from './primitives'
import { scaleBar } from './scale-bar'
import type { Box, DimensionItem, TextItem } from './types'

/** From the rim of the view, in text heights. */
const inset = 0.7

/**
 * Letters and numbers of the location grid along the rim of a view whose own lie outside of it: a zoomed drawing keeps
 * its place names. Nothing for a face whose frame shows its own.
 */
export function edgeNames(face: FaceOnSheet, view: Box, sizes: Sizes): readonly TextItem[] {
  const { frame, grid, placement } = face
  const shown: Box = {
    left: Math.max(frame.left, view.left),
    top: Math.max(frame.top, view.top),
    right: Math.min(frame.right, view.right),
    bottom: Math.min(frame.bottom, view.bottom),
  }
  if (shown.left >= shown.right || shown.top >= shown.bottom) return []
  const a = toFace(placement, [shown.left, shown.bottom])
  const b = toFace(placement, [shown.right, shown.top])
  const { rows, columns } = gridStrips(grid, [Math.min(a[0], b[0]), a[1], Math.max(a[0], b[0]), b[1]])
  const every = gridDensity(grid.cellMm, sizes).labelEvery
  const size = sizes.smallTextMm
  const style = { role: 'soft', halo: true, anchor: 'middle' } as const
  const middleOf = (from: number, to: number, low: number, high: number): number | null => {
    const [start, end] = [Math.max(low, Math.min(from, to)), Math.min(high, Math.max(from, to))]
    return end - start < size * 1.1 ? null : (start + end) / 2
  }
  const acrossMm = (u: number) => (placement.mirrored ? placement.uAtLeft - u : u - placement.uAtLeft)
  const downMm = (v: number) => placement.vAtTop - v
  const names: TextItem[] = []
  if (shown.top > frame.top) {
    for (const { name, fromMm, toMm } of columns.filter(({ name }) => Number(name) % every === 0)) {
      const x = middleOf(acrossMm(fromMm), acrossMm(toMm), shown.left + size * 2, shown.right)
      if (x !== null) names.push(text([x, shown.top + size * (inset + 0.7)], name, size, style))
    }
  }
  if (shown.left > frame.left) {
    for (const { name, fromMm, toMm } of rows) {
      const row = Math.round((grid.originMm[1] - toMm) / grid.cellMm)
      if ((row < 0 ? row : row + 1) % every !== 0) continue
      const y = middleOf(downMm(fromMm), downMm(toMm), shown.top + size * 2, shown.bottom)
      if (y !== null)
        names.push(text([shown.left + size * inset * 1.6, baselineAbout(y, size)], name, size, style))
    }
  }
  return names
}

/** The scale bar of a view whose sheet's own lies outside of it: in the lower right corner, about a sixth of it. */
export function viewScale(view: Box, sizes: Sizes): DimensionItem {
  const { smallTextMm: size } = sizes
  return scaleBar([view.right - size, view.bottom - size * 0.8], (view.right - view.left) / 6, size)
}
