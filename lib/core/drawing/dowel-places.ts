import type { IsoDate } from '../dates'
import type { LogEntry } from '../log/types'
import type { FaceDowel } from './face-model'

/** A locating point as an issue of the table has it. */
export interface TablePoint {
  readonly areaId: string | null
  readonly tag: string
  readonly uMm: number
  readonly vMm: number
  readonly diameterMm: number
  readonly isDatum: boolean
  readonly toleranceMm: number | null
}

export interface TableIssue {
  readonly issuedOn: IsoDate
  readonly points: readonly TablePoint[]
}

/** What counts as a move where the table gives no tolerance, mm. */
const usualToleranceMm = 0.1

/**
 * The locating points of an area where they stand now: as the issue in force has them, or where a later entry of the log
 * set them. The place before is that of the issue before, for a point of the same tag that lay in the same area then
 * and moved by more than its tolerance (0.1 mm where it has none). Struck entries don't count.
 */
export function dowelPlaces(
  areaId: string,
  issue: TableIssue,
  before: TableIssue | null,
  entries: readonly LogEntry[],
): readonly FaceDowel[] {
  const old = new Map(
    (before?.points ?? [])
      .filter((point) => point.areaId === areaId)
      .map((point) => [keyOf(point.tag), point]),
  )
  const set = lastPlaces(entries, issue.issuedOn)
  return issue.points
    .filter((point) => point.areaId === areaId)
    .map((point): FaceDowel => {
      const fromLog = set.get(keyOf(point.tag)) ?? null
      const was = fromLog === null ? old.get(keyOf(point.tag)) : point
      const at = fromLog?.at ?? ([point.uMm, point.vMm] as const)
      const byMm = was === undefined ? 0 : Math.hypot(at[0] - was.uMm, at[1] - was.vMm)
      const moved = was !== undefined && byMm > (point.toleranceMm ?? usualToleranceMm)
      return {
        tag: point.tag,
        at,
        diameterMm: fromLog?.diameterMm ?? point.diameterMm,
        isDatum: point.isDatum,
        oldPlace: moved ? [was.uMm, was.vMm] : null,
        setOn: fromLog === null ? null : fromLog.on,
      }
    })
}

interface SetPlace {
  readonly at: readonly [number, number]
  readonly diameterMm: number | null
  readonly on: IsoDate
}

/** By tag, the place that the log gave last on the day of the issue or after it. The order of entries does not matter. */
function lastPlaces(entries: readonly LogEntry[], sinceDay: IsoDate): ReadonlyMap<string, SetPlace> {
  const places = new Map<string, SetPlace & { readonly writtenAt: string }>()
  for (const entry of entries) {
    if (entry.kind !== 'dowel-changed' || entry.correctedById !== null || entry.doneOn < sinceDay) continue
    const { tag, uMm, vMm, diameterMm } = entry.data
    if (uMm === null || vMm === null) continue
    const known = places.get(keyOf(tag))
    if (
      known &&
      (known.on > entry.doneOn || (known.on === entry.doneOn && known.writtenAt > entry.writtenAt))
    )
      continue
    places.set(keyOf(tag), { at: [uMm, vMm], diameterMm, on: entry.doneOn, writtenAt: entry.writtenAt })
  }
  return places
}

function keyOf(tag: string): string {
  return tag.trim().toLowerCase()
}
