import { crosses, overlap, type Segment } from './boxes'
import type { Box, Xy } from './types'

export interface RoomWish {
  readonly widthMm: number
  readonly heightMm: number
  /** Where the block's top left corner would like to be. */
  readonly near: Xy
  /** Positions are tried on a raster of this pitch. */
  readonly stepMm: number
}

/**
 * The free place for a block that lies nearest to where it would like to be: inside `area`, off the taken boxes,
 * crossed by no line, and passing `accepts`. Null when there is none on the raster.
 */
export function findRoom(
  wish: RoomWish,
  area: Box,
  taken: readonly Box[],
  lines: readonly Segment[],
  accepts: (box: Box) => boolean = () => true,
): Box | null {
  const across = area.right - area.left - wish.widthMm
  const down = area.bottom - area.top - wish.heightMm
  if (across < 0 || down < 0) return null
  const corners: Xy[] = []
  for (const x of raster(area.left, across, wish.stepMm)) {
    for (const y of raster(area.top, down, wish.stepMm)) corners.push([x, y])
  }
  const distance = ([x, y]: Xy) => Math.hypot(x - wish.near[0], y - wish.near[1])
  corners.sort((a, b) => distance(a) - distance(b) || a[1] - b[1] || a[0] - b[0])
  for (const [x, y] of corners) {
    const box = { left: x, top: y, right: x + wish.widthMm, bottom: y + wish.heightMm }
    if (taken.some((other) => overlap(box, other))) continue
    if (lines.some((line) => crosses(line, box))) continue
    if (accepts(box)) return box
  }
  return null
}

function raster(start: number, length: number, stepMm: number): readonly number[] {
  const count = Math.max(1, Math.ceil(length / stepMm))
  return Array.from({ length: count + 1 }, (_, i) => start + (length * i) / count)
}
