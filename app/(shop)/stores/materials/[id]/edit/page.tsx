import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { MaterialInput } from '#lib/schema/material'
import { readMaterial } from '#lib/services/stores'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../../ui/link'
import { MaterialEditor } from '../../../../../ui/material-editor'
import { NotYours } from '../../../../../ui/not-yours'
import { saveMaterial } from '../../../actions'
import '../../../stores.css'

export const metadata: Metadata = { title: 'Change a material' }

export default async function EditMaterialPage({ params }: PageProps<'/stores/materials/[id]/edit'>) {
  const actor = await requireActor(`/stores/materials/${(await params).id}/edit`)
  if (actor.role !== 'lead') return <NotYours>A lead looks after materials.</NotYours>
  const page = await found(readMaterial(actor, { id: (await params).id }))
  if (!page) notFound()
  const { material } = page
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={`/stores/materials/${material.id}` as Route}>{material.code}</Link> / change
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{material.name}</h1>
      <p className="note" style={{ marginBottom: 18 }}>
        Plans that were sketched keep the figures they were worked out with.
      </p>
      <MaterialEditor
        action={saveMaterial}
        defaults={{ ...(textOf(MaterialInput, material) as object), version: String(material.version) }}
        submit="Save"
      />
    </div>
  )
}
