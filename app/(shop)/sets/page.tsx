import type { Metadata, Route } from 'next'
import { listSets, type SetRow } from '#lib/services/sets'
import { requireActor } from '#lib/web/session'
import { TableOut } from '../../ui/table-out'
import '../../ui/book-sheet.css'
import { Link } from '../../ui/link'
import { massWords, sizeWords } from '../../ui/outer-size'
import { Stamp, weightOf } from '../../ui/stamp'

export const metadata: Metadata = { title: 'Split moulds' }

export default async function SetsPage() {
  const actor = await requireActor('/sets')
  const rows = await listSets(actor, {})
  const lead = actor.role === 'lead'
  const add = (words: string) => (
    <Link className="btn primary" href={'/sets/new' as Route}>
      {words}
    </Link>
  )
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/moulds' as Route}>The rack</Link> / split moulds
        </div>
        <TableOut name="split-moulds" label="All split moulds" />
        {lead && rows.length > 0 ? add('Add a split mould') : null}
      </div>
      <h1 style={{ marginBottom: 14 }}>Split moulds</h1>
      {rows.length === 0 ? (
        <div className="empty">
          <p>
            No split mould yet. A mould of several pieces stands here as a whole: its pieces with their
            states, its hardware list, and how it is closed and opened.
          </p>
          {lead ? <p>{add('Add the first split mould')}</p> : null}
        </div>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col">Split mould</th>
                <th scope="col">State</th>
                <th scope="col">Pieces</th>
                <th scope="col">Part</th>
                <th scope="col">Mass and outer size</th>
                <th scope="col" className="n">
                  Hardware lines
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <Row key={row.set.id} row={row} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  )
}

function Row({ row: { set, pieces, standing } }: { readonly row: SetRow }) {
  return (
    <tr>
      <td>
        <Link href={`/sets/${encodeURIComponent(set.code)}` as Route}>
          <b>{set.code}</b>
        </Link>{' '}
        {set.name}
      </td>
      <td data-label="State">
        {standing ? <Stamp state={standing.state} reason={standing.reason} /> : null}
        {standing ? null : <span className="soft">no piece yet</span>}
      </td>
      <td data-label="Pieces">
        {pieces.map(({ piece, standing: own }) => (
          <div key={piece.id}>
            <Link href={`/moulds/${encodeURIComponent(piece.code)}` as Route}>{piece.code}</Link>{' '}
            <span className={weightOf(own.state)}>{own.state}</span>
          </div>
        ))}
      </td>
      <td data-label="Part">{set.part ? `${set.part.code}, ${set.part.name}` : ''}</td>
      <td data-label="Mass and outer size">
        {[massWords(set.massKg), sizeWords(set)].filter(Boolean).join(', ') || (
          <span className="soft">not known</span>
        )}
      </td>
      <td data-label="Hardware lines" className="n beside">
        {set.hardware.length}
      </td>
    </tr>
  )
}
