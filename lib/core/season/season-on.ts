import type { IsoDate } from '../dates'
import type { SeasonDays } from './overlaps'

/** The season that counts on a day: the latest that has begun, also after its last day. Null before the first. */
export function seasonOn<Season extends SeasonDays>(seasons: readonly Season[], day: IsoDate): Season | null {
  return seasons.reduce<Season | null>(
    (found, season) =>
      season.startsOn <= day && (found === null || season.startsOn > found.startsOn) ? season : found,
    null,
  )
}
