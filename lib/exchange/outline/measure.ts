import {
  clockwise,
  counterClockwise,
  type Loop,
  loopArea,
  loopBounds,
  loopPerimeter,
} from '#lib/core/geometry/index'
import type { LoopReading } from './types'

/** A loop turned the way its role runs, with its measures. */
export function measured(loop: Loop, role: LoopReading['role']): LoopReading {
  const points = role === 'outer' ? counterClockwise(loop) : clockwise(loop)
  return {
    role,
    points,
    areaMm2: loopArea(points),
    perimeterMm: loopPerimeter(points),
    boundsMm: loopBounds(points),
  }
}
