import { randomUUID } from 'node:crypto'
import type { Route } from 'next'
import type { ReactNode } from 'react'
import { shortDate } from '#lib/core/dates'
import { amountText, closings, unitWords } from '#lib/core/stores/index'
import { figure } from '#lib/core/units'
import type { LotOnDay, readLot } from '#lib/services/stores-lots'
import { ActionForm } from '../../../../ui/action-form'
import { ChoiceField, Hidden, TextField } from '../../../../ui/fields'
import { Link } from '../../../../ui/link'
import { close, count, freezer, reopen, strike, take } from '../../actions'

type Move = Awaited<ReturnType<typeof readLot>>['moves'][number]

/** What can be done with a lot now. Every form carries an id of its own, so that a double click is stored once. */
export function LotActs({
  lot,
  moves,
  today,
}: {
  readonly lot: LotOnDay
  /** How many moves stand: after one more the forms start anew. */
  readonly moves: number
  readonly today: string
}) {
  if (lot.closedOn !== null) {
    return (
      <div className="narrow no-print" style={{ marginTop: 22 }}>
        <ActionForm
          action={reopen}
          defaults={{ lotId: lot.id, version: String(lot.version) }}
          submit="Open it again"
        >
          <Hidden name="lotId" />
          <Hidden name="version" />
        </ActionForm>
      </div>
    )
  }
  const base = () => ({ id: randomUUID(), lotId: lot.id, unit: lot.unit, doneOn: today, note: '' })
  const unit = unitWords[lot.unit]
  return (
    <div className="lot-acts no-print" key={moves}>
      <section className="rule-top">
        <h2>Take from it</h2>
        <ActionForm action={take} defaults={{ ...base(), amount: '', because: '' }} submit="Take it">
          <Heads names={['id', 'lotId', 'unit']} />
          <div className="field-row">
            <TextField name="amount" label="How much" numeric unit={unit} />
            <TextField name="doneOn" label="On" type="date" />
          </div>
          {lot.standing.usable ? (
            <Hidden name="because" />
          ) : (
            <TextField
              name="because"
              label="Because"
              hint={`This lot is ${lot.standing.state}: say why it is used all the same`}
            />
          )}
          <TextField
            name="note"
            label="For what"
            hint="what goes into a mould is better written with its entry or its plan"
          />
        </ActionForm>
      </section>
      <section className="rule-top">
        <h2>Count, freezer, close</h2>
        <Act title="Count it">
          <ActionForm action={count} defaults={{ ...base(), amount: '' }} submit="Write the count down">
            <Heads names={['id', 'lotId', 'unit']} />
            <div className="field-row">
              <TextField name="amount" label="There is" numeric unit={unit} hint="0 is a count too" />
              <TextField name="doneOn" label="Counted on" type="date" />
            </div>
            <TextField name="note" label="Note" hint="weighed, measured along the roll" />
          </ActionForm>
        </Act>
        {lot.subjectKind === 'material' ? (
          <Act title="Out of the freezer">
            <ActionForm
              action={freezer}
              defaults={{ ...base(), hours: '', outAt: '', backOn: '', backAt: '' }}
              submit="Write the hours down"
            >
              <Heads names={['id', 'lotId']} />
              <div className="field-row">
                <TextField name="doneOn" label="Out on" type="date" />
                <TextField name="hours" label="for" numeric unit="h, or 1 h 30 min" />
              </div>
              <p className="note">or from when to when:</p>
              <div className="field-row">
                <TextField name="outAt" label="Came out at" type="time" />
                <TextField name="backAt" label="Went back at" type="time" />
                <TextField name="backOn" label="on" type="date" hint="blank: the same day" />
              </div>
              <TextField name="note" label="Note" />
            </ActionForm>
          </Act>
        ) : null}
        <Act title="Close it">
          <ActionForm
            action={close}
            defaults={{
              lotId: lot.id,
              version: String(lot.version),
              closedOn: today,
              closedWhy: lot.standing.state === 'empty' ? 'used up' : '',
            }}
            submit="Close the lot"
          >
            <Heads names={['lotId', 'version']} />
            <ChoiceField
              name="closedWhy"
              label="Because it is"
              options={closings.map((why) => ({ value: why, label: why }))}
            />
            <TextField name="closedOn" label="On" type="date" />
          </ActionForm>
        </Act>
      </section>
    </div>
  )
}

function Act({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <details>
      <summary>{title}</summary>
      {children}
    </details>
  )
}

function Heads({ names }: { readonly names: readonly string[] }) {
  return names.map((name) => <Hidden key={name} name={name} />)
}

/** Strikes one move out; what should stand in its place is written anew. */
export function Strike({
  lot,
  move,
  today,
}: {
  readonly lot: LotOnDay
  readonly move: Move
  readonly today: string
}) {
  const what =
    move.kind === 'out of freezer'
      ? `${figure(move.amount, 2)} h out of the freezer`
      : `${move.kind} ${amountText(move.amount, lot.unit)}`
  return (
    <section id="strike" className="notice narrow" style={{ marginTop: 18 }}>
      <h2 style={{ marginBottom: 10 }}>
        Strike out: {what}, {shortDate(move.doneOn, today)} by {move.byName}
      </h2>
      <ActionForm
        action={strike}
        defaults={{ id: randomUUID(), lotId: lot.id, correctsId: move.id, note: '' }}
        submit="Strike it out"
      >
        <Heads names={['id', 'lotId', 'correctsId']} />
        <TextField name="note" label="Because" hint="It stays readable. Write what is right as a new move." />
      </ActionForm>
      <p style={{ marginTop: 10 }}>
        <Link href={`/stores/lots/${lot.id}` as Route}>Leave it as it is</Link>
      </p>
    </section>
  )
}
