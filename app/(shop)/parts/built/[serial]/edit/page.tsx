import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { BuiltPartInput } from '#lib/schema/built-part'
import { textOf } from '#lib/schema/form'
import { listLotNames, readBuiltPart } from '#lib/services/built-parts'
import { listParts } from '#lib/services/parts'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { BuiltPartEditor } from '../../../../../ui/built-part-editor'
import { builtPartHref } from '../../../../../ui/built-part-table'
import { Link } from '../../../../../ui/link'
import { NotYours } from '../../../../../ui/not-yours'
import { saveBuilt } from '../../../actions'

export const metadata: Metadata = { title: 'Change a part' }

export default async function EditBuiltPartPage({ params }: PageProps<'/parts/built/[serial]/edit'>) {
  const serial = decodeURIComponent((await params).serial)
  const actor = await requireActor(`/parts/built/${encodeURIComponent(serial)}/edit`)
  const page = await found(readBuiltPart(actor, { serial }))
  if (!page) notFound()
  if (actor.role === 'viewer') {
    return <NotYours>A viewer reads the book. A laminator or a lead writes into it.</NotYours>
  }
  const { part } = page
  const [parts, lots] = await Promise.all([listParts(actor, {}), listLotNames(actor, {})])
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={builtPartHref(part.serial)}>{part.serial}</Link> / change
        </div>
      </div>
      <h1 style={{ marginBottom: 8 }}>{part.serial}</h1>
      <p className="note" style={{ marginBottom: 18 }}>
        The serial, and how the part came out, are what its pulls say: put the pull right where they are
        wrong.
      </p>
      <BuiltPartEditor
        action={saveBuilt}
        parts={parts.map(({ id, code, name }) => ({ value: id, label: `${code}, ${name}` }))}
        lots={lots.map((lot) => ({
          value: lot.id,
          label: `${lot.material}, lot ${lot.lot}${lot.closed ? ' (closed)' : ''}`,
        }))}
        defaults={{
          ...(textOf(BuiltPartInput, part) as object),
          serial: part.serial,
          version: String(part.version),
        }}
      />
    </div>
  )
}
