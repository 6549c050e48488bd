import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../ui/action-form'
import { Link } from '../../../../ui/link'
import { NotYours } from '../../../../ui/not-yours'
import { ProductFields } from '../../../../ui/product-fields'
import { saveNewProduct } from '../../actions'

export const metadata: Metadata = { title: 'A new product card' }

export default async function NewProductPage() {
  const actor = await requireActor('/stores/products/new')
  if (actor.role !== 'lead') return <NotYours>A lead looks after product cards.</NotYours>
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={'/stores/products' as Route}>Agents and resins</Link> / a new one
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>Add an agent or a resin</h1>
      <ActionForm
        action={saveNewProduct}
        defaults={{ id: randomUUID(), use: 'release', unit: 'l' }}
        submit="Add the card"
      >
        <ProductFields changing={false} />
      </ActionForm>
    </div>
  )
}
