import { randomBytes, randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { headers } from 'next/headers'
import { shopDay, shortDate } from '#lib/core/dates'
import { listPeople, listTokens } from '#lib/services/people'
import { readSettings } from '#lib/services/shop'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../ui/action-form'
import { ChoiceField, Hidden, TextField } from '../../ui/fields'
import { Link } from '../../ui/link'
import { NotYours } from '../../ui/not-yours'
import { HeadOut } from '../../ui/table-out'
import { add } from './actions'
import { PersonLine, roleOptions } from './person-line'
import { TokenForm } from './token-form'
import { Tokens } from './tokens'
import './people.css'

export const metadata: Metadata = { title: 'People' }

export default async function PeoplePage({ searchParams }: PageProps<'/people'>) {
  const actor = await requireActor('/people')
  const { left: justLeft } = await searchParams
  if (actor.role !== 'lead') return <NotYours>The lead looks after people.</NotYours>
  const [people, tokens, { shop, today }] = await Promise.all([
    listPeople(actor, {}),
    listTokens(actor, {}),
    readSettings(actor, {}),
  ])
  const day = (moment: string) => shortDate(shopDay(moment, shop.timeZone).day, today)
  const here = people.filter((person) => !person.ended)
  const left = people.filter((person) => person.ended)
  return (
    <>
      <div className="crumb-row">
        <div style={{ marginRight: 'auto' }}>
          <h1>People</h1>
          <p className="note">
            Who may do what. Nobody is deleted: a leaver’s name stays on what they wrote.
          </p>
        </div>
        {shop.isDemo ? (
          <Link className="btn" href={'/people/leave-demo' as Route}>
            Leave the demo shop
          </Link>
        ) : null}
      </div>
      {justLeft === 'demo' && !shop.isDemo ? <LeftDemo name={shop.name} /> : null}
      <div className="people-room">
        <section className="rule-top" aria-labelledby="people-here">
          <HeadOut name="people" label="All people">
            <h2 id="people-here">
              In the shop <span className="note">{here.length}</span>
            </h2>
          </HeadOut>
          {here.map((person) => (
            <PersonLine key={person.id} person={person} you={person.id === actor.id} day={day} />
          ))}
          {left.length > 0 ? (
            <div className="people-left">
              <h3 className="soft">
                Have left <span className="note">{left.length}, they can’t sign in</span>
              </h3>
              {left.map((person) => (
                <PersonLine key={person.id} person={person} you={false} day={day} />
              ))}
            </div>
          ) : null}
        </section>
        <section className="rule-top" aria-labelledby="people-add">
          <h2 id="people-add">Add a person</h2>
          <div style={{ marginTop: 12 }}>
            <ActionForm
              action={add}
              defaults={{ id: randomUUID(), name: '', initials: '', email: '', role: 'laminator' }}
              submit="Add"
            >
              <Hidden name="id" />
              <div className="field-row">
                <TextField name="name" label="Name" />
                <TextField name="initials" label="Initials" hint="stand in tables" />
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
      <div className="people-room" id="tokens">
        <section className="rule-top" aria-labelledby="people-tokens">
          <HeadOut name="tokens" label="All tokens">
            <h2 id="people-tokens">Tokens for scripts</h2>
          </HeadOut>
          <p className="note">
            A scale, a spreadsheet or a logger writes with a token instead of a password. What it does stands
            in the book under its name, with the rights of its role. What can be asked:{' '}
            <a href="/api/v1/openapi.json">openapi.json</a>
          </p>
          <Tokens tokens={tokens} day={day} />
        </section>
        <section className="rule-top" aria-labelledby="people-token">
          <h2 id="people-token">Make a token</h2>
          <div style={{ marginTop: 12 }}>
            <TokenForm
              defaults={{
                id: randomUUID(),
                token: `mw_${randomBytes(32).toString('base64url')}`,
                name: '',
                role: 'viewer',
              }}
              roles={roleOptions}
              origin={await origin()}
            />
          </div>
        </section>
      </div>
    </>
  )
}

/** Where this page was asked for, for the example call. */
async function origin(): Promise<string> {
  const sent = await headers()
  return `${sent.get('x-forwarded-proto') ?? 'http'}://${sent.get('host') ?? 'localhost'}`
}

/** What comes next in a shop that was the demo a moment ago. */
function LeftDemo({ name }: { readonly name: string }) {
  return (
    <div className="notice done" role="status" style={{ marginBottom: 22 }}>
      <p>
        <b>This is {name} now, and its book is empty.</b> The accounts below came with the demo and keep their
        passwords: give each a name and a new password of your own, and end those that nobody needs.
      </p>
      <p>
        Then <Link href={'/stores' as Route}>materials and stacks</Link>, and the{' '}
        <Link href={'/moulds/new' as Route}>first mould</Link>.
      </p>
    </div>
  )
}
