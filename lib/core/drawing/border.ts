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
  const size = sizes.smallTextMm
  const across = ruling(columns, density, size, {
    at: xOf,
    low: frame.left,
    high: frame.right,
    isNamed: (cell) => meets(uOf(cell), uOf(cell + 1), named[0], named[2]),
    nameOf: columnName,
  })
  const down = ruling(rows, density, size, {
    at: yOf,
    low: frame.top,
    high: frame.bottom,
    isNamed: (cell) => meets(vOf(cell + 1), vOf(cell), named[1], named[3]),
    nameOf: rowName,
  })
  const { left, top, right, bottom } = frame
  const hairs: readonly (readonly Xy[])[] = [
    ...across.lines.map((x): readonly Xy[] => [
      [x, top],
      [x, bottom],
    ]),
    ...down.lines.map((y): readonly Xy[] => [
      [left, y],
      [right, y],
    ]),
  ]
  const outline: readonly Xy[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]
  const gap = size * 0.55
  const soft = { role: 'soft' } as const
  return {
    frame,
    items: [
      path(hairs, false, 'hair', 'hair'),
      path([outline], true, 'thin', 'ink'),
      ...across.labels.map(({ name, at }) =>
        text([at, top - gap], name, size, { ...soft, anchor: 'middle' }),
      ),
      ...down.labels.map(({ name, at }) =>
        text([left - gap, baselineAbout(at, size)], name, size, { ...soft, anchor: 'end' }),
      ),
    ],
  }
}

/** One axis of the grid as it lies on the drawing. */
interface Axis {
  /** Where a cell begins, drawing mm. */
  readonly at: (cell: number) => number
  readonly low: number
  readonly high: number
  readonly isNamed: (cell: number) => boolean
  readonly nameOf: (cell: number) => string
}

function ruling(cellsShown: readonly number[], density: GridDensity, sizeMm: number, axis: Axis) {
  const { at, low, high } = axis
  const slack = (high - low) * 1e-6
  return {
    lines: cellsShown
      .filter((cell) => cell % density.hairEvery === 0)
      .map(at)
      .filter((place) => place > low + slack && place < high - slack),
    labels: cellsShown
      .filter((cell) => isLabelled(cell, density) && axis.isNamed(cell))
      .flatMap((cell) => {
        const middle = middleInside(at(cell), at(cell + 1), low, high, sizeMm)
        return middle === null ? [] : [{ name: axis.nameOf(cell), at: middle }]
      }),
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

/** The middle of the part of a cell that shows in the frame; null when too little of it shows. */
function middleInside(a: number, b: number, low: number, high: number, sizeMm: number): number | null {
  const from = Math.max(low, Math.min(a, b))
  const to = Math.min(high, Math.max(a, b))
  return to - from < Math.min(sizeMm * 0.9, Math.abs(b - a) * 0.5) ? null : (from + to) / 2
}
