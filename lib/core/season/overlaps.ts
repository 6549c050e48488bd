import { daysBetween, type IsoDate } from '../dates'

export interface SeasonDays {
  readonly name: string
  readonly startsOn: IsoDate
  /** Its last day. */
  readonly endsOn: IsoDate
}

/** Seasons that follow each other with days in common, or with days that belong to none. */
export interface SeasonSeam {
  readonly kind: 'overlap' | 'gap'
  readonly earlier: string
  readonly later: string
  readonly days: number
}

/**
 * Where a season overlaps one that starts later, and where days between two neighbours belong to no season. Pulls of
 * a season are counted from its first day: a day in two seasons counts for the later one.
 */
export function seasonSeams(seasons: readonly SeasonDays[]): readonly SeasonSeam[] {
  const inOrder = [...seasons].sort((a, b) =>
    a.startsOn < b.startsOn ? -1 : a.startsOn > b.startsOn ? 1 : 0,
  )
  return inOrder.flatMap((later, index): SeasonSeam[] => {
    const earlier = inOrder.slice(0, index)
    const overlaps = earlier
      .filter((season) => season.endsOn >= later.startsOn)
      .map((season): SeasonSeam => {
        const [until = later.endsOn] = [season.endsOn, later.endsOn].sort()
        const days = daysBetween(later.startsOn, until) + 1
        return { kind: 'overlap', earlier: season.name, later: later.name, days }
      })
    const last = earlier.reduce<SeasonDays | null>(
      (found, season) => (found === null || season.endsOn > found.endsOn ? season : found),
      null,
    )
    const between = last === null ? 0 : daysBetween(last.endsOn, later.startsOn) - 1
    if (last === null || between < 1) return overlaps
    return [...overlaps, { kind: 'gap', earlier: last.name, later: later.name, days: between }]
  })
}
