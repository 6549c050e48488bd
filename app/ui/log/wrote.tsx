import { entryWords } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import { findLogEntry } from '#lib/services/log'
import { AddPhoto } from '../pictures/add-photo'

/** What was just written down, as the page's query names it. */
export async function Wrote({
  actor,
  id,
}: {
  readonly actor: Actor
  readonly id: string | string[] | undefined
}) {
  const entry = typeof id === 'string' ? await findLogEntry(actor, { id }) : null
  if (!entry) return null
  const { what, detail } = entryWords(entry)
  return (
    <p className="notice done" role="status" style={{ marginBottom: 16 }}>
      Written{entry.groupId ? ' on every piece' : ''}: {what}
      {detail ? `, ${detail}` : ''}{' '}
      <AddPhoto
        subject={
          entry.mouldId
            ? { on: 'mould', onId: entry.mouldId }
            : { on: 'pattern', onId: entry.patternId ?? '' }
        }
        entryId={entry.id}
        className=""
      />
    </p>
  )
}
