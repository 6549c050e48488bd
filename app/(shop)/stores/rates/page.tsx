import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import { isIsoDate, shortDate } from '#lib/core/dates'
import { basisWords, isPutRight, usualOperations } from '#lib/core/stores/index'
import { figure, formatMoney } from '#lib/core/units'
import { countStores } from '#lib/services/stores-lots'
import { listRatesOn } from '#lib/services/stores-rates'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../ui/action-form'
import { Hidden } from '../../../ui/fields'
import { addressOf } from '../../../ui/page-address'
import { RateFields } from '../../../ui/rate-fields'
import { saveRate, saveUsualRates } from '../actions'
import { StoresHead } from '../head'
import { OnDay } from '../on-day'
import '../stores.css'

export const metadata: Metadata = { title: 'Rates' }

type Group = Awaited<ReturnType<typeof listRatesOn>>['rates'][number]

/** Hours and money of each operation on a day, ?on=2026-05-01, with what was written before. */
export default async function RatesPage({ searchParams }: PageProps<'/stores/rates'>) {
  const actor = await requireActor(addressOf('/stores/rates', await searchParams))
  const asked = (await searchParams).on
  const on = typeof asked === 'string' && isIsoDate(asked) ? asked : null
  const [{ rates, day, today, currency }, counts] = await Promise.all([
    listRatesOn(actor, { on }),
    countStores(actor, {}),
  ])
  const lead = actor.role === 'lead'
  const known = new Set(
    rates.map(({ lines }) => `${lines[0]?.operation.trim().toLowerCase()} ${lines[0]?.basis}`),
  )
  const missing = usualOperations.filter(({ operation, basis }) => !known.has(`${operation} ${basis}`))
  const written = rates.reduce((sum, group) => sum + group.lines.length, 0)
  return (
    <>
      <StoresHead counts={counts} here="rates" />
      {rates.length === 0 ? (
        <p className="empty" style={{ marginBottom: 22 }}>
          No rate yet. What laying a square metre of ply takes, what an hour of the router costs: every
          comparison of ways will rest on these.
        </p>
      ) : (
        <>
          <OnDay action="/stores/rates" day={day} what="Rates" />
          <div className="table-room">
            <table className="lines stacked">
              <thead>
                <tr>
                  <th scope="col">Operation</th>
                  <th scope="col">By the</th>
                  <th scope="col" className="n">
                    Takes
                  </th>
                  <th scope="col" className="n">
                    Costs
                  </th>
                  <th scope="col">Holds since</th>
                  <th scope="col">From where</th>
                </tr>
              </thead>
              <tbody>
                {rates.map((group) => (
                  <RateRow key={group.lines[0]?.id} group={group} today={today} />
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
      {lead ? (
        <div className="columns" style={{ marginTop: 26 }}>
          <section className="rule-top">
            <h2>A new rate, or put one right</h2>
            <p className="note" style={{ margin: '6px 0 12px' }}>
              A rate holds from its day until the next one of the same operation. A wrong one is put right by
              a new one of the same day. Labour may have hours and no money.
            </p>
            <ActionForm
              key={written}
              action={saveRate}
              defaults={{ id: randomUUID(), currency, basis: 'ply m2', fromOn: today }}
              submit="Write the rate down"
            >
              <RateFields
                operations={[...new Set(usualOperations.map(({ operation }) => operation))]}
                currency={currency}
              />
            </ActionForm>
          </section>
          {missing.length > 0 ? (
            <section className="rule-top">
              <h2>The usual operations</h2>
              <p className="note" style={{ margin: '6px 0 12px' }}>
                Hours from memory, a place to begin; put each right by your own timing. Without money: what an
                hour costs only the shop knows. Not there yet:{' '}
                {missing
                  .map(({ operation, basis, hours }) =>
                    hours === null ? operation : `${operation} ${figure(hours)} h a ${basisWords[basis]}`,
                  )
                  .join(', ')}
                .
              </p>
              <ActionForm
                key={written}
                action={saveUsualRates}
                defaults={{ id: randomUUID(), fromOn: today, currency }}
                submit={`Take these ${missing.length} in`}
              >
                <Hidden name="id" />
                <Hidden name="fromOn" />
                <Hidden name="currency" />
              </ActionForm>
            </section>
          ) : null}
        </div>
      ) : null}
    </>
  )
}

function RateRow({ group, today }: { readonly group: Group; readonly today: string }) {
  const { lines, inForce } = group
  const [latest] = lines
  if (!latest) return null
  const words = (rate: Group['lines'][number]) =>
    [
      rate.hours === null ? '' : `${figure(rate.hours)} h`,
      rate.minorPerBasis === null ? '' : formatMoney(rate.minorPerBasis, rate.currency),
    ]
      .filter(Boolean)
      .join(', ') || 'hours only'
  const others = lines.filter((line) => line.id !== inForce?.id)
  return (
    <tr>
      <td className="named">
        {latest.operation}
        {others.length > 0 ? (
          <details>
            <summary>{others.length === 1 ? '1 other' : `${others.length} others`}</summary>
            {others.map((line) => (
              <div key={line.id} className="note">
                from {shortDate(line.fromOn, today)}:{' '}
                {isPutRight(line, lines) ? <s>{words(line)}</s> : words(line)}, {line.byName}
                {line.sourceNote ? `, ${line.sourceNote}` : ''}
              </div>
            ))}
          </details>
        ) : null}
      </td>
      <td className="beside" data-label="By the">
        {basisWords[latest.basis]}
      </td>
      <td className="n beside" data-label="Takes">
        {inForce?.hours == null ? <span className="unsaid">–</span> : `${figure(inForce.hours)} h`}
      </td>
      <td className="n beside" data-label="Costs">
        {inForce?.minorPerBasis == null ? (
          <span className="unsaid">–</span>
        ) : (
          formatMoney(inForce.minorPerBasis, inForce.currency)
        )}
      </td>
      <td data-label="Holds since" style={{ whiteSpace: 'nowrap' }}>
        {inForce ? shortDate(inForce.fromOn, today) : 'not yet'}
      </td>
      <td className="note" data-label="From where">
        {[inForce?.sourceNote, inForce?.byName].filter(Boolean).join('; ')}
      </td>
    </tr>
  )
}
