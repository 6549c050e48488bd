import type { Dowel, LocationGrid } from '../repair/types'
import { figure } from '../units/figure'
import { cellOf } from './location-grid'
import { distanceBetweenPoints, loopBounds } from './loop'
import type { Loop, Point } from './types'

/** The area that a place is named after. */
export interface NamedArea {
  readonly name: string
  readonly grid: LocationGrid
}

/** What a place is measured from. */
export type NearDowel = Pick<Dowel, 'tag' | 'at'>

/** Nearer than this a place is the dowel's own, mm. */
const ownPlaceMm = 0.05

/** The dowel whose centre lies nearest to a point; null where there is none. */
export function nearestDowel<Each extends NearDowel>(
  point: Point,
  dowels: readonly Each[],
): { readonly dowel: Each; readonly mm: number } | null {
  let best: { dowel: Each; mm: number } | null = null
  for (const dowel of dowels) {
    const mm = distanceBetweenPoints(point, dowel.at)
    if (best === null || mm < best.mm) best = { dowel, mm }
  }
  return best
}

/**
 * A place in words: "floor B5, 84 mm from D03", measured to the dowel's centre; "floor B5" where the area has no dowel. `print`
 * adds how far along u and v, so that it can be found with a rule: "... (60 mm towards +u, 59 mm towards -v)".
 * RangeError for a point that is no point.
 */
export function placeWords(
  point: Point,
  area: NamedArea,
  dowels: readonly NearDowel[],
  style: 'short' | 'print' = 'short',
): string {
  const place = `${area.name} ${cellOf(area.grid, point)}`
  const nearest = nearestDowel(point, dowels)
  if (nearest === null) return place
  const { dowel, mm } = nearest
  if (mm < ownPlaceMm) return `${place}, at ${dowel.tag}`
  const away = `${place}, ${figure(mm, mm < 10 ? 1 : 0)} mm from ${dowel.tag}`
  if (style === 'short') return away
  const ways = [wayWords(point[0] - dowel.at[0], 'u'), wayWords(point[1] - dowel.at[1], 'v')].filter(
    (way) => way !== null,
  )
  return ways.length === 0 ? away : `${away} (${ways.join(', ')})`
}

/** The point that an outline is named by: the middle of the box round it. */
export function middleOfLoop(outer: Loop): Point {
  const [uMin, vMin, uMax, vMax] = loopBounds(outer)
  return [(uMin + uMax) / 2, (vMin + vMax) / 2]
}

function wayWords(mm: number, axis: 'u' | 'v'): string | null {
  if (Math.abs(mm) < ownPlaceMm) return null
  return `${figure(Math.abs(mm), Math.abs(mm) < 10 ? 1 : 0)} mm towards ${mm > 0 ? '+' : '−'}${axis}`
}
