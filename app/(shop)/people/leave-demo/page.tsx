import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { demoContents } from '#lib/services/leave-demo'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../ui/action-form'
import { Hidden, TextField } from '../../../ui/fields'
import { Link } from '../../../ui/link'
import { NotYours } from '../../../ui/not-yours'
import { leaveTheDemo } from '../actions'
import '../people.css'

export const metadata: Metadata = { title: 'Leave the demo shop' }

export default async function LeaveDemoPage() {
  const actor = await requireActor('/people/leave-demo')
  if (actor.role !== 'lead') return <NotYours>The lead leaves the demo shop, for all.</NotYours>
  const demo = await demoContents(actor, {})
  if (!demo) {
    return (
      <p className="empty">
        This is no demo shop: there is nothing to leave. <Link href={'/people' as Route}>People</Link>
      </p>
    )
  }
  const count = (figure: number, one: string, many = `${one}s`) => `${figure} ${figure === 1 ? one : many}`
  return (
    <>
      <div className="crumb-row">
        <span className="crumb">
          <Link href={'/people' as Route}>People</Link> / leave the demo shop
        </span>
      </div>
      <div className="narrow">
        <h1>Leave the demo shop</h1>
        <p style={{ marginTop: 8 }}>
          This empties {demo.shopName} and makes a shop of your own of it, for everyone at once. It can’t be
          undone.
        </p>
        <div className="columns leave-lists">
          <section className="rule-top">
            <h2>Goes</h2>
            <ul>
              <li>
                {count(demo.moulds, 'mould')} with their faces, points and drawings,{' '}
                {count(demo.patterns, 'pattern')}
              </li>
              <li>
                {count(demo.entries, 'entry', 'entries')} of the log,{' '}
                {count(demo.patches, 'patch', 'patches')} with their plans
              </li>
              <li>
                {count(demo.builtParts, 'built part')},{' '}
                {count(demo.pictures, 'photo or drawing', 'photos and drawings')}
              </li>
              <li>
                {count(demo.stores, 'material, product or lot', 'materials, products and lots')}, prices,
                rates, stacks
              </li>
              <li>
                seasons, the shop’s address, rules that were changed (back to the usual ones), the audit
                {demo.names > 0
                  ? `, and ${count(demo.names, 'name', 'names')} of people who never had an account`
                  : ''}
              </li>
            </ul>
          </section>
          <section className="rule-top">
            <h2>Stays</h2>
            <ul>
              <li>
                {count(demo.accounts.length, 'account')}, with their passwords:{' '}
                {demo.accounts.map(({ name, role }) => `${name} (${role})`).join(', ')}
              </li>
              <li>whoever is signed in stays signed in</li>
            </ul>
            <p style={{ marginTop: 10 }}>
              {demo.tokens > 0
                ? `${count(demo.tokens, 'token')} ${demo.tokens === 1 ? 'is' : 'are'} ended. `
                : ''}
              The passwords of the demo were printed where it was started and stand in its secrets file: set
              new ones afterwards, on People.
            </p>
          </section>
        </div>
        <p>
          Anything in it that you want to keep?{' '}
          <Link href={'/out' as Route}>Take the tables out as files</Link> first.
        </p>
        <section className="rule-top" style={{ marginTop: 26 }}>
          <h2>Your own shop</h2>
          <div style={{ marginTop: 12 }}>
            <ActionForm
              action={leaveTheDemo}
              defaults={{
                id: randomUUID(),
                confirm: '',
                name: '',
                timeZone: demo.timeZone,
                currency: demo.currency,
              }}
              submit="Empty the demo and begin"
            >
              <Hidden name="id" />
              <TextField name="name" label="Name of your shop" />
              <div className="field-row">
                <TextField
                  name="timeZone"
                  label="Time zone"
                  hint="the shop’s day is judged by it, as Europe/Berlin"
                />
                <TextField name="currency" label="Currency" hint="three letters" />
              </div>
              <TextField
                name="confirm"
                label="Type the name of the demo shop, so that it is no slip"
                hint={demo.shopName}
              />
            </ActionForm>
          </div>
        </section>
      </div>
    </>
  )
}
