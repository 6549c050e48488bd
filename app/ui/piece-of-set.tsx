import type { Route } from 'next'
import { readSetPage } from '#lib/services/sets'
import { found } from '#lib/web/page'
import type { SignedIn } from '#lib/web/session'
import { Link } from './link'
import { weightOf } from './stamp'

/** For a piece of a split mould: the whole, and how the other pieces stand. */
export async function PieceOfSet({
  actor,
  setCode,
  mouldId,
}: {
  readonly actor: SignedIn
  readonly setCode: string
  readonly mouldId: string
}) {
  const page = await found(readSetPage(actor, { code: setCode }))
  if (!page) return null
  const others = page.pieces.filter(({ piece }) => piece.id !== mouldId)
  return (
    <section className="rule-top">
      <h2>
        Piece of <Link href={`/sets/${encodeURIComponent(page.set.code)}` as Route}>{page.set.code}</Link>
      </h2>
      <dl className="figures">
        <div>
          <dt>
            The whole
            <div className="note">{page.standing?.reason}</div>
          </dt>
          <dd className={page.standing ? weightOf(page.standing.state) : undefined}>
            {page.standing?.state ?? ''}
          </dd>
        </div>
        {others.map(({ piece, standing }) => (
          <div key={piece.id}>
            <dt>
              <Link href={`/moulds/${encodeURIComponent(piece.code)}` as Route}>{piece.code}</Link>{' '}
              {piece.name}
              {standing.reason ? <div className="note">{standing.reason}</div> : null}
            </dt>
            <dd className={weightOf(standing.state)}>{standing.state}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
