import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { textOf } from '#lib/schema/form'
import { PatternInput } from '#lib/schema/mould'
import { readPatternPage } from '#lib/services/patterns'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../../ui/action-form'
import { Hidden } from '../../../../ui/fields'
import { Link } from '../../../../ui/link'
import { NotYours } from '../../../../ui/not-yours'
import { PatternFields, patternLabels } from '../../../../ui/pattern-fields'
import { change } from '../../actions'

export const metadata: Metadata = { title: 'Change a pattern' }

export default async function EditPatternPage({ params }: PageProps<'/patterns/[code]/edit'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(`/patterns/${encodeURIComponent(code)}/edit`)
  const page = await found(readPatternPage(actor, { code }))
  if (!page) notFound()
  if (actor.role !== 'lead') return <NotYours>A lead changes patterns.</NotYours>
  const { pattern } = page
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/patterns' as Route}>Patterns</Link> /{' '}
          <Link href={`/patterns/${encodeURIComponent(pattern.code)}` as Route}>{pattern.code}</Link> / change
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>{pattern.name}</h1>
      <ActionForm
        action={change}
        labels={patternLabels}
        words={{ true: 'yes' }}
        defaults={{ ...(textOf(PatternInput, pattern) as object), version: String(pattern.version) }}
        submit="Save"
      >
        <Hidden name="id" />
        <Hidden name="version" />
        <PatternFields moved={pattern.movedTo !== null} />
      </ActionForm>
    </div>
  )
}
