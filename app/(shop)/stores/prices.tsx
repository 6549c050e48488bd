import { randomUUID } from 'node:crypto'
import { shortDate } from '#lib/core/dates'
import { isPutRight, perUnitWords, type StockUnit } from '#lib/core/stores/index'
import { formatMoney } from '#lib/core/units'
import type { readMaterial } from '#lib/services/stores'
import { ActionForm } from '../../ui/action-form'
import { Hidden, TextField } from '../../ui/fields'
import { savePrice } from './actions'

type Price = Awaited<ReturnType<typeof readMaterial>>['prices'][number]

/** What one unit cost from which day on, newest first, and the next price. Nothing is changed or taken out. */
export function Prices({
  subject,
  prices,
  inForceId,
  currency,
  today,
  mayAdd,
}: {
  readonly subject: { readonly kind: 'material' | 'product'; readonly id: string; readonly unit: StockUnit }
  readonly prices: readonly Price[]
  readonly inForceId: string | null
  readonly currency: string
  readonly today: string
  readonly mayAdd: boolean
}) {
  const per = perUnitWords[subject.unit]
  return (
    <section id="prices" className="rule-top">
      <h2>Prices</h2>
      {prices.length === 0 ? (
        <p className="note" style={{ margin: '6px 0' }}>
          No price yet. A price holds from its day until the next one.
        </p>
      ) : (
        <table className="lines">
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col" className="n">
                A {per}
              </th>
              <th scope="col">From where, who</th>
            </tr>
          </thead>
          <tbody>
            {prices.map((price) => {
              const old = isPutRight(price, prices)
              const money = formatMoney(price.minorPerUnit, price.currency)
              return (
                <tr key={price.id} className={old ? 'soft' : undefined}>
                  <td style={{ whiteSpace: 'nowrap' }}>{shortDate(price.fromOn, today)}</td>
                  <td className="n">
                    {old ? <s>{money}</s> : price.id === inForceId ? <b>{money}</b> : money}
                  </td>
                  <td className="note">
                    {[
                      price.id === inForceId ? 'holds today' : '',
                      price.fromOn > today ? 'to come' : '',
                      old ? 'put right' : '',
                      price.sourceNote,
                      price.byName,
                    ]
                      .filter(Boolean)
                      .join('; ')}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
      {mayAdd ? (
        <details style={{ marginTop: 12 }} open={prices.length === 0}>
          <summary>A new price, or put one right</summary>
          <div style={{ marginTop: 12 }}>
            <ActionForm
              key={prices.length}
              action={savePrice}
              defaults={{
                id: randomUUID(),
                subjectKind: subject.kind,
                subjectId: subject.id,
                unit: subject.unit,
                currency,
                minorPerUnit: '',
                fromOn: today,
                sourceNote: '',
              }}
              submit="Write the price down"
            >
              {['id', 'subjectKind', 'subjectId', 'unit', 'currency'].map((name) => (
                <Hidden key={name} name={name} />
              ))}
              <div className="field-row">
                <TextField
                  name="minorPerUnit"
                  label={`Price a ${per}`}
                  unit={currency}
                  numeric
                  hint="as 12.50"
                />
                <TextField name="fromOn" label="From" type="date" />
              </div>
              <TextField name="sourceNote" label="From where" hint="quote, invoice, list; with its date" />
              <p className="note">A wrong price is put right by a new one of the same day.</p>
            </ActionForm>
          </div>
        </details>
      ) : null}
    </section>
  )
}
