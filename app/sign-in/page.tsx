import type { Metadata, Route } from 'next'
import { redirect } from 'next/navigation'
import { readDoor } from '#lib/services/door'
import { ActionForm } from '../ui/action-form'
import { Hidden, TextField } from '../ui/fields'
import { signIn } from './actions'

export const metadata: Metadata = { title: 'Sign in' }
export const dynamic = 'force-dynamic'

export default async function SignInPage({ searchParams }: PageProps<'/sign-in'>) {
  const door = await readDoor()
  const { to } = await searchParams
  if (!door.setUp) redirect('/first-lead' as Route)

  return (
    <main className="page narrow" style={{ maxWidth: 460, paddingTop: 60 }}>
      <p className="note">{door.shopName}</p>
      <h1 style={{ marginBottom: 24 }}>Mouldwright</h1>
      <ActionForm
        action={signIn}
        defaults={{ email: '', to: typeof to === 'string' ? to : '' }}
        submit="Sign in"
      >
        <Hidden name="to" />
        <TextField name="email" label="E-mail" type="email" autoComplete="username" />
        <TextField name="password" label="Password" type="password" autoComplete="current-password" />
      </ActionForm>
      {door.isDemo ? (
        <p className="note" style={{ marginTop: 24 }}>
          This is the demo shop; everything in it is invented. The passwords stand in the window where it was
          started.
        </p>
      ) : null}
    </main>
  )
}
