import type { Route } from 'next'
import { shortDate } from '#lib/core/dates'
import type { BuiltPartLine } from '#lib/services/built-parts'
import './book-sheet.css'
import { Link } from './link'

export const fateWords = { good: 'good', rework: 'to rework', scrapped: 'scrapped' } as const
export const fateWeight = { good: 'good', rework: 'due', scrapped: 'held' } as const

export const builtPartHref = (serial: string) => `/parts/built/${encodeURIComponent(serial)}` as Route

/** Built parts by the day on which they came out. `mould`: told of that mould only. */
export function BuiltPartTable({
  rows,
  today,
  mould,
}: {
  readonly rows: readonly BuiltPartLine[]
  readonly today: string
  readonly mould?: string
}) {
  return (
    <div className="table-room">
      <table className="lines stacked">
        <thead>
          <tr>
            <th scope="col">Serial</th>
            <th scope="col">Pulled</th>
            <th scope="col">{mould ? 'How it went' : 'Off'}</th>
            <th scope="col">Part</th>
            <th scope="col">Where it is now</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const pulls = mould ? row.pulls.filter((pull) => pull.mouldCode === mould) : row.pulls
            const day = pulls
              .map((pull) => pull.doneOn)
              .sort()
              .at(-1)
            return (
              <tr key={row.id}>
                <td>
                  <Link href={builtPartHref(row.serial)}>
                    <b>{row.serial}</b>
                  </Link>
                  {mould ? null : <span className="soft"> {row.partName ?? ''}</span>}
                </td>
                <td className="beside" data-label="Pulled">
                  {day ? shortDate(day, today) : ''}
                </td>
                <td className="beside" data-label={mould ? 'How it went' : 'Off'}>
                  {pulls.length === 0 ? <span className="due">no pull names it</span> : null}
                  {pulls.map((pull, index) => (
                    <span key={pull.id}>
                      {index > 0 ? ', ' : ''}
                      {mould ? null : (
                        <Link href={`/moulds/${encodeURIComponent(pull.mouldCode)}` as Route}>
                          {pull.mouldCode}
                        </Link>
                      )}
                      {mould || pull.went !== 'usual' ? (
                        <span className={pull.went === 'usual' ? undefined : 'due'}> {pull.went}</span>
                      ) : null}
                    </span>
                  ))}
                </td>
                <td data-label="Part" className={row.fate ? `beside ${fateWeight[row.fate]}` : 'beside'}>
                  {row.fate ? fateWords[row.fate] : ''}
                </td>
                <td className="beside" data-label="Now">
                  {row.whereNow || <span className="soft">not said</span>}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}
