import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { requireActor } from '#lib/web/session'
import { Link } from '../../../../ui/link'
import { MaterialEditor } from '../../../../ui/material-editor'
import { NotYours } from '../../../../ui/not-yours'
import { saveNewMaterial } from '../../actions'
import '../../stores.css'

export const metadata: Metadata = { title: 'A new material' }

export default async function NewMaterialPage() {
  const actor = await requireActor('/stores/materials/new')
  if (actor.role !== 'lead') return <NotYours>A lead looks after materials.</NotYours>
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={'/stores/materials' as Route}>Materials</Link> / a new one
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>Add a material</h1>
      <MaterialEditor
        action={saveNewMaterial}
        defaults={{
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
          lowBelowM2: '',
          outLifeH: '',
          sourceNote: '',
          retired: false,
        }}
        submit="Add the material"
      />
    </div>
  )
}
