import { cellOf, type NamedArea, type NearDowel, type Point, placeWords } from '../geometry/index'
import type { LogEntry } from './types'

/**
 * Where on an area an entry tells of something, by the location grid and the nearest locating point: "floor B5, 40 mm from
 * D03"; of measured points the cell of each: "D01 in B5, D02 in C7". Null where it tells of no place on the area.
 */
export function entryPlace(
  entry: Pick<LogEntry, 'kind' | 'data'>,
  area: NamedArea,
  dowels: readonly NearDowel[],
): string | null {
  const told = entry as LogEntry
  switch (told.kind) {
    case 'damage':
    case 'repair': {
      const at = pointOf(told.data)
      return at && placeWords(at, area, dowels)
    }
    case 'dowel-changed': {
      const at = pointOf(told.data)
      const own = keyOf(told.data.tag)
      // Its own place says nothing of where it is.
      return (
        at &&
        placeWords(
          at,
          area,
          dowels.filter(({ tag }) => keyOf(tag) !== own),
        )
      )
    }
    case 'measured':
      if (told.data.frame !== 'area' || told.data.points.length === 0) return null
      return told.data.points
        .map(({ tag, xMm, yMm }) => `${tag} in ${cellOf(area.grid, [xMm, yMm])}`)
        .join(', ')
    default:
      return null
  }
}

function pointOf({ uMm, vMm }: { readonly uMm: number | null; readonly vMm: number | null }): Point | null {
  return uMm === null || vMm === null ? null : [uMm, vMm]
}

function keyOf(tag: string): string {
  return tag.trim().toLowerCase()
}
