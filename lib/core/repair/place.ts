import { cellOf } from '../geometry/index'
import type { Point } from '../geometry/types'
import type { PatchArea } from './types'

/** "floor B5", or with the name of what is there "floor B5, D3". */
export function namePlace(area: PatchArea, at: Point, name?: string): string {
  const place = `${area.name} ${cellOf(area.grid, at)}`
  return name === undefined ? place : `${place}, ${name}`
}
