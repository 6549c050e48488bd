import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { listParts } from '#lib/services/parts'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../ui/link'
import { NotYours } from '../../../ui/not-yours'
import { SetEditor } from '../../../ui/set-editor'
import { saveNewSet } from '../actions'

export const metadata: Metadata = { title: 'Add a split mould' }

export default async function NewSetPage() {
  const actor = await requireActor('/sets/new')
  if (actor.role !== 'lead') return <NotYours>A lead adds split moulds.</NotYours>
  const parts = await listParts(actor, {})
  const blank = { massKg: '', lengthMm: '', widthMm: '', heightMm: '', liftingPoints: '', backing: '' }
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/sets' as Route}>Split moulds</Link> / a new one
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>Add a split mould</h1>
      <p className="note" style={{ marginBottom: 14 }}>
        Only code and name must be given. Its pieces are chosen next.
      </p>
      <SetEditor
        action={saveNewSet}
        parts={parts.map(({ id, code, name }) => ({ value: id, label: `${code}, ${name}` }))}
        pieces={[]}
        defaults={{
          ...blank,
          id: randomUUID(),
          code: '',
          name: '',
          partId: '',
          assembly: '',
          note: '',
          hardware: [],
        }}
        submit="Add the split mould"
      />
    </>
  )
}
