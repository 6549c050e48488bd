import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { textOf } from '#lib/schema/form'
import { PartInput, PatternInput } from '#lib/schema/mould'
import { listParts, listPatterns } from '#lib/services/moulds'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../ui/action-form'
import { Hidden, TextArea, TextField, TickField } from '../../ui/fields'
import { Link } from '../../ui/link'
import { add, change, changeThePart } from './actions'

export const metadata: Metadata = { title: 'Patterns' }

const labels = {
  code: 'Code',
  name: 'Name',
  condition: 'Condition',
  place: 'Place',
  available: 'Can be used now',
  canBeMadeAgain: 'Can be made again',
  note: 'Note',
}

export default async function PatternsPage({ searchParams }: PageProps<'/patterns'>) {
  const actor = await requireActor()
  const { change: changing } = await searchParams
  const [patterns, parts] = await Promise.all([listPatterns(actor, {}), listParts(actor, {})])
  const lead = actor.role === 'lead'
  const edited = patterns.find((pattern) => pattern.id === changing)
  const part = parts.find((candidate) => candidate.id === changing)
  return (
    <>
      <div className="crumb-row">
        <h1 style={{ marginRight: 'auto' }}>Patterns</h1>
        {lead ? (
          <a className="btn primary" href="#add">
            Add a pattern
          </a>
        ) : null}
      </div>
      {patterns.length === 0 ? (
        <p className="empty">
          No pattern yet. Which mould came off which pattern stands here, and whether it is still true.
        </p>
      ) : (
        <div className="table-room">
          <table className="lines">
            <thead>
              <tr>
                <th scope="col">Pattern</th>
                <th scope="col">Condition</th>
                <th scope="col">Place</th>
                <th scope="col">Now</th>
                <th scope="col">Moulds off it</th>
                {lead ? (
                  <th scope="col">
                    <span className="quiet">Change</span>
                  </th>
                ) : null}
              </tr>
            </thead>
            <tbody>
              {patterns.map((pattern) => (
                <tr key={pattern.id}>
                  <td>
                    <b>{pattern.code}</b> {pattern.name}
                    {pattern.canBeMadeAgain ? null : <div className="held">Can't be made again</div>}
                  </td>
                  <td>{pattern.condition || <span className="soft">not known</span>}</td>
                  <td>{pattern.place || <span className="soft">not known</span>}</td>
                  <td className={pattern.available ? 'good' : 'held'}>
                    {pattern.available ? 'can be used' : 'gone or unfit'}
                  </td>
                  <td>
                    {pattern.moulds.length === 0 ? <span className="soft">none</span> : null}
                    {pattern.moulds.map((mould, index) => (
                      <span key={mould.id}>
                        {index > 0 ? ', ' : ''}
                        <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>{mould.code}</Link>
                      </span>
                    ))}
                  </td>
                  {lead ? (
                    <td className="n">
                      <Link href={`/patterns?change=${pattern.id}#form` as Route}>change</Link>
                    </td>
                  ) : null}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <section style={{ marginTop: 30 }}>
        <h2>Parts</h2>
        {parts.length === 0 ? (
          <p className="note">No part yet; parts are added with their moulds.</p>
        ) : (
          <table className="lines">
            <tbody>
              {parts.map((each) => (
                <tr key={each.id}>
                  <td style={{ width: 120 }}>
                    <b>{each.code}</b>
                  </td>
                  <td>{each.name}</td>
                  <td className="soft">{each.note}</td>
                  {lead ? (
                    <td className="n">
                      <Link href={`/patterns?change=${each.id}#form` as Route}>change</Link>
                    </td>
                  ) : null}
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </section>
      {lead ? (
        <section id={edited || part ? 'form' : 'add'} className="narrow rule-top" style={{ marginTop: 30 }}>
          <h2 style={{ marginBottom: 12 }}>
            {edited ? `Change ${edited.code}` : part ? `Change ${part.code}` : 'Add a pattern'}
          </h2>
          {part ? (
            <ActionForm
              key={part.id}
              action={changeThePart}
              labels={labels}
              defaults={{ ...(textOf(PartInput, part) as object), version: String(part.version) }}
              submit="Save"
            >
              <Hidden name="id" />
              <Hidden name="version" />
              <TextField name="code" label={labels.code} />
              <TextField name="name" label={labels.name} />
              <TextArea name="note" label={labels.note} />
            </ActionForm>
          ) : (
            <ActionForm
              key={edited?.id ?? 'new'}
              action={edited ? change : add}
              labels={labels}
              defaults={
                edited
                  ? { ...(textOf(PatternInput, edited) as object), version: String(edited.version) }
                  : {
                      id: randomUUID(),
                      code: '',
                      name: '',
                      condition: '',
                      place: '',
                      available: 'true',
                      canBeMadeAgain: 'true',
                      note: '',
                    }
              }
              submit={edited ? 'Save' : 'Add the pattern'}
            >
              <Hidden name="id" />
              {edited ? <Hidden name="version" /> : null}
              <div className="field-row">
                <TextField name="code" label={labels.code} />
                <TextField name="name" label={labels.name} />
              </div>
              <TextField
                name="condition"
                label={labels.condition}
                hint="what it is made of, how it was left"
              />
              <TextField name="place" label={labels.place} />
              <TickField
                name="available"
                label={labels.available}
                hint="unticked: gone, warped or lent; a patch then needs a splash or a caul"
              />
              <TickField name="canBeMadeAgain" label={labels.canBeMadeAgain} />
              <TextArea name="note" label={labels.note} />
            </ActionForm>
          )}
        </section>
      ) : null}
    </>
  )
}
