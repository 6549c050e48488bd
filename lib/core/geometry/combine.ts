import { combine } from './clipping'
import { area } from './region'
import type { Loop, Region } from './types'

/** All that lies in any of the regions; overlapping ones come out as one. */
export function union(regions: readonly Region[]): readonly Region[] {
  return combine('union', regions, [])
}

/** What of `regions` is not in `taken`. */
export function difference(regions: readonly Region[], taken: readonly Region[]): readonly Region[] {
  return combine('difference', regions, taken)
}

/** What lies in both. */
export function intersection(regions: readonly Region[], others: readonly Region[]): readonly Region[] {
  return combine('intersection', regions, others)
}

/** Area of the regions that lies beyond a boundary, mm2. */
export function areaOutside(regions: readonly Region[], boundary: Loop): number {
  return area(difference(regions, [{ outer: boundary, holes: [] }]))
}
