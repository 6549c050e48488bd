import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { productUseWords } from '#lib/core/stores/index'
import { listMaterials, readMaterial } from '#lib/services/stores'
import { listProducts, readProduct } from '#lib/services/stores-products'
import { found } from '#lib/web/page'
import { requireActor, type SignedIn } from '#lib/web/session'
import { ActionForm } from '../../../../ui/action-form'
import { Link } from '../../../../ui/link'
import { NewLotFields } from '../../../../ui/lot-fields'
import { NotYours } from '../../../../ui/not-yours'
import { addressOf } from '../../../../ui/page-address'
import { saveNewLot } from '../../actions'
import { FirstActs } from '../../first-acts'
import '../../stores.css'

export const metadata: Metadata = { title: 'Receive a lot' }

/** What came is chosen first, then its lot is written down: /stores/lots/new?material=… or ?product=… */
export default async function NewLotPage({ searchParams }: PageProps<'/stores/lots/new'>) {
  const actor = await requireActor(addressOf('/stores/lots/new', await searchParams))
  if (actor.role === 'viewer') {
    return <NotYours>A viewer reads the book. A laminator or a lead receives lots.</NotYours>
  }
  const query = await searchParams
  const subject = await subjectOf(actor, query)
  if (subject === undefined) notFound()
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/stores' as Route}>Stores</Link> / a lot that has come
        </div>
        {subject ? (
          <div className="acts">
            <Link className="btn" href={'/stores/lots/new' as Route}>
              Something else came
            </Link>
          </div>
        ) : null}
      </div>
      <h1 style={{ marginBottom: 18 }}>{subject ? `Receive ${subject.name}` : 'What has come?'}</h1>
      {subject ? (
        <ActionForm
          action={saveNewLot}
          defaults={{
            id: randomUUID(),
            subjectKind: subject.kind,
            subjectId: subject.id,
            unit: subject.unit,
            container: subject.kind === 'material' ? 'roll' : 'tin',
            receivedOn: subject.today,
          }}
          submit="Receive it"
        >
          <NewLotFields
            kind={subject.kind}
            unit={subject.unit}
            rollWidthMm={subject.rollWidthMm}
            shelfLifeDays={subject.shelfLifeDays}
          />
        </ActionForm>
      ) : (
        <WhatCame actor={actor} />
      )}
    </div>
  )
}

/** What the address names; null when it names nothing, undefined when that is not in the stores. */
async function subjectOf(actor: SignedIn, query: Record<string, string | string[] | undefined>) {
  if (typeof query.material === 'string') {
    const page = await found(readMaterial(actor, { id: query.material }))
    if (!page) return undefined
    const { id, code, name, rollWidthMm } = page.material
    return {
      kind: 'material' as const,
      id,
      name: `${code} ${name}`,
      unit: 'm2' as const,
      rollWidthMm,
      shelfLifeDays: null,
      today: page.today,
    }
  }
  if (typeof query.product === 'string') {
    const page = await found(readProduct(actor, { id: query.product }))
    if (!page) return undefined
    const { id, name, unit, shelfLifeDays } = page.product
    return { kind: 'product' as const, id, name, unit, rollWidthMm: null, shelfLifeDays, today: page.today }
  }
  return null
}

async function WhatCame({ actor }: { readonly actor: SignedIn }) {
  const [materials, products] = await Promise.all([listMaterials(actor, {}), listProducts(actor, {})])
  const rows = [
    ...materials
      .filter((material) => !material.retired)
      .map(({ id, code, name, role }) => ({
        href: `/stores/lots/new?material=${id}`,
        name: `${code} ${name}`,
        use: `${role} ply`,
      })),
    ...products
      .filter((product) => !product.retired)
      .map(({ id, name, use }) => ({
        href: `/stores/lots/new?product=${id}`,
        name,
        use: productUseWords[use],
      })),
  ]
  if (rows.length === 0) {
    return (
      <div className="empty">
        <p>
          {actor.role === 'lead'
            ? 'A roll is received under its material, a tin under its card. Neither is in the book yet.'
            : 'A lead adds materials and product cards first; then their lots are received.'}
        </p>
        {actor.role === 'lead' ? <FirstActs /> : null}
      </div>
    )
  }
  return (
    <ul className="what-came">
      {rows.map((row) => (
        <li key={row.href}>
          <Link href={row.href as Route}>
            {row.name} <span className="note">{row.use}</span>
          </Link>
        </li>
      ))}
    </ul>
  )
}
