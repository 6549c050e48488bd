import type { Route } from 'next'
import { daysBetween, type IsoDate, shortDate } from '#lib/core/dates'
import { type OpenMatter, untilWords } from '#lib/core/log/index'
import { entryHref } from '../entry-href'
import { Link } from '../link'
import './log.css'

/** An open matter, with the mould or pattern that it is about where several are listed. */
export type MatterLine = OpenMatter & {
  readonly of?: 'mould' | 'pattern'
  readonly code?: string
  readonly name?: string
}

function ageWords(from: IsoDate, today: IsoDate): string {
  const days = daysBetween(from, today)
  if (days <= 0) return 'open since today'
  return days === 1 ? 'open since yesterday' : `open for ${days} days, since ${shortDate(from, today)}`
}

/** What somebody has to see to: who, what, until when, how long it stands; closed or carried on in two taps. */
export function OpenMatters({
  matters,
  base,
  today,
  mayLog,
  from = '',
}: {
  readonly matters: readonly MatterLine[]
  /** Where its log forms are: "/moulds/LH-P"; null where each line names its own. */
  readonly base: string | null
  readonly today: IsoDate
  readonly mayLog: boolean
  readonly from?: string
}) {
  return (
    <div>
      {matters.map((matter) => {
        const at = base ?? baseOf(matter)
        const over = matter.untilOn !== null && matter.untilOn < today
        const href = (outcome: 'closed' | 'carried') =>
          `${at}/log/settled?${new URLSearchParams({ entry: matter.entryId, outcome, ...(from ? { from } : {}) })}` as Route
        return (
          <div key={matter.entryId} className="matter-line">
            <div>
              {base === null ? (
                <>
                  <Link href={at as Route}>{matter.code}</Link>{' '}
                </>
              ) : null}
              <Link href={entryHref(at, matter.entryId)}>{matter.what}</Link>
              <div className="note">
                {[
                  matter.who ? `for ${matter.who}` : 'for nobody yet',
                  matter.areaName,
                  matter.kind === 'repair' ? 'repair for the time being' : null,
                  ageWords(matter.doneOn, today),
                  `written by ${matter.byName}`,
                  matter.carried ? 'carried on' : null,
                ]
                  .filter(Boolean)
                  .join('; ')}
              </div>
              {matter.untilOn ? (
                <div className={over ? 'due' : 'soft'}>{untilWords(matter.untilOn, today)}</div>
              ) : null}
            </div>
            {mayLog ? (
              <div className="matter-acts no-print">
                <Link className="btn" href={href('closed')} aria-label={`Close: ${matter.what}`}>
                  Close
                </Link>
                <Link className="btn" href={href('carried')} aria-label={`Carry on: ${matter.what}`}>
                  Carry on
                </Link>
              </div>
            ) : null}
          </div>
        )
      })}
    </div>
  )
}

const baseOf = ({ of, code = '' }: MatterLine) =>
  `/${of === 'pattern' ? 'patterns' : 'moulds'}/${encodeURIComponent(code)}`
