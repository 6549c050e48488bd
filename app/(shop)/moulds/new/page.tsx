import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { readSettings } from '#lib/services/shop'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../ui/action-form'
import { Hidden, TextField } from '../../../ui/fields'
import { Link } from '../../../ui/link'
import { MouldFields, mouldLabels } from '../../../ui/mould-fields'
import { AddTies, mouldChoices } from '../../../ui/mould-form'
import { NotYours } from '../../../ui/not-yours'
import { addressOf } from '../../../ui/page-address'
import { add } from '../actions'
import '../mould-form.css'

export const metadata: Metadata = { title: 'Add a mould' }

export default async function NewMouldPage({ searchParams }: PageProps<'/moulds/new'>) {
  const actor = await requireActor(addressOf('/moulds/new', await searchParams))
  if (actor.role !== 'lead') return <NotYours>A lead adds moulds.</NotYours>
  const query = await searchParams
  const chosen = (name: string) => (typeof query[name] === 'string' ? query[name] : '')
  const { today } = await readSettings(actor, {})
  const blank = Object.fromEntries(Object.keys(mouldLabels).map((name) => [name, '']))
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/moulds' as Route}>The rack</Link> / a new mould
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>Add a mould</h1>
      <div className="mould-form">
        <ActionForm
          action={add}
          labels={mouldLabels}
          defaults={{
            ...blank,
            id: randomUUID(),
            placeEntryId: randomUUID(),
            today,
            place: '',
            hand: 'none',
            canBeMadeAgain: 'true',
            partId: chosen('part'),
            patternId: chosen('pattern'),
            setId: chosen('set'),
          }}
          submit="Add the mould"
        >
          <Hidden name="id" />
          <Hidden name="placeEntryId" />
          <Hidden name="today" />
          <p className="note">
            Only code and name must be given. What is left blank stays "not known", never nought.
          </p>
          <MouldFields choices={await mouldChoices(actor)} />
          <TextField name="place" label="Place" hint="where it stands now; written into its log" />
        </ActionForm>
        <AddTies back="/moulds/new" />
      </div>
    </>
  )
}
