import type { Metadata, Route } from 'next'
import { sideWords } from '#lib/core/repair/index'
import { figure } from '#lib/core/units'
import { listPatches, planStates } from '#lib/services/patches'
import { requireActor } from '#lib/web/session'
import { Link } from '../../ui/link'
import { addressOf } from '../../ui/page-address'
import { Pages } from '../../ui/pages'
import { weightOf } from '../../ui/stamp'
import { TableOut } from '../../ui/table-out'
import '../../ui/book-sheet.css'

export const metadata: Metadata = { title: 'Patches' }

const perPage = 100

export default async function PatchesPage({ searchParams }: PageProps<'/patches'>) {
  const actor = await requireActor(addressOf('/patches', await searchParams))
  const query = await searchParams
  const state = planStates.find((each) => each === query.state) ?? ''
  const page = Math.max(1, Math.trunc(Number(query.page)) || 1)
  const { rows: shown, matching } = await listPatches(actor, {
    mouldId: null,
    states: state === '' ? [] : [state],
    page,
    size: perPage,
  })
  const href = (change: { readonly state?: string; readonly page?: number }) => {
    const asked = Object.entries({ state, page: 1, ...change }).filter(
      ([, value]) => value !== '' && value !== 1,
    )
    const words = new URLSearchParams(asked.map(([key, value]) => [key, String(value)]))
    return (asked.length > 0 ? `/patches?${words}` : '/patches') as Route
  }
  return (
    <>
      <div className="crumb-row">
        <h1 style={{ marginRight: 'auto' }}>Patches</h1>
        <TableOut name="patches" label="All patches" />
        {actor.role === 'lead' ? (
          <Link className="btn primary" href={'/patches/new' as Route}>
            Plan a patch
          </Link>
        ) : null}
      </div>
      <p className="acts note" style={{ marginBottom: 14 }}>
        <span>Show</span>
        {['', ...planStates].map((each) =>
          each === state ? (
            <b key={each} aria-current="true">
              {each || 'all'}
            </b>
          ) : (
            <Link key={each} href={href({ state: each })}>
              {each || 'all'}
            </Link>
          ),
        )}
      </p>
      {shown.length === 0 ? (
        <div className="empty">
          <p>
            {state === '' && matching === 0
              ? 'No patch yet. A plan starts from an opening on a face area and the plies of its mould; it stands here from the sketch until it is proved.'
              : matching === 0
                ? `No patch is ${state}.`
                : 'There is no such page.'}
          </p>
        </div>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col">Mould</th>
                <th scope="col">Patch</th>
                <th scope="col">Where</th>
                <th scope="col">Worked</th>
                <th scope="col">State</th>
                <th scope="col" className="n">
                  Version
                </th>
                <th scope="col" className="n">
                  Plies
                </th>
                <th scope="col" className="n">
                  Scarf
                </th>
                <th scope="col" className="n">
                  Lines done
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((patch) => (
                <tr key={patch.id}>
                  <td className="beside">
                    <Link href={`/moulds/${encodeURIComponent(patch.mouldCode)}` as Route}>
                      {patch.mouldCode}
                    </Link>
                  </td>
                  <td className="beside">
                    <Link href={`/patches/${patch.id}` as Route}>
                      Patch {patch.number}, {patch.title}
                    </Link>
                  </td>
                  <td className="beside" data-label="Where">
                    {patch.place}
                  </td>
                  <td className="beside" data-label="Worked">
                    {sideWords[patch.side].short}
                  </td>
                  <td className="beside" data-label="State">
                    <span style={{ color: `var(--${weightOf(patch.state)})`, fontWeight: 600 }}>
                      {patch.state}
                    </span>
                    {patch.stops > 0 && patch.state === 'sketched' ? (
                      <span className="held">
                        {' '}
                        {patch.stops} {patch.stops === 1 ? 'stop' : 'stops'}
                      </span>
                    ) : null}
                  </td>
                  <td className="n beside" data-label="Version">
                    {patch.versionNo}
                  </td>
                  <td className="n beside" data-label="Plies">
                    {patch.plies}
                  </td>
                  <td className="n beside" data-label="Scarf">
                    {figure(patch.lengthMm, 0)} mm
                  </td>
                  <td className="n beside" data-label="Lines done">
                    {patch.ticked} of {patch.lines}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Pages
        what="the patches"
        page={page}
        pages={Math.ceil(matching / perPage)}
        href={(to) => href({ page: to })}
      />
    </>
  )
}
