import type { Route } from 'next'
import { textOf } from '#lib/schema/form'
import { PersonChange } from '#lib/schema/people'
import type { listPeople } from '#lib/services/people'
import { ActionForm } from '../../ui/action-form'
import { ChoiceField, Hidden, TextField, TickField } from '../../ui/fields'
import { Link } from '../../ui/link'
import { change, password } from './actions'

type Person = Awaited<ReturnType<typeof listPeople>>[number]

export const roleOptions = [
  { value: 'lead', label: 'lead: plans, rates, people' },
  { value: 'laminator', label: 'laminator: logs and carries out' },
  { value: 'viewer', label: 'viewer: reads' },
]

/** A person as a line that opens into what can be changed. */
export function PersonLine({
  person,
  you,
  day,
}: {
  readonly person: Person
  readonly you: boolean
  readonly day: (moment: string) => string
}) {
  return (
    <details className="person" id={`person-${person.id}`}>
      <summary>
        <b>{person.name}</b>
        <span className="mono soft">{person.initials}</span>
        <span>
          {person.role}
          {you ? ', you' : ''}
        </span>
        <span className="soft">{person.endedAt ? `left ${day(person.endedAt)}` : person.email}</span>
      </summary>
      <div className="form person-form">
        <p className="note">
          {person.ended ? `${person.email}. ` : ''}
          <Link href={`/find?q=${encodeURIComponent(person.name)}&in=entry` as Route}>
            What {person.name} wrote
          </Link>
        </p>
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
            hint="signs them out everywhere; the name stays. Tokens that they made go on until they are ended below."
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
  )
}
