import type { Metadata, Route } from 'next'
import { shortDate } from '#lib/core/dates'
import { patternLost } from '#lib/core/lineage/index'
import { entryWords } from '#lib/core/log/index'
import { listPatternLines, type PatternLine } from '#lib/services/patterns'
import { requireActor } from '#lib/web/session'
import { TableOut } from '../../ui/table-out'
import '../../ui/book-sheet.css'
import { OnceOnly } from '../../ui/cant-be-made-again'
import { Link } from '../../ui/link'

export const metadata: Metadata = { title: 'Patterns' }

export default async function PatternsPage() {
  const actor = await requireActor('/patterns')
  const { lines, context } = await listPatternLines(actor, {})
  const lead = actor.role === 'lead'
  return (
    <>
      <div className="crumb-row">
        <h1 style={{ marginRight: 'auto' }}>Patterns</h1>
        <TableOut name="patterns" label="All patterns" />
        {lead && lines.length > 0 ? (
          <Link className="btn primary" href={'/patterns/new' as Route}>
            Add a pattern
          </Link>
        ) : null}
      </div>
      {lines.length === 0 ? (
        <div className="empty">
          <p>
            No pattern yet. Which mould came off which pattern stands here, what each pattern is made of,
            where it is, and whether it is still true.
          </p>
          {lead ? (
            <p>
              <Link className="btn primary" href={'/patterns/new' as Route}>
                Add the first pattern
              </Link>
            </p>
          ) : null}
        </div>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col">Pattern</th>
                <th scope="col">Made of</th>
                <th scope="col">Condition</th>
                <th scope="col">Place</th>
                <th scope="col">Now</th>
                <th scope="col">Moulds off it</th>
                <th scope="col">Last written</th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <Line key={line.pattern.id} line={line} today={context.today} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  )
}

function Line({ line: { pattern, last }, today }: { readonly line: PatternLine; readonly today: string }) {
  const place = pattern.movedTo?.place ?? pattern.place
  const words = last ? entryWords(last) : null
  return (
    <tr>
      <td className="named">
        <Link href={`/patterns/${encodeURIComponent(pattern.code)}` as Route}>
          <b>{pattern.code}</b>
        </Link>{' '}
        {pattern.name}
        <div>
          <OnceOnly of={patternLost(pattern)} />
        </div>
      </td>
      <td data-label="Made of">{pattern.madeOf || <span className="soft">not known</span>}</td>
      <td data-label="Condition">{pattern.condition || <span className="soft">not known</span>}</td>
      <td data-label="Place" className="placed beside">
        {place || <span className="soft">not known</span>}
      </td>
      <td
        data-label="Now"
        className={`beside ${pattern.available ? 'good' : 'held'}`}
        style={{ whiteSpace: 'nowrap' }}
      >
        {pattern.available ? 'can be used' : 'gone or unfit'}
      </td>
      <td data-label="Moulds off it">
        {pattern.moulds.length === 0 ? <span className="soft">none</span> : null}
        {pattern.moulds.map((mould, index) => (
          <span key={mould.id} style={{ whiteSpace: 'nowrap' }}>
            {index > 0 ? ', ' : ''}
            <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>{mould.code}</Link>
          </span>
        ))}
      </td>
      <td data-label="Last written">
        {last && words ? (
          <>
            <span className="soft">{shortDate(last.doneOn, today)}</span> {words.what}
          </>
        ) : (
          <span className="soft unsaid">nothing yet</span>
        )}
      </td>
    </tr>
  )
}
