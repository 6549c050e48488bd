import type { Route } from 'next'
import { shopDay, shortDate } from '#lib/core/dates'
import { kindNames, type LogKind } from '#lib/core/log/index'
import { amountText, type StockUnit } from '#lib/core/stores/index'
import { figure } from '#lib/core/units'
import type { LotOnDay, readLot } from '#lib/services/stores-lots'
import { entryHref } from '../../../../ui/entry-href'
import { Link } from '../../../../ui/link'
import { HeadOut } from '../../../../ui/table-out'
import '../../../../ui/book-sheet.css'

type Page = Awaited<ReturnType<typeof readLot>>
type Move = Page['moves'][number]

function amountOf(move: Move, unit: StockUnit): string {
  if (move.kind === 'correction') return ''
  return move.kind === 'out of freezer' ? `${figure(move.amount, 2)} h` : amountText(move.amount, unit)
}

/** Where it is read why: the entry that the move was written with. */
const movedAt = (home: string, { entryId }: Move): Route =>
  entryId === null ? (home as Route) : entryHref(home, entryId)

const kindWords = {
  used: 'taken',
  counted: 'counted',
  'out of freezer': 'out of the freezer',
  correction: 'struck out',
}

/** Where what was taken went: a patch, an entry of a mould's or pattern's log, or what the note says. */
function Where({ move }: { readonly move: Move }) {
  const name = move.entryKind ? (kindNames[move.entryKind as LogKind] ?? move.entryKind) : null
  if (move.patchId !== null) {
    return (
      <Link href={`/patches/${move.patchId}` as Route}>
        {move.mouldCode}, patch {move.patchNumber}
      </Link>
    )
  }
  if (move.mouldCode !== null) {
    return (
      <>
        <Link href={movedAt(`/moulds/${encodeURIComponent(move.mouldCode)}`, move)}>{move.mouldCode}</Link>
        {name ? `, ${name}` : ''}
      </>
    )
  }
  if (move.patternCode !== null) {
    return (
      <>
        <Link href={movedAt(`/patterns/${encodeURIComponent(move.patternCode)}`, move)}>
          {move.patternCode}
        </Link>
        {name ? `, ${name}` : ''}
      </>
    )
  }
  return null
}

/** Moulds, patches and parts that a lot went into. */
export function UsedIn({
  moves,
  parts,
  unit,
}: {
  readonly moves: readonly Move[]
  readonly parts: Page['parts']
  readonly unit: StockUnit
}) {
  const used = moves.filter((move) => move.counts && move.entryId !== null)
  return (
    <section className="rule-top">
      <h2>Where it went</h2>
      {used.length === 0 && parts.length === 0 ? (
        <p className="note" style={{ marginTop: 6 }}>
          Nothing in the book names this lot yet: no entry, no patch, no part.
        </p>
      ) : null}
      <dl className="figures">
        {used.map((move) => (
          <div key={move.id}>
            <dt>
              <Where move={move} />
            </dt>
            <dd>{amountText(move.amount, unit)}</dd>
          </div>
        ))}
        {parts.map((part) => (
          <div key={part.id}>
            <dt>
              <Link href={`/parts/built/${encodeURIComponent(part.serial)}` as Route}>
                Part {part.serial}
              </Link>
            </dt>
            <dd className="note">names it</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

/** Everything that was done with a lot, newest first; what was struck out stays readable. */
export function MoveTable({
  lot,
  moves,
  mayStrike,
  today,
  timeZone,
}: {
  readonly lot: LotOnDay
  readonly moves: readonly Move[]
  readonly mayStrike: boolean
  readonly today: string
  readonly timeZone: string
}) {
  return (
    <section className="rule-top" style={{ marginTop: 26 }}>
      <HeadOut name="stock-moves" label="Moves of all lots" holds="moves of all lots">
        <h2>Moves</h2>
      </HeadOut>
      <div className="table-room">
        <table className="lines stacked">
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">What</th>
              <th scope="col" className="n">
                How much
              </th>
              <th scope="col">Where, why</th>
              <th scope="col">Who</th>
              {mayStrike ? (
                <th scope="col">
                  <span className="quiet">Put right</span>
                </th>
              ) : null}
            </tr>
          </thead>
          <tbody>
            {moves.map((move) => {
              const amount = amountOf(move, lot.unit)
              const written = shopDay(move.writtenAt, timeZone).day
              return (
                <tr key={move.id} className={move.counts ? undefined : 'soft'}>
                  <td className="beside" style={{ whiteSpace: 'nowrap' }}>
                    {shortDate(move.doneOn, today)}
                  </td>
                  <td className="beside">
                    {move.counts ? kindWords[move.kind] : <s>{kindWords[move.kind]}</s>}
                  </td>
                  <td className="n beside">{move.counts ? amount : <s>{amount}</s>}</td>
                  <td className="note" data-label="Where, why">
                    <Where move={move} /> {move.note}
                    {written === move.doneOn ? '' : ` (written ${shortDate(written, today)})`}
                  </td>
                  <td className="beside" data-label="Who">
                    {move.byName}
                  </td>
                  {mayStrike ? (
                    <td className="beside no-print">
                      {move.counts && move.kind !== 'correction' && move.entryId === null ? (
                        <Link href={`/stores/lots/${lot.id}?strike=${move.id}#strike` as Route}>
                          strike out
                        </Link>
                      ) : null}
                    </td>
                  ) : null}
                </tr>
              )
            })}
            <tr>
              <td className="beside" style={{ whiteSpace: 'nowrap' }}>
                {shortDate(lot.receivedOn, today)}
              </td>
              <td className="beside">came</td>
              <td className="n beside">{amountText(lot.quantity, lot.unit)}</td>
              <td />
              <td />
              {mayStrike ? <td /> : null}
            </tr>
          </tbody>
        </table>
      </div>
    </section>
  )
}
