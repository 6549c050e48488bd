import { randomUUID } from 'node:crypto'
import type { Metadata, Route } from 'next'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../ui/action-form'
import { Hidden } from '../../../ui/fields'
import { Link } from '../../../ui/link'
import { NotYours } from '../../../ui/not-yours'
import { PatternFields, patternLabels } from '../../../ui/pattern-fields'
import { add } from '../actions'

export const metadata: Metadata = { title: 'Add a pattern' }

export default async function NewPatternPage() {
  const actor = await requireActor('/patterns/new')
  if (actor.role !== 'lead') return <NotYours>A lead adds patterns.</NotYours>
  const blank = Object.fromEntries(Object.keys(patternLabels).map((name) => [name, '']))
  return (
    <div className="narrow">
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/patterns' as Route}>Patterns</Link> / a new pattern
        </div>
      </div>
      <h1 style={{ marginBottom: 18 }}>Add a pattern</h1>
      <ActionForm
        action={add}
        labels={patternLabels}
        defaults={{ ...blank, id: randomUUID(), available: 'true', canBeMadeAgain: 'true' }}
        submit="Add the pattern"
      >
        <Hidden name="id" />
        <p className="note">Only code and name must be given. What is left blank stays "not known".</p>
        <PatternFields moved={false} />
      </ActionForm>
    </div>
  )
}
