/** A moment as a clock on the shop's wall shows it. */
export interface WallTime {
  /** "2026-10-21T14:05:00+02:00" */
  readonly iso: string
  /** The shown date and time as if it were universal time, milliseconds: spreadsheets know no zones. */
  readonly shownMs: number
}

/**
 * A reader of moments for one time zone. It is made once for a table: setting up the calendar takes far longer than
 * reading one moment. RangeError on what is no moment.
 */
export function wallClock(timeZone: string): (moment: string) => WallTime {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  })
  return (moment) => {
    const at = Date.parse(moment)
    if (Number.isNaN(at)) throw new RangeError(`"${moment}" is no moment in ISO 8601`)
    const shown = new Map(format.formatToParts(at).map(({ type, value }) => [type, Number(value)]))
    const part = (type: Intl.DateTimeFormatPartTypes) => shown.get(type) ?? 0
    const withinSecond = ((at % 1000) + 1000) % 1000
    const shownMs =
      Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second')) +
      withinSecond
    const aheadMin = (shownMs - at) / 60_000
    // Before zones were agreed on, clocks differed by seconds; such a moment is told in universal time.
    if (!Number.isInteger(aheadMin)) return { iso: withoutZeros(new Date(at).toISOString()), shownMs }
    const local = withoutZeros(new Date(shownMs).toISOString()).slice(0, -1)
    return { iso: `${local}${offsetText(aheadMin)}`, shownMs }
  }
}

const withoutZeros = (iso: string) => iso.replace('.000Z', 'Z')

function offsetText(aheadMin: number): string {
  const minutes = Math.abs(aheadMin)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${aheadMin < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`
}
