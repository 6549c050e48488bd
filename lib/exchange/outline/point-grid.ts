import { distanceBetweenPoints, type Point } from '#lib/core/geometry/index'

/** Points sorted into square cells, so that a point's neighbours are found without looking at all the others. */
export interface PointGrid<Item> {
  readonly add: (at: Point, item: Item) => void
  /** Items within the reach, nearest first, at most `most` of them. */
  readonly near: (at: Point, most: number) => readonly Neighbour<Item>[]
}

export interface Neighbour<Item> {
  readonly item: Item
  readonly at: Point
  readonly mm: number
}

/** RangeError unless the reach is above 0. */
export function pointGrid<Item>(reachMm: number): PointGrid<Item> {
  if (!(reachMm > 0)) throw new RangeError(`reach must be above 0 mm, got ${reachMm}`)
  const cells = new Map<number, { at: Point; item: Item }[]>()
  const cellMm = 4 * reachMm
  const column = (mm: number) => Math.floor(mm / cellMm)
  return {
    add(at, item) {
      const key = cellKey(column(at[0]), column(at[1]))
      const cell = cells.get(key)
      if (cell === undefined) cells.set(key, [{ at, item }])
      else cell.push({ at, item })
    },
    near(at, most) {
      const found: Neighbour<Item>[] = []
      for (let u = column(at[0] - reachMm); u <= column(at[0] + reachMm); u++) {
        for (let v = column(at[1] - reachMm); v <= column(at[1] + reachMm); v++) {
          for (const each of cells.get(cellKey(u, v)) ?? []) {
            const mm = distanceBetweenPoints(at, each.at)
            if (mm <= reachMm) found.push({ ...each, mm })
            if (found.length >= 16 * most) break
          }
        }
      }
      return found.sort((a, b) => a.mm - b.mm).slice(0, most)
    },
  }
}

/** Different cells may share a key: what lies too far is sorted out by its distance. */
function cellKey(u: number, v: number): number {
  return Math.imul(u, 73_856_093) ^ Math.imul(v, 19_349_663)
}

/** Numbers points from 0 up, the same number for points within the tolerance of the first one that had it. */
export function pointNumbers(toleranceMm: number): (at: Point) => number {
  const grid = pointGrid<number>(toleranceMm)
  let count = 0
  return (at) => {
    const known = grid.near(at, 1)[0]
    if (known !== undefined) return known.item
    grid.add(at, count)
    return count++
  }
}
