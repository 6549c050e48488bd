import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import { textOf } from '#lib/schema/form'
import { PersonChange } from '#lib/schema/people'
import { listPeople } from '#lib/services/people'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../ui/action-form'
import { ChoiceField, Hidden, TextField, TickField } from '../../ui/fields'
import { add, change, password } from './actions'
import './people.css'

export const metadata: Metadata = { title: 'People' }

const roleOptions = [
  { value: 'lead', label: 'lead: plans, rates, people' },
  { value: 'laminator', label: 'laminator: logs and carries out' },
  { value: 'viewer', label: 'viewer: reads' },
]

export default async function PeoplePage() {
  const actor = await requireActor()
  if (actor.role !== 'lead') return <p className="empty">The lead looks after people.</p>
  const people = await listPeople(actor, {})
  return (
    <>
      <h1>People</h1>
      <p className="note" style={{ margin: '6px 0 20px' }}>
        Who may do what. Nobody is deleted: a leaver's name stays on what they wrote.
      </p>
      <div className="columns">
        <section className="rule-top">
          <h2>In the shop</h2>
          {people.map((person) => (
            <details key={person.id} className="person">
              <summary>
                {person.name} ({person.initials}), {person.role}
                {person.ended ? ', access ended' : ''}
                {person.id === actor.id ? ', you' : ''}
              </summary>
              <div className="form" style={{ padding: '14px 0 20px' }}>
                <p className="note">{person.email}</p>
                <ActionForm
                  action={change}
                  defaults={textOf(PersonChange, person) as Record<string, unknown>}
                  labels={{ name: 'Name', initials: 'Initials', role: 'Role', ended: 'Access ended' }}
                  submit="Save"
                >
                  <Hidden name="id" />
                  <Hidden name="version" />
                  <div className="field-row">
                    <TextField name="name" label="Name" />
                    <TextField name="initials" label="Initials" />
                  </div>
                  <ChoiceField name="role" label="Role" options={roleOptions} />
                  <TickField
                    name="ended"
                    label="Access ended"
                    hint="signs them out everywhere; the name stays"
                  />
                </ActionForm>
                <details>
                  <summary>Set a new password</summary>
                  <div style={{ marginTop: 10 }}>
                    <ActionForm action={password} defaults={{ id: person.id }} submit="Set it">
                      <Hidden name="id" />
                      <TextField
                        name="password"
                        label={`New password for ${person.name}`}
                        type="password"
                        autoComplete="new-password"
                        hint="at least 12 signs; they are signed out everywhere"
                      />
                    </ActionForm>
                  </div>
                </details>
              </div>
            </details>
          ))}
        </section>
        <section className="rule-top">
          <h2>Add a person</h2>
          <div style={{ marginTop: 12 }}>
            <ActionForm
              action={add}
              defaults={{ id: randomUUID(), name: '', initials: '', email: '', role: 'laminator' }}
              submit="Add"
            >
              <Hidden name="id" />
              <div className="field-row">
                <TextField name="name" label="Name" />
                <TextField name="initials" label="Initials" />
              </div>
              <TextField name="email" label="E-mail" type="email" hint="they sign in with it" />
              <ChoiceField name="role" label="Role" options={roleOptions} />
              <TextField
                name="password"
                label="First password"
                type="password"
                autoComplete="new-password"
                hint="at least 12 signs; tell it in person"
              />
            </ActionForm>
          </div>
        </section>
      </div>
    </>
  )
}
