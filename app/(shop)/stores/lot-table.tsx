import type { Route } from 'next'
import { shortDate } from '#lib/core/dates'
import { amountText } from '#lib/core/stores/index'
import { figure } from '#lib/core/units'
import type { LotOnDay } from '#lib/services/stores-lots'
import { Link } from '../../ui/link'
import { weightOf } from '../../ui/stamp'

/** Lots as lines: what is left, until when they are good, how they stand. */
export function LotTable({
  lots,
  today,
  withSubject = true,
}: {
  readonly lots: readonly LotOnDay[]
  readonly today: string
  readonly withSubject?: boolean
}) {
  return (
    <div className="table-room">
      <table className="lines lots">
        <thead>
          <tr>
            <th scope="col">Lot</th>
            <th scope="col" className="n">
              Left
            </th>
            <th scope="col" className="wide-only">
              Good until
            </th>
            <th scope="col" className="n wide-only">
              Out of the freezer
            </th>
            <th scope="col" className="wide-only">
              Where
            </th>
            <th scope="col">Stands</th>
          </tr>
        </thead>
        <tbody>
          {lots.map((lot) => (
            <tr key={lot.id}>
              <td>
                <Link href={`/stores/lots/${lot.id}` as Route}>{lot.lot}</Link>
                {withSubject ? ` ${lot.subjectCode ?? ''} ${lot.subjectName}` : ''}
                <span className="note phone-only">
                  {[goodWords(lot, today), outWords(lot), lot.place].filter(Boolean).join('; ')}
                </span>
              </td>
              <td className="n">{amountText(lot.remaining, lot.unit)}</td>
              <td className="wide-only">{goodWords(lot, today) || '–'}</td>
              <td className="n wide-only">{outWords(lot) || '–'}</td>
              <td className="wide-only">{lot.place || '–'}</td>
              <td className={`stands ${weightOf(lot.standing.state)}`}>
                {lot.standing.state === 'closed' ? lot.closedWhy : lot.standing.state}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function goodWords(lot: LotOnDay, today: string): string {
  const { goodUntil } = lot.standing
  if (goodUntil === null) return ''
  return `${shortDate(goodUntil.on, today)}${goodUntil.by === 'date on the lot' ? '' : `, ${goodUntil.by}`}`
}

function outWords(lot: LotOnDay): string {
  if (lot.outLifeH === null) return ''
  return `${figure(lot.outHours, 0)} of ${figure(lot.outLifeH, 0)} h`
}
