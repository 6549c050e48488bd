import type { IsoDate } from '#lib/core/dates'
import type { Who } from '../data/people'
import type { Book } from './book'
import { type OnePull, run } from './pulls'
import { coats, freshRelease, leakChecks, rack, stripAndRelease, walk } from './upkeep'

/** A whole season of a mould that is used on its own: walk, release, pulls with a leak check half way, rack. */
export interface SeasonStory {
  readonly place: string
  readonly walkOn: IsoDate
  readonly walkedBy: Who
  readonly crew: readonly Who[]
  readonly release: 'as new' | 'stripped' | 'touched up'
  /** Pulls before and after the leak check half way. */
  readonly first: Stretch
  readonly halfWay: IsoDate
  readonly later: Stretch
  /** mbar cold and hot at the walk and half way. */
  readonly leak: readonly [cold: number, hot: number, laterCold: number, laterHot: number]
  readonly serials: string
  readonly odd?: Readonly<Record<number, Partial<OnePull>>>
  readonly touchUpEvery?: number
  readonly racked?: { readonly on: IsoDate; readonly place: string }
}

interface Stretch {
  readonly from: IsoDate
  readonly to: IsoDate
  readonly count: number
}

export function tellSeason(book: Book, story: SeasonStory): void {
  const { crew, walkOn, walkedBy, first, later, halfWay, leak, racked } = story
  const worker = crew[crew.length - 1] ?? walkedBy
  walk(book, walkOn, walkedBy, story.place, leak[0], leak[1])
  const releaseOn = first.from
  if (story.release === 'as new') freshRelease(book, releaseOn, worker)
  else if (story.release === 'stripped') stripAndRelease(book, releaseOn, worker)
  else coats(book, releaseOn, worker, 2)
  const common = {
    serials: story.serials,
    by: crew,
    ...(story.odd ? { odd: story.odd } : {}),
    ...(story.touchUpEvery ? { touchUpEvery: story.touchUpEvery } : {}),
  }
  run(book, { ...common, ...first })
  leakChecks(book, halfWay, worker, leak[2], leak[3])
  run(book, { ...common, ...later, firstNo: first.count + 1 })
  if (racked) rack(book, racked.on, walkedBy, racked.place)
}

/** The usual dates of the three seasons behind; a mould shifts its walk by a day or two. */
export const seasonDates = {
  '24': {
    first: ['2023-09-25', '2024-02-22'],
    halfWay: '2024-02-26',
    later: ['2024-02-28', '2024-06-20'],
    racked: '2024-08-15',
  },
  '25': {
    first: ['2024-09-23', '2025-02-20'],
    halfWay: '2025-02-24',
    later: ['2025-02-26', '2025-06-18'],
    racked: '2025-08-12',
  },
  '26': {
    first: ['2025-09-22', '2026-02-19'],
    halfWay: '2026-02-23',
    later: ['2026-02-25', '2026-06-19'],
    racked: '2026-08-13',
  },
} as const

/** A season on its usual dates. */
export function usualSeason(
  year: keyof typeof seasonDates,
  counts: readonly [first: number, later: number],
  story: Omit<SeasonStory, 'first' | 'later' | 'halfWay' | 'racked' | 'serials'> & {
    readonly part: string
    readonly rack: string
  },
): SeasonStory {
  const dates = seasonDates[year]
  const { part, rack: place, ...rest } = story
  return {
    ...rest,
    serials: `${part}-${year}`,
    first: { from: dates.first[0], to: dates.first[1], count: counts[0] },
    halfWay: dates.halfWay,
    later: { from: dates.later[0], to: dates.later[1], count: counts[1] },
    racked: { on: dates.racked, place },
  }
}
