import type { Route } from 'next'
import type { ReactNode } from 'react'
import { entryWords, kindNames, type LogEntry, type LogKind } from '#lib/core/log/index'
import { ActionForm, type FormAct } from '../action-form'
import { Fold, Hidden, SelectField, TextArea, TextField } from '../fields'
import { Link } from '../link'
import { LogFields } from '../log-fields'
import type { LogFieldsProps } from './field-options'
import './log.css'

const days = [
  { value: 'day', label: 'the day is known' },
  { value: 'month', label: 'only the month' },
  { value: 'year', label: 'only the year' },
  { value: 'before', label: 'before this day' },
]

/** The form of one kind of entry, of a mould or of a pattern, with what stands open beside it. */
export function LogFormPage({
  code,
  name,
  base,
  backTo,
  stamp,
  corrected,
  action,
  defaults,
  submit,
  fields,
  before,
  lots,
  aside,
}: {
  readonly code: string
  readonly name: string
  /** "/moulds/LH-P" */
  readonly base: string
  readonly backTo: string
  readonly stamp: ReactNode
  /** The entry that is put right. */
  readonly corrected: LogEntry | null
  readonly action: FormAct
  readonly defaults: Readonly<Record<string, unknown>>
  readonly submit: string
  readonly fields: LogFieldsProps
  /** What must be read before the form is filled in. */
  readonly before: ReactNode
  /** Fields for what is taken from stock. */
  readonly lots: ReactNode
  readonly aside: ReactNode
}) {
  const { kind } = fields
  const striking = kind === 'correction'
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={backTo as Route}>{code}</Link> / <Link href={`${base}/log` as Route}>log</Link> /{' '}
          {kindNames[kind]}
        </div>
      </div>
      <div className="log-desk">
        <div>
          <h1>{titleOf(kind, corrected)}</h1>
          <p className="acts">
            <span>{name}</span>
            {stamp}
          </p>
          {corrected ? <PutsRight base={base} entry={corrected} striking={striking} /> : null}
          {striking && !corrected ? (
            <p className="empty">
              An entry is struck out from the history: open <Link href={backTo as Route}>{code}</Link>, choose
              "put right" at the entry.
            </p>
          ) : (
            <>
              {before}
              <ActionForm action={action} defaults={defaults} submit={submit}>
                <Hidden name="id" />
                <Hidden name="kind" />
                <Hidden name="mouldId" />
                <Hidden name="patternId" />
                <Hidden name="setId" />
                <Hidden name="code" />
                <Hidden name="from" />
                <Hidden name="correctsId" />
                <Hidden name="sawVersion" />
                <LogFields {...fields} />
                {kind === 'note' ? <TextArea name="note" label="Note" rows={4} /> : null}
                {lots}
                <Fold
                  title={kind === 'note' ? 'Another day or time' : 'Another day or time, and a note'}
                  open={corrected !== null || kind === 'before-book'}
                >
                  <div className="field-row">
                    <TextField
                      name="doneOn"
                      label={kind === 'before-book' ? 'Before' : 'Done on'}
                      type="date"
                    />
                    <TextField name="time" label="At" type="time" hint="blank: only the day is known" />
                    <SelectField name="known" label="How well" options={days} />
                  </div>
                  {kind === 'note' ? null : <TextArea name="note" label="Note" />}
                </Fold>
              </ActionForm>
            </>
          )}
        </div>
        <aside className="stack-gap" aria-label="What stands open">
          {aside}
        </aside>
      </div>
    </>
  )
}

function PutsRight({
  base,
  entry,
  striking,
}: {
  readonly base: string
  readonly entry: LogEntry
  readonly striking: boolean
}) {
  const { what, detail } = entryWords(entry)
  return (
    <p className="notice look" style={{ marginBottom: 18 }}>
      {striking ? 'This entry stays readable and no longer counts: ' : 'This puts right what was written: '}
      <b>{what}</b> {detail}
      {striking ? null : (
        <>
          {' '}
          <Link href={`${base}/log/correction?corrects=${entry.id}` as Route}>
            It never happened: strike it out
          </Link>
        </>
      )}
    </p>
  )
}

const titles: Partial<Record<LogKind, string>> = {
  cleared: 'Clear to lay up',
  pull: 'Log a pull',
  state: 'Set the state',
  settled: 'Settle an open matter',
  matter: 'Open a matter',
}

function titleOf(kind: LogKind, corrected: LogEntry | null): string {
  if (kind === 'correction') return 'Strike an entry out'
  if (corrected) return `Put right: ${kindNames[kind].toLowerCase()}`
  return titles[kind] ?? kindNames[kind]
}
