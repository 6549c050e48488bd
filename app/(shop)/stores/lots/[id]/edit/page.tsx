import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { LotEdit } from '#lib/schema/stock'
import { readLot } from '#lib/services/stores-lots'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../../ui/action-form'
import { Link } from '../../../../../ui/link'
import { LotFields } from '../../../../../ui/lot-fields'
import { NotYours } from '../../../../../ui/not-yours'
import { saveLot } from '../../../actions'

export const metadata: Metadata = { title: 'Change a lot' }

const labels = {
  lot: 'Lot or batch number',
  container: 'What it is in',
  receivedOn: 'Came on',
  expiresOn: 'Good until',
  openedOn: 'Opened on',
  place: 'Where it stands',
  note: 'Note',
}

export default async function EditLotPage({ params }: PageProps<'/stores/lots/[id]/edit'>) {
  const actor = await requireActor(`/stores/lots/${(await params).id}/edit`)
  if (actor.role === 'viewer') return <NotYours>A viewer reads the book.</NotYours>
  const page = await found(readLot(actor, { id: (await params).id }))
  if (!page) notFound()
  const { lot } = page
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={`/stores/lots/${lot.id}` as Route}>{lot.lot}</Link> / change
        </div>
      </div>
      <h1 style={{ marginBottom: 6 }}>
        {lot.subjectName}, lot {lot.lot}
      </h1>
      <p className="note" style={{ marginBottom: 18 }}>
        How much there is changes by taking and counting, not here.
      </p>
      <ActionForm
        action={saveLot}
        defaults={textOf(LotEdit, lot) as Record<string, unknown>}
        labels={labels}
        submit="Save"
      >
        <LotFields />
      </ActionForm>
    </div>
  )
}
