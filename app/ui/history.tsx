import type { Route } from 'next'
import { shopTime, shortDate } from '#lib/core/dates'
import { entryWords, type LogEntry } from '#lib/core/log/index'
import { Link } from './link'

/** Entries that only a plan writes, and that are put right by a plan. */
const byPlan = new Set(['patch-laid', 'proved', 'correction'])

function when(entry: LogEntry, today: string, timeZone: string): string {
  if (entry.precision === 'month') return entry.doneOn.slice(0, 7)
  if (entry.precision === 'year') return entry.doneOn.slice(0, 4)
  if (entry.precision === 'before') return `before ${entry.doneOn.slice(0, 4)}`
  const day = shortDate(entry.doneOn, today)
  return entry.doneAt ? `${day}, ${shopTime(entry.doneAt, timeZone)}` : day
}

/** The history of a mould, newest first. What was put right stays readable, struck through. */
export function History({
  code,
  entries,
  initials,
  today,
  timeZone,
  mayLog,
}: {
  readonly code: string
  readonly entries: readonly LogEntry[]
  readonly initials: ReadonlyMap<string, string>
  readonly today: string
  readonly timeZone: string
  readonly mayLog: boolean
}) {
  return (
    <div className="table-room">
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">What</th>
            <th scope="col">
              <span className="quiet">Detail</span>
            </th>
            <th scope="col">Who</th>
            {mayLog ? (
              <th scope="col">
                <span className="quiet">Put right</span>
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => {
            const { what, detail } = entryWords(entry)
            const struck = entry.correctedById !== null
            const line = struck ? <s>{what}</s> : <b>{what}</b>
            const rest = [detail, entry.note].filter(Boolean).join('. ')
            return (
              <tr key={entry.id} id={`entry-${entry.id}`} className={struck ? 'soft' : undefined}>
                <td className="soft" style={{ whiteSpace: 'nowrap' }}>
                  {when(entry, today, timeZone)}
                </td>
                <td>{line}</td>
                <td>
                  {struck ? <s>{rest}</s> : rest}
                  {struck ? (
                    <>
                      {' '}
                      <a href={`#entry-${entry.correctedById}`}>put right</a>
                    </>
                  ) : null}
                  {entry.correctsId ? (
                    <>
                      {' '}
                      <a href={`#entry-${entry.correctsId}`}>puts an earlier entry right</a>
                    </>
                  ) : null}
                </td>
                <td title={entry.byName}>{initials.get(entry.byName) ?? entry.byName}</td>
                {mayLog ? (
                  <td className="n">
                    {struck || byPlan.has(entry.kind) ? null : (
                      <Link
                        href={
                          `/moulds/${encodeURIComponent(code)}/log/${entry.kind}?corrects=${entry.id}` as Route
                        }
                        aria-label={`Put right: ${what}, ${when(entry, today, timeZone)}`}
                      >
                        put right
                      </Link>
                    )}
                  </td>
                ) : null}
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}
