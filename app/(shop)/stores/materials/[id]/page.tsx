import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { MaterialInput } from '#lib/schema/material'
import { readSettings } from '#lib/services/shop'
import { listMaterials } from '#lib/services/stores'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { MaterialEditor } from '../../../../ui/material-editor'
import { saveMaterial, saveNewMaterial } from '../../actions'
import '../../stores.css'

export const metadata: Metadata = { title: 'Material' }

/** A material to be changed, or a new one at /stores/materials/new. */
export default async function MaterialPage({ params }: PageProps<'/stores/materials/[id]'>) {
  const actor = await requireActor()
  const { id } = await params
  if (actor.role !== 'lead') return <p className="empty">A lead looks after materials.</p>
  const stored = id === 'new' ? null : (await listMaterials(actor, {})).find((material) => material.id === id)
  if (stored === undefined) notFound()
  const { shop } = await readSettings(actor, {})
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> / {stored?.code ?? 'a new material'}
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{stored?.name ?? 'Add a material'}</h1>
      {stored ? (
        <p className="note" style={{ marginBottom: 18 }}>
          Plans that were sketched keep the figures they were worked out with.
        </p>
      ) : null}
      <MaterialEditor
        action={stored ? saveMaterial : saveNewMaterial}
        currency={shop.currency}
        defaults={
          stored
            ? { ...(textOf(MaterialInput, stored) as object), version: String(stored.version) }
            : {
                id: randomUUID(),
                code: '',
                name: '',
                role: 'bulk',
                fibreArealWeightGsm: '',
                fibreDensityGcm3: '',
                rollWidthMm: '',
                fibreContent: {
                  kind: 'resin-mass',
                  resinMassFraction: '',
                  resinDensityGcm3: '',
                  fibreVolumeFraction: '',
                },
                thickestCureMm: '',
                cure: '',
                postCure: '',
                priceMinorPerM2: '',
                sourceNote: '',
              }
        }
        submit={stored ? 'Save' : 'Add the material'}
      />
    </div>
  )
}
