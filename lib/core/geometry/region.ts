import { clockwise, counterClockwise, loopArea, loopBounds, loopPerimeter } from './loop'
import type { Bounds, Loop, Region } from './types'

/** Area of all regions less their holes, mm2. Regions that overlap count twice: unite them first. */
export function area(regions: readonly Region[]): number {
  return regions.reduce((sum, { outer, holes }) => {
    const holesMm2 = holes.reduce((each, hole) => each + loopArea(hole), 0)
    return sum + loopArea(outer) - holesMm2
  }, 0)
}

/** Length of all outlines, those of holes included, mm. */
export function perimeter(regions: readonly Region[]): number {
  return loopsOf(regions).reduce((sum, loop) => sum + loopPerimeter(loop), 0)
}

/** Box round all regions, mm. RangeError when there are none. */
export function bounds(regions: readonly Region[]): Bounds {
  return loopBounds(regions.flatMap((region) => region.outer))
}

/** Outer loop counter-clockwise, holes clockwise. */
export function orientRegion({ outer, holes }: Region): Region {
  return { outer: counterClockwise(outer), holes: holes.map(clockwise) }
}

/** Outer loops and holes alike. */
export function loopsOf(regions: readonly Region[]): readonly Loop[] {
  return regions.flatMap(({ outer, holes }) => [outer, ...holes])
}
