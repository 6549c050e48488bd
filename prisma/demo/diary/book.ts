import type { IsoDate } from '#lib/core/dates'
import type { LogData, LogKind, Precision } from '#lib/core/log/index'
import { minuteOf } from '../base/calendar'
import { drawer } from '../base/ids'
import type { Who } from '../data/people'

/** An entry of a mould's diary before it has ids. */
export interface Draft {
  /** Its name among all entries; other records and corrections point to it. */
  readonly key: string
  readonly mould: string
  readonly kind: LogKind
  readonly data: LogData[LogKind]
  readonly doneOn: IsoDate
  /** Null: only the day (or less) is known. */
  readonly minute: number | null
  readonly precision: Precision
  /** When it was written, if that was another day. */
  readonly writtenOn: IsoDate
  readonly by: Who
  readonly area: string | null
  /** Number of the patch whose spot alone it concerns. */
  readonly patch: number | null
  readonly correctsKey: string | null
  readonly note: string
}

export interface More {
  readonly key?: string
  /** "14:05" */
  readonly at?: string
  /** Minutes after the entry before it, on the same day. */
  readonly afterMin?: number
  readonly precision?: Precision
  readonly writtenOn?: IsoDate
  readonly area?: string
  readonly patch?: number
  readonly correctsKey?: string
  readonly note?: string
}

/** The diary of one mould while it is being told, in the order in which things were done. */
export interface Book {
  readonly mould: string
  readonly drafts: readonly Draft[]
  readonly draw: (low: number, high: number) => number
  /** Pulls since the whole face was last coated, and since it was stripped or first coated. */
  readonly since: { readonly coat: number; readonly strip: number }
  /** Writes an entry and answers its key. Throws when it stands out of order. */
  readonly write: <Kind extends LogKind>(
    on: IsoDate,
    by: Who,
    kind: Kind,
    data: LogData[Kind],
    more?: More,
  ) => string
}

/** Up to this day the book was on paper: the day is known and no time. */
const lastPaperDay: IsoDate = '2024-08-31'

/** Where an entry of which only the day is known stands in its day. */
export const noon = 720

export function openBook(mould: string): Book {
  const drafts: Draft[] = []
  const draw = drawer(`diary/${mould}`)
  const since = { coat: 0, strip: 0 }
  let now = { on: '', minute: 0 }

  function minuteFor(on: IsoDate, more: More): number | null {
    if (more.precision && more.precision !== 'minute') return null
    if (more.at) return minuteOf(more.at)
    if (on <= lastPaperDay) return null
    return now.on === on ? now.minute + (more.afterMin ?? draw(12, 48)) : 8 * 60 + draw(15, 100)
  }

  return {
    mould,
    drafts,
    draw,
    since,
    write(on, by, kind, data, more = {}) {
      const minute = minuteFor(on, more)
      const backdated = more.writtenOn !== undefined
      const order = minute ?? noon
      if (!backdated && (on < now.on || (on === now.on && order < now.minute))) {
        throw new Error(
          `${mould}: ${kind} of ${on} at minute ${order} stands after ${now.on}, minute ${now.minute}`,
        )
      }
      if (!backdated) now = { on, minute: order }
      const key = more.key ?? `${mould}/${drafts.length + 1}`
      drafts.push({
        key,
        mould,
        kind,
        data,
        doneOn: on,
        minute,
        precision: more.precision ?? (minute === null ? 'day' : 'minute'),
        writtenOn: more.writtenOn ?? on,
        by,
        area: more.area ?? null,
        patch: more.patch ?? null,
        correctsKey: more.correctsKey ?? null,
        note: more.note ?? '',
      })
      const counted = drafts.find((draft) => draft.key === more.correctsKey)?.kind === 'pull' ? -1 : 0
      const change = counted + (kind === 'pull' ? 1 : 0)
      const whole = more.area === undefined && more.patch === undefined
      since.coat = kind === 'coat' && whole ? 0 : since.coat + change
      since.strip = kind === 'strip' && whole ? 0 : since.strip + change
      return key
    },
  }
}
