import type { Route } from 'next'
import { partsOfMould } from '#lib/services/built-parts'
import type { SignedIn } from '#lib/web/session'
import { BuiltPartTable } from './built-part-table'
import { Link } from './link'

const shown = 8

/** The latest parts off a mould, and the way to all of them; nothing before the first. */
export async function MouldParts({
  actor,
  mould: { id, code },
  today,
}: {
  readonly actor: SignedIn
  readonly mould: { readonly id: string; readonly code: string }
  readonly today: string
}) {
  const { rows, total } = await partsOfMould(actor, { mouldId: id, limit: shown })
  if (total === 0) return null
  return (
    <section style={{ marginTop: 28 }}>
      <div className="find-row">
        <h2 style={{ marginRight: 'auto' }}>Parts off it</h2>
        <form action="/parts" className="find-row no-print">
          <input type="hidden" name="mould" value={code} />
          <input
            type="search"
            name="find"
            aria-label={`Serial of a part off ${code}`}
            placeholder="Serial"
            style={{ width: 180 }}
          />
          <button type="submit" className="btn">
            Find
          </button>
        </form>
      </div>
      <BuiltPartTable rows={rows} today={today} mould={code} />
      {total > shown ? (
        <p style={{ marginTop: 10 }}>
          <Link href={`/parts?mould=${encodeURIComponent(code)}` as Route}>All {total} parts off it</Link>
        </p>
      ) : null}
    </section>
  )
}
