import type { Metadata, Route } from 'next'
import { shortDate } from '#lib/core/dates'
import { kindNames, leakLossMbar, mouldStates } from '#lib/core/log/index'
import { figure } from '#lib/core/units'
import { listRack, type RackRow } from '#lib/services/rack'
import { requireActor } from '#lib/web/session'
import { Link } from '../../ui/link'
import { addressOf } from '../../ui/page-address'
import { Pages } from '../../ui/pages'
import { SmallPullStrip } from '../../ui/pull-strip'
import { sinceWords } from '../../ui/release'
import { weightOf } from '../../ui/stamp'
import { TableOut } from '../../ui/table-out'
import { columns, rackAsked } from './rack-asked'
import './rack.css'

export const metadata: Metadata = { title: 'Moulds' }

const weight = { stop: 'held', look: 'due', note: 'soft' } as const

export default async function RackPage({ searchParams }: PageProps<'/moulds'>) {
  const actor = await requireActor(addressOf('/moulds', await searchParams))
  const asked = rackAsked(await searchParams)
  const { find, state = '', sort } = asked
  const { rows, matching, total, page, pages, context } = await listRack(actor, asked)
  const href = (change: Record<string, string>) => {
    const usual: Record<string, string> = { find: '', state: '', sort: 'code', page: '1' }
    // Another order or another choice begins on the first page.
    const next: Record<string, string> = { find, state, sort, ...change }
    const kept = Object.entries(next).filter(([key, value]) => value !== usual[key])
    return (kept.length > 0 ? `/moulds?${new URLSearchParams(kept)}` : '/moulds') as Route
  }
  return (
    <>
      <div className="crumb-row">
        <h1 style={{ marginRight: 'auto' }}>The rack</h1>
        <TableOut name="moulds" label="All moulds" />
        <Link className="btn" href={'/sets' as Route}>
          Split moulds
        </Link>
        {actor.role === 'lead' ? (
          <Link className="btn primary" href={'/moulds/new' as Route}>
            Add a mould
          </Link>
        ) : null}
      </div>
      <form className="rack-find no-print" action="/moulds">
        <div className="field">
          <label htmlFor="rack-find">Find</label>
          <input
            id="rack-find"
            type="search"
            name="find"
            defaultValue={find}
            placeholder="Code, name, part, pattern, place"
          />
        </div>
        <div className="field">
          <label htmlFor="rack-state">State</label>
          <select id="rack-state" name="state" defaultValue={state}>
            <option value="">any</option>
            {mouldStates.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </div>
        {sort === 'code' ? null : <input type="hidden" name="sort" value={sort} />}
        <button type="submit" className="btn">
          Show
        </button>
        <p className="note" role="status">
          {matching} of {total} {total === 1 ? 'mould' : 'moulds'}
          {pages > 1 ? `, page ${page} of ${pages}` : ''}
          {find || state ? (
            <>
              {' · '}
              <Link href={'/moulds' as Route}>show all</Link>
            </>
          ) : null}
        </p>
      </form>
      {total === 0 ? (
        <div className="empty">
          <p>
            The rack is empty. Every mould stands here with its state, its pulls, what is on its face and what
            comes next.
          </p>
          {actor.role === 'lead' ? (
            <p>
              <Link className="btn" href={'/moulds/new' as Route}>
                Add the first mould
              </Link>
            </p>
          ) : null}
        </div>
      ) : rows.length === 0 ? (
        <p className="empty">
          {matching === 0 ? 'No mould fits.' : 'There is no such page.'}{' '}
          <Link href={'/moulds' as Route}>Show all {total}</Link>
        </p>
      ) : (
        <>
          <div className="table-room">
            <table className="lines rack">
              <thead>
                <tr>
                  {columns.map((column) => (
                    <th
                      key={column.name}
                      scope="col"
                      className={column.number ? 'n' : undefined}
                      aria-sort={
                        column.sort === sort ? (column.falling ? 'descending' : 'ascending') : undefined
                      }
                    >
                      {column.sort ? (
                        <Link href={href({ sort: column.sort })}>
                          {column.name}
                          {column.sort === sort ? (column.falling ? ' ↓' : ' ↑') : ''}
                        </Link>
                      ) : (
                        column.name
                      )}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <Row key={row.mould.id} row={row} today={context.today} />
                ))}
              </tbody>
            </table>
          </div>
          <Pages what="the rack" page={page} pages={pages} href={(to) => href({ page: String(to) })} />
        </>
      )}
    </>
  )
}

/** What settles it, where the state itself is all that stands open. */
function actOf(matter: RackRow['matters'][number] | undefined): string {
  if (!matter) return 'nothing open'
  return matter.settledBy ? kindNames[matter.settledBy].toLowerCase() : matter.word
}

function Row({ row, today }: { readonly row: RackRow; readonly today: string }) {
  const { mould, counts, standing, matters } = row
  const face = counts.release.find((target) => target.target === 'face')
  const leak = counts.lastLeak
  const idle = standing.state === 'retired' || standing.state === 'away'
  // What the state says already is not said twice.
  const next = idle ? undefined : matters.find(({ word }) => word !== standing.state)
  return (
    <tr>
      <td data-label="Mould">
        <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>
          <b>{mould.code}</b> {mould.name}
        </Link>
        <div className="note">
          {[
            mould.part && !mould.name.includes(mould.part.name) ? mould.part.name : null,
            mould.set ? `${mould.set.code}, piece ${mould.pieceNo} of ${mould.set.pieces}` : null,
          ]
            .filter(Boolean)
            .join(' · ')}
        </div>
      </td>
      <td data-label="State">
        <span style={{ color: `var(--${weightOf(standing.state)})`, fontWeight: 600 }}>{standing.state}</span>
        {standing.reason ? <div className="note">{standing.reason}</div> : null}
      </td>
      <td data-label="Pulls, season / all" className="n">
        {counts.pullsThisSeason} / {counts.pulls}
      </td>
      <td data-label="Coated / sealed / stripped" className="n">
        {face ? sinceWords(face) : '–'}
      </td>
      <td data-label="Last leak check" className="n">
        {leak ? (
          <>
            {leakLossMbar(leak.startMbar, leak.endMbar).toFixed(1)} mbar in {figure(leak.minutes)} min
            <div className="note">{shortDate(leak.doneOn, today)}</div>
          </>
        ) : (
          <span className="soft">not known</span>
        )}
      </td>
      <td data-label="Next">
        {next ? (
          <>
            <span className={weight[next.severity]}>{next.word}</span>
            {matters.length > 1 ? <div className="note">and {matters.length - 1} more</div> : null}
          </>
        ) : (
          <span className="soft">{idle ? '–' : actOf(matters[0])}</span>
        )}
      </td>
      <td data-label="Place">{counts.place ?? <span className="soft">not known</span>}</td>
      <td data-label="Pull strip">
        <SmallPullStrip id={`strip-${mould.id}`} marks={row.strip} />
      </td>
    </tr>
  )
}
