import { columnName, rowName } from '../geometry/index'
import type { Bounds } from '../geometry/types'
import type { LocationGrid } from '../repair/types'
import type { Sizes } from './medium'
import { toDrawing } from './placement'
import { baselineAbout, path, text } from './primitives'
import type { Box, FacePlacement, Item, Xy } from './types'

/** How far the rulings of a location grid are thinned out, in cells. */
export interface GridDensity {
  readonly hairEvery: number
  readonly labelEvery: number
}

const niceSteps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const
const labelPitchInTexts = 1.9

/** Hairlines for every cell while they stand 6 px apart or more, else for every so-many; labels likewise. */
export function gridDensity(cellMm: number, sizes: Sizes): GridDensity {
  const every = (leastMm: number) => niceSteps.find((step) => step * cellMm >= leastMm) ?? 1000
  const hairEvery = every(sizes.finestRulingMm)
  return { hairEvery, labelEvery: Math.max(hairEvery, every(labelPitchInTexts * sizes.textMm)) }
}

/**
 * The frame of a face drawing with the location grid in it and its letters and numbers along two sides. Rows and
 * columns are named where the face reaches (`named`), not in the air round it.
 */
export function border(
  grid: LocationGrid,
  window: Bounds,
  named: Bounds,
  placement: FacePlacement,
  sizes: Sizes,
): { readonly frame: Box; readonly items: readonly Item[] } {
  const [uMin, vMin, uMax, vMax] = window
  const a = toDrawing(placement, [uMin, vMax])
  const b = toDrawing(placement, [uMax, vMin])
  const frame: Box = {
    left: Math.min(a[0], b[0]),
    top: a[1],
    right: Math.max(a[0], b[0]),
    bottom: b[1],
  }
  const density = gridDensity(grid.cellMm, sizes)
  const columns = cells(uMin - grid.originMm[0], uMax - grid.originMm[0], grid.cellMm)
  const rows = cells(grid.originMm[1] - vMax, grid.originMm[1] - vMin, grid.cellMm)
  const uOf = (cellsRight: number) => grid.originMm[0] + cellsRight * grid.cellMm
  const vOf = (cellsDown: number) => grid.originMm[1] - cellsDown * grid.cellMm
  const xOf = (cellsRight: number) => toDrawing(placement, [uOf(cellsRight), vMax])[0]
  const yOf = (cellsDown: number) => toDrawing(placement, [uMin, vOf(cellsDown)])[1]
  const hairs: (readonly Xy[])[] = [
    ...columns
      .filter((cell) => cell % density.hairEvery === 0 && strictlyInside(xOf(cell), frame.left, frame.right))
      .map((cell) => [[xOf(cell), frame.top] as const, [xOf(cell), frame.bottom] as const]),
    ...rows
      .filter((cell) => cell % density.hairEvery === 0 && strictlyInside(yOf(cell), frame.top, frame.bottom))
      .map((cell) => [[frame.left, yOf(cell)] as const, [frame.right, yOf(cell)] as const]),
  ]
  const size = sizes.smallTextMm
  const labels = [
    ...columns
      .filter((cell) => isLabelled(cell, density) && meets(uOf(cell), uOf(cell + 1), named[0], named[2]))
      .map((cell) => ({ cell, name: columnName(cell) })),
  ].flatMap(({ cell, name }) => {
    const x = middleInside(xOf(cell), xOf(cell + 1), frame.left, frame.right, size)
    return x === null
      ? []
      : [text([x, frame.top - size * 0.55], name, size, { anchor: 'middle', role: 'soft' })]
  })
  const letters = rows
    .filter((cell) => isLabelled(cell, density) && meets(vOf(cell + 1), vOf(cell), named[1], named[3]))
    .flatMap((cell) => {
      const y = middleInside(yOf(cell), yOf(cell + 1), frame.top, frame.bottom, size)
      if (y === null) return []
      const at: Xy = [frame.left - size * 0.55, baselineAbout(y, size)]
      return [text(at, rowName(cell), size, { anchor: 'end', role: 'soft' })]
    })
  const outline: readonly Xy[] = [
    [frame.left, frame.top],
    [frame.right, frame.top],
    [frame.right, frame.bottom],
    [frame.left, frame.bottom],
  ]
  return {
    frame,
    items: [path(hairs, false, 'hair', 'hair'), path([outline], true, 'thin', 'ink'), ...labels, ...letters],
  }
}

/** Every labelled cell's number is a multiple of the step, counted away from the origin on either side. */
function isLabelled(cell: number, density: GridDensity): boolean {
  return (cell < 0 ? cell : cell + 1) % density.labelEvery === 0
}

function meets(from: number, to: number, low: number, high: number): boolean {
  const slack = (to - from) * 1e-6
  return from < high - slack && to > low + slack
}

/** Indexes of the cells that a stretch touches, 0 for the first one from the origin. */
function cells(fromMm: number, toMm: number, cellMm: number): readonly number[] {
  const first = Math.floor(fromMm / cellMm)
  const last = Math.ceil(toMm / cellMm)
  return Array.from({ length: last - first }, (_, i) => first + i)
}

function strictlyInside(value: number, low: number, high: number): boolean {
  const slack = (high - low) * 1e-6
  return value > low + slack && value < high - slack
}

/** The middle of the part of a cell that shows in the frame; null when too little of it shows. */
function middleInside(a: number, b: number, low: number, high: number, sizeMm: number): number | null {
  const from = Math.max(low, Math.min(a, b))
  const to = Math.min(high, Math.max(a, b))
  return to - from < Math.min(sizeMm * 0.9, Math.abs(b - a) * 0.5) ? null : (from + to) / 2
}
