import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { readDoor } from '#lib/services/door'
import { ActionForm } from '../ui/action-form'
import { TextField } from '../ui/fields'
import { firstLead } from './actions'

export const metadata: Metadata = { title: 'Set up the shop' }
export const dynamic = 'force-dynamic'

export default async function FirstLeadPage() {
  const door = await readDoor()
  if (door.setUp) redirect('/sign-in')
  return (
    <main className="page narrow" style={{ maxWidth: 560, paddingTop: 40 }}>
      <h1>Set up the shop</h1>
      <p className="note" style={{ margin: '8px 0 22px' }}>
        The book is empty. The first lead sets it up, then adds people, materials and moulds.
      </p>
      <ActionForm
        action={firstLead}
        defaults={{
          code: '',
          shopName: '',
          timeZone: process.env.TZ || Intl.DateTimeFormat().resolvedOptions().timeZone || 'Europe/Berlin',
          currency: 'EUR',
          name: '',
          initials: '',
          email: '',
        }}
        submit="Set it up"
      >
        <TextField name="code" label="One-time code" hint="stands in the window where npm start runs" />
        <TextField name="shopName" label="Name of the shop" />
        <div className="field-row">
          <TextField
            name="timeZone"
            label="Time zone"
            hint="the shop's day is judged by it, as Europe/Berlin"
          />
          <TextField name="currency" label="Currency" hint="three letters" />
        </div>
        <div className="field-row">
          <TextField name="name" label="Your name" autoComplete="name" />
          <TextField name="initials" label="Initials" hint="stand in tables" />
        </div>
        <TextField name="email" label="E-mail" type="email" autoComplete="username" />
        <TextField
          name="password"
          label="Password"
          type="password"
          autoComplete="new-password"
          hint="at least 12 signs"
        />
      </ActionForm>
    </main>
  )
}
