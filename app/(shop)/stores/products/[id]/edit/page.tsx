import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { ProductInput } from '#lib/schema/product'
import { readProduct } from '#lib/services/stores-products'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../../ui/action-form'
import { Link } from '../../../../../ui/link'
import { NotYours } from '../../../../../ui/not-yours'
import { ProductFields } from '../../../../../ui/product-fields'
import { saveProduct } from '../../../actions'
import { productLabels } from '../../../product-labels'

export const metadata: Metadata = { title: 'Change a product card' }

export default async function EditProductPage({ params }: PageProps<'/stores/products/[id]/edit'>) {
  const actor = await requireActor(`/stores/products/${(await params).id}/edit`)
  if (actor.role !== 'lead') return <NotYours>A lead looks after product cards.</NotYours>
  const page = await found(readProduct(actor, { id: (await params).id }))
  if (!page) notFound()
  const { product } = page
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> /{' '}
          <Link href={`/stores/products/${product.id}` as Route}>{product.name}</Link> / change
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{product.name}</h1>
      <ActionForm
        action={saveProduct}
        defaults={{ ...(textOf(ProductInput, product) as object), version: String(product.version) }}
        labels={productLabels}
        submit="Save"
      >
        <ProductFields changing />
      </ActionForm>
    </div>
  )
}
