import { loopsOf } from './region'
import { turn } from './segment'
import type { Loop, Region } from './types'

/** Flattened arcs turn by less than this at each point. */
const sharpRad = (10 * Math.PI) / 180

/** How many corners of the outlines turn by more than 10 degrees, to either side. */
export function raggedCorners(regions: readonly Region[]): number {
  return loopsOf(regions).reduce((sum, loop) => sum + sharpCorners(loop), 0)
}

function sharpCorners(loop: Loop): number {
  return loop.filter((here, index) => {
    const before = loop[(index + loop.length - 1) % loop.length]!
    const after = loop[(index + 1) % loop.length]!
    const along = (here[0] - before[0]) * (after[0] - here[0]) + (here[1] - before[1]) * (after[1] - here[1])
    return Math.abs(Math.atan2(turn(before, here, after), along)) > sharpRad
  }).length
}
