import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { MouldInput } from '#lib/schema/mould'
import { readMouldPage } from '#lib/services/moulds'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../ui/action-form'
import { Hidden } from '../../../../ui/fields'
import { Link } from '../../../../ui/link'
import { MouldFields, mouldLabels } from '../../../../ui/mould-fields'
import { AddTies, mouldChoices, wordsOf } from '../../../../ui/mould-form'
import { NotYours } from '../../../../ui/not-yours'
import { addressOf } from '../../../../ui/page-address'
import { change } from '../../actions'
import '../../mould-form.css'

export const metadata: Metadata = { title: 'Change a mould' }

export default async function EditMouldPage({ params, searchParams }: PageProps<'/moulds/[code]/edit'>) {
  const actor = await requireActor(addressOf(`/moulds/${(await params).code}/edit`, await searchParams))
  const code = decodeURIComponent((await params).code)
  const page = await found(readMouldPage(actor, { code }))
  if (!page) notFound()
  if (actor.role !== 'lead') return <NotYours>A lead changes moulds.</NotYours>
  const query = await searchParams
  const choices = await mouldChoices(actor)
  const { mould } = page
  const base = `/moulds/${encodeURIComponent(mould.code)}`
  const ties = Object.fromEntries(
    (['part', 'pattern', 'set'] as const).flatMap((tie) =>
      typeof query[tie] === 'string' ? [[`${tie}Id`, query[tie]]] : [],
    ),
  )
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={base as Route}>{mould.code}</Link> / change
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{mould.name}</h1>
      <div className="mould-form">
        <ActionForm
          action={change}
          labels={mouldLabels}
          words={wordsOf(choices)}
          defaults={{ ...(textOf(MouldInput, mould) as object), ...ties, version: String(mould.version) }}
          submit="Save"
        >
          <Hidden name="id" />
          <Hidden name="version" />
          <MouldFields choices={choices} />
        </ActionForm>
        <AddTies back={`${base}/edit`} />
      </div>
    </>
  )
}
