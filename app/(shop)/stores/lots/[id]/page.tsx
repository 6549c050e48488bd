import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shortDate } from '#lib/core/dates'
import { amountText } from '#lib/core/stores/index'
import { figure } from '#lib/core/units'
import { readLot } from '#lib/services/stores-lots'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { addressOf } from '../../../../ui/page-address'
import { Stamp } from '../../../../ui/stamp'
import { LotActs, Strike } from './acts'
import { MoveTable, UsedIn } from './moves'
import '../../stores.css'

export const metadata: Metadata = { title: 'Lot' }

/** A lot: what is left, until when it is good, what can be done with it, and where it went. */
export default async function LotPage({ params, searchParams }: PageProps<'/stores/lots/[id]'>) {
  const actor = await requireActor(addressOf(`/stores/lots/${(await params).id}`, await searchParams))
  const page = await found(readLot(actor, { id: (await params).id }))
  if (!page) notFound()
  const { lot, moves, parts, today, timeZone } = page
  const { standing } = lot
  const { strike } = await searchParams
  const mayAct = actor.role !== 'viewer'
  const struck = moves.find((move) => move.id === strike && move.counts && move.entryId === null)
  const day = (date: string) => shortDate(date, today)
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={`/stores/${lot.subjectKind}s/${lot.subjectId}` as Route}>
            {lot.subjectCode ?? lot.subjectName}
          </Link>{' '}
          / {lot.lot}
        </div>
        {mayAct ? (
          <div className="acts">
            <Link className="btn" href={`/stores/lots/${lot.id}/edit` as Route}>
              Change it
            </Link>
          </div>
        ) : null}
      </div>
      <div className="sheet">
        <div className="strip" style={{ borderTop: 0 }}>
          <div>
            <small>
              {lot.subjectCode ?? ''} {lot.subjectName}, {lot.container}
            </small>
            <h1>Lot {lot.lot}</h1>
            {lot.place ? <small>{lot.place}</small> : null}
            <small className="paper-only">printed {day(today)}</small>
          </div>
          <div>
            <small>Left by the book</small>
            <b>{amountText(lot.remaining, lot.unit)}</b>
            <small>
              of {amountText(lot.quantity, lot.unit)}, came {day(lot.receivedOn)}
              {lot.countedOn ? `; counted ${day(lot.countedOn)}` : ''}
            </small>
          </div>
          <div>
            <small>Good until</small>
            <b>{standing.goodUntil ? day(standing.goodUntil.on) : 'no date'}</b>
            <small>
              {standing.goodUntil?.by ?? ''}
              {lot.openedOn ? `${standing.goodUntil ? '; ' : ''}opened ${day(lot.openedOn)}` : ''}
            </small>
          </div>
          {lot.subjectKind === 'material' ? (
            <div>
              <small>Out of the freezer</small>
              <b>{figure(lot.outHours, 1)} h</b>
              <small>
                {standing.outHoursLeft === null
                  ? 'out life not known'
                  : `of ${figure(lot.outLifeH ?? 0, 0)} h; ${figure(Math.max(0, standing.outHoursLeft), 1)} h left`}
              </small>
            </div>
          ) : null}
          <div className="stamp-field">
            <Stamp
              state={standing.state}
              reason={lot.closedOn ? `${lot.closedWhy ?? ''}, ${day(lot.closedOn)}` : ''}
            />
          </div>
        </div>
      </div>
      {standing.reasons.map((reason) => (
        <p key={reason.code} className="notice look" style={{ marginTop: 14 }}>
          {reason.text.charAt(0).toUpperCase() + reason.text.slice(1)}. {reason.cure}
        </p>
      ))}
      {lot.note ? <p style={{ marginTop: 14 }}>{lot.note}</p> : null}
      {struck ? <Strike lot={lot} move={struck} today={today} /> : null}
      {mayAct ? <LotActs lot={lot} moves={moves.length} today={today} /> : null}
      <div className="columns" style={{ marginTop: 26 }}>
        <UsedIn moves={moves} parts={parts} unit={lot.unit} />
      </div>
      <MoveTable lot={lot} moves={moves} mayStrike={mayAct} today={today} timeZone={timeZone} />
    </>
  )
}
