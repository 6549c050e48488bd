import { enclosed } from './clipping'
import { difference } from './combine'
import { area } from './region'
import type { Loop, Region } from './types'

/**
 * The pieces that a loop encloses, largest first: one for a clean outline, two for a bow-tie. Areas that the loop
 * runs round twice are pieces too.
 */
export function lobes(loop: Loop): readonly Region[] {
  const once = enclosed(loop, 'even-odd')
  const twice = difference(enclosed(loop, 'non-zero'), once)
  return [...once, ...twice].sort((a, b) => area([b]) - area([a]))
}
