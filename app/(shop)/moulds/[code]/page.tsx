import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shortDate } from '#lib/core/dates'
import { faceDrawing } from '#lib/core/drawing/index'
import { meanThicknessMm, stackUp } from '#lib/core/laminate/index'
import { entryWords, kindNames, type LogKind, leakLossMbar, logKinds } from '#lib/core/log/index'
import { figure } from '#lib/core/units'
import { faceModelOf } from '#lib/services/face-model'
import { type MouldPage, readMouldPage } from '#lib/services/moulds'
import { readSettings } from '#lib/services/shop'
import { stackPlies } from '#lib/services/stores'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { Demoulding } from '../../../ui/demoulding'
import { DrawingLegend } from '../../../ui/drawing/legend'
import { TwoWidths } from '../../../ui/drawing/two-widths'
import { History } from '../../../ui/history'
import { Link } from '../../../ui/link'
import { Matters } from '../../../ui/matters'
import { LargePullStrip } from '../../../ui/pull-strip'
import { Release } from '../../../ui/release'
import { Stamp } from '../../../ui/stamp'
import './mould.css'

export async function generateMetadata({ params }: PageProps<'/moulds/[code]'>): Promise<Metadata> {
  return { title: decodeURIComponent((await params).code) }
}

/** How much of the history a page opens with. */
const firstLines = 40

/** Kinds that are offered as a button; the rest stand under More. */
const quick = ['coat', 'leak-check', 'damage'] as const
const more = logKinds.filter(
  (kind) =>
    !['coat', 'leak-check', 'damage', 'cleared', 'pull', 'patch-laid', 'proved', 'correction'].includes(kind),
)

export default async function MouldPageView({ params, searchParams }: PageProps<'/moulds/[code]'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(`/moulds/${encodeURIComponent(code)}`)
  const query = await searchParams
  const page = await found(readMouldPage(actor, { code }))
  if (!page) notFound()
  const { seasons } = await readSettings(actor, {})
  const { mould, context, matters, counts } = page
  const base = `/moulds/${encodeURIComponent(mould.code)}`
  const mayLog = actor.role !== 'viewer'
  const lead = actor.role === 'lead'
  const wanted = kindsOf(query.kind)
  const wrote = page.entries.find((entry) => entry.id === query.wrote)
  const ofKind =
    wanted.length > 0 ? page.entries.filter((entry) => wanted.includes(entry.kind)) : page.entries
  const entries = query.all === 'yes' ? ofKind : ofKind.slice(0, firstLines)
  const main = counts.clearedOn ? 'pull' : 'cleared'
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href="/moulds">The rack</Link> / {mould.code}
        </div>
        <div className="acts no-print">
          {mayLog ? (
            <>
              <Link className="btn primary" href={`${base}/log/${main}` as Route}>
                {main === 'pull' ? 'Log the pull' : 'Clear to lay up'}
              </Link>
              {quick.map((kind) => (
                <Link key={kind} className="btn" href={`${base}/log/${kind}` as Route}>
                  {kindNames[kind]}
                </Link>
              ))}
              <details className="menu">
                <summary className="btn">More…</summary>
                <div className="menu-box">
                  {main === 'cleared' ? (
                    <Link href={`${base}/log/pull` as Route}>Pull, not cleared</Link>
                  ) : null}
                  {more.map((kind) => (
                    <Link key={kind} href={`${base}/log/${kind}` as Route}>
                      {kindNames[kind]}
                    </Link>
                  ))}
                  {lead ? (
                    <>
                      <Link href={`/patches/new?mould=${encodeURIComponent(mould.code)}` as Route}>
                        Plan a patch
                      </Link>
                      <Link href={`${base}/points` as Route}>Locating points</Link>
                      <Link href={`${base}/areas/new` as Route}>Add an area</Link>
                      <Link href={`${base}/edit` as Route}>Change the mould</Link>
                    </>
                  ) : null}
                  <Link href={`/m/${encodeURIComponent(mould.code)}` as Route}>Page for the phone</Link>
                </div>
              </details>
            </>
          ) : null}
        </div>
      </div>

      {wrote ? (
        <p className="notice done" role="status" style={{ marginBottom: 16 }}>
          Written: {entryWords(wrote).what}
          {entryWords(wrote).detail ? `, ${entryWords(wrote).detail}` : ''}
        </p>
      ) : null}

      <div className="mould-top">
        <div className="sheet">
          <Face
            page={page}
            area={text(query.area)}
            fromBack={query.view === 'back'}
            base={base}
            lead={lead}
          />
          <TitleStrip page={page} />
        </div>
        <aside className="stack-gap" aria-label="Before the next lay-up">
          <section className="rule-top">
            <h2>Before the next lay-up</h2>
            <Matters code={mould.code} matters={matters} mayLog={mayLog} />
          </section>
          <section className="rule-top">
            <h2>Release</h2>
            <Release targets={counts.release} today={context.today} />
          </section>
          <Handling page={page} />
        </aside>
      </div>

      <section style={{ marginTop: 28 }}>
        <h2 style={{ marginBottom: 8 }}>
          Pull strip{' '}
          <span className="note" style={{ fontWeight: 400 }}>
            each stroke is a pull; the taller, the harder it came out; triangles are coats
          </span>
        </h2>
        <LargePullStrip id="strip" marks={page.strip} seasons={seasons} />
      </section>

      <Patches page={page} lead={lead} />

      <section style={{ marginTop: 28 }}>
        <h2>History</h2>
        <p className="acts note" style={{ margin: '6px 0' }}>
          <span>Show</span>
          <Filter href={base} on={wanted.length === 0} name="all" />
          {filters.map(({ name, kinds }) => (
            <Filter
              key={name}
              href={`${base}?kind=${kinds.join(',')}`}
              on={wanted.length > 0 && kinds.includes(wanted[0] ?? 'note')}
              name={name}
            />
          ))}
        </p>
        {entries.length === 0 ? (
          <p className="empty">
            {page.entries.length === 0
              ? 'Nothing written yet. What happens to this mould stands here for good: pulls, coats, checks, patches, moves.'
              : 'Nothing of this kind is written.'}
          </p>
        ) : (
          <History
            code={mould.code}
            entries={entries}
            initials={page.initials}
            today={context.today}
            timeZone={context.shop.timeZone}
            mayLog={mayLog}
          />
        )}
        {entries.length < ofKind.length ? (
          <p style={{ marginTop: 12 }}>
            <Link
              className="btn"
              href={
                `${base}?${new URLSearchParams({ ...(wanted.length > 0 ? { kind: wanted.join(',') } : {}), all: 'yes' })}` as Route
              }
              scroll={false}
            >
              Show all {ofKind.length} entries
            </Link>
          </p>
        ) : null}
      </section>
    </>
  )

  function text(value: string | string[] | undefined): string | null {
    return typeof value === 'string' ? value : null
  }
}

const filters: readonly { readonly name: string; readonly kinds: readonly LogKind[] }[] = [
  { name: 'pulls', kinds: ['pull', 'cleared'] },
  { name: 'release', kinds: ['strip', 'clean', 'seal', 'coat', 'tape-test'] },
  { name: 'leaks', kinds: ['leak-check'] },
  { name: 'damage and repair', kinds: ['damage', 'inspection', 'patch-laid', 'proved', 'dowel-changed'] },
  { name: 'place and state', kinds: ['moved', 'state'] },
  { name: 'notes', kinds: ['note', 'correction'] },
]

function kindsOf(value: string | string[] | undefined): LogKind[] {
  if (typeof value !== 'string') return []
  return value.split(',').filter((kind): kind is LogKind => logKinds.some((known) => known === kind))
}

function Filter({ href, on, name }: { readonly href: string; readonly on: boolean; readonly name: string }) {
  return on ? (
    <b aria-current="true">{name}</b>
  ) : (
    <Link href={href as Route} scroll={false}>
      {name}
    </Link>
  )
}

function Face({
  page,
  area,
  fromBack,
  base,
  lead,
}: {
  readonly page: MouldPage
  readonly area: string | null
  readonly fromBack: boolean
  readonly base: string
  readonly lead: boolean
}) {
  const shown = page.areas.find((candidate) => candidate.id === area) ?? areaInWork(page) ?? page.areas[0]
  if (!shown) {
    return (
      <div className="empty" style={{ border: 0 }}>
        <p>
          No face area yet. With its outline the face is drawn here to scale, with dowels, patches and the
          location grid.
        </p>
        {lead ? (
          <p>
            <Link className="btn" href={`${base}/areas/new` as Route}>
              Add an area
            </Link>
          </p>
        ) : null}
      </div>
    )
  }
  const model = faceModelOf(page.mould.code, shown, page.points, page.plans)
  const seenFrom = fromBack ? 'back' : 'cavity'
  const planOf = (name: string) => page.patches.find((patch) => `Patch ${patch.number}` === name)
  const drawn = faceDrawing(model, { kind: 'screen', widthPx: 880, maxHeightPx: 560 }, seenFrom)
  return (
    <>
      <div className="face-head">
        {page.areas.length > 1 ? (
          <span className="acts">
            {page.areas.map((candidate) => (
              <Filter
                key={candidate.id}
                href={`${base}?area=${candidate.id}${fromBack ? '&view=back' : ''}`}
                on={candidate.id === shown.id}
                name={candidate.name}
              />
            ))}
          </span>
        ) : (
          <b>{shown.name}</b>
        )}
        <span className="acts">
          {lead ? <Link href={`${base}/areas/${shown.id}` as Route}>Change the area</Link> : null}
          <Link href={`${base}?area=${shown.id}${fromBack ? '' : '&view=back'}` as Route} scroll={false}>
            {fromBack ? 'See it from the cavity' : 'See it from the back'}
          </Link>
        </span>
      </div>
      <div className="face-room">
        <TwoWidths
          id={`face-${shown.id}`}
          draw={(medium) => faceDrawing(model, medium, seenFrom)}
          widthPx={880}
          maxHeightPx={560}
          hrefOf={(subject) => {
            const patch = subject.kind === 'dowel' ? undefined : planOf(subject.name)
            return patch ? `/patches/${patch.id}` : null
          }}
        />
      </div>
      <div className="legend-row">
        <DrawingLegend keys={drawn.legend} />
      </div>
    </>
  )
}

/** Where something is going on: an area with a patch that is planned, on the bench or not yet proved. */
function areaInWork(page: MouldPage): MouldPage['areas'][number] | undefined {
  const open = page.plans.filter(({ plan }) => plan.state !== 'proved' && plan.state !== 'put by')
  return page.areas.find((area) => open.some(({ patch }) => patch.areaId === area.id))
}

/** The data of the mould stand in the strip at the foot of its drawing. */
function TitleStrip({ page }: { readonly page: MouldPage }) {
  const { mould, stack, counts, standing, areas } = page
  const readings = areas.flatMap((area) => area.readings.map((reading) => reading.thicknessMm))
  const built = stack ? stackUp(stackPlies(stack)) : null
  const mean = meanThicknessMm(readings)
  return (
    <div className="strip">
      <div>
        <small>
          {mould.code}
          {mould.set ? `, piece ${mould.pieceNo} of ${mould.set.pieces}` : ''}
          {mould.pattern ? `, off pattern ${mould.pattern.code}` : ''}
          {mould.madeWhen ? ` in ${mould.madeWhen}` : ''}
        </small>
        <h1>{mould.name}</h1>
        {mould.canBeMadeAgain && (mould.pattern?.canBeMadeAgain ?? true) ? null : (
          <small className="held">Can't be made again</small>
        )}
      </div>
      <div>
        <small>Stack{built ? `, ${figure(built.thicknessMm, 1)} mm built` : ''}</small>
        <b>{built ? byRole(built.plies.map((ply) => ply.material.role)) : 'not known'}</b>
        <small>
          {mean === null ? 'not measured' : `${figure(mean, 1)} measured, ${readings.length} places`}
        </small>
      </div>
      <div>
        <small>Heat, in use / free</small>
        <b>
          {mould.heatInUseC ?? '?'} / {mould.heatFreeC ?? '?'} °C
        </b>
        <small>
          {mould.tgDryC === null ? 'Tg not known' : `Tg dry ${mould.tgDryC}`}
          {mould.heatBondedC === null ? '' : `, bonded ${mould.heatBondedC}`}
        </small>
      </div>
      <div>
        <small>Clocks</small>
        <b>
          {counts.pulls} {counts.pulls === 1 ? 'pull' : 'pulls'}
        </b>
        <small>
          {counts.pullsThisSeason} this season
          {counts.pullsNotCleared > 0 ? `, ${counts.pullsNotCleared} not cleared` : ''}
        </small>
      </div>
      <div>
        <small>Place</small>
        <b>{counts.place ?? 'not known'}</b>
        <small>{page.points ? `table issue ${page.points.number}` : 'no locating points'}</small>
      </div>
      <div className="stamp-field">
        <Stamp state={standing.state} reason={standing.reason} />
        {standing.also.length > 0 ? (
          <small style={{ marginLeft: 8 }}>also {standing.also.join(', ')}</small>
        ) : null}
      </div>
    </div>
  )
}

/** "1 + 8 + 1": plies of the same role counted together, from the face to the back. */
function byRole(roles: readonly string[]): string {
  const counts: { role: string; count: number }[] = []
  for (const role of roles) {
    const last = counts.at(-1)
    if (last?.role === role) last.count += 1
    else counts.push({ role, count: 1 })
  }
  return counts.map(({ count }) => count).join(' + ')
}

function Handling({ page }: { readonly page: MouldPage }) {
  const { mould, counts, context } = page
  const leak = counts.lastLeak
  return (
    <>
      {leak ? (
        <section className="rule-top">
          <h2>Last leak check</h2>
          <dl className="figures">
            <div>
              <dt>
                {shortDate(leak.doneOn, context.today)}, {leak.heat}, pins {leak.pins}
                <div className="note">
                  {leak.bagging}, from {figure(leak.startMbar)} mbar; compare only with the same bagging and
                  start
                </div>
              </dt>
              <dd>
                {figure(leakLossMbar(leak.startMbar, leak.endMbar), 1)} mbar in {figure(leak.minutes)} min
              </dd>
            </div>
          </dl>
        </section>
      ) : null}
      <Demoulding notes={mould.demoulding} doNots={mould.doNots} />
    </>
  )
}

function Patches({ page, lead }: { readonly page: MouldPage; readonly lead: boolean }) {
  if (page.patches.length === 0) return null
  return (
    <section style={{ marginTop: 28 }}>
      <h2>Patches</h2>
      <div className="table-room">
        <table className="lines">
          <thead>
            <tr>
              <th scope="col">Patch</th>
              <th scope="col">What</th>
              <th scope="col">Where</th>
              <th scope="col">State</th>
              <th scope="col" className="n">
                Scarf
              </th>
              <th scope="col" className="n">
                Lines done
              </th>
            </tr>
          </thead>
          <tbody>
            {page.patches.map((patch) => (
              <tr key={patch.id}>
                <td>
                  <Link href={`/patches/${patch.id}` as Route}>Patch {patch.number}</Link>
                </td>
                <td>{patch.title}</td>
                <td>{patch.place}</td>
                <td>
                  {patch.state}
                  {patch.stops > 0 && patch.state === 'sketched' ? (
                    <span className="held">
                      {' '}
                      {patch.stops} {patch.stops === 1 ? 'stop' : 'stops'}
                    </span>
                  ) : null}
                </td>
                <td className="n">{figure(patch.lengthMm, 0)} mm</td>
                <td className="n">
                  {patch.ticked} of {patch.lines}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {lead ? null : <p className="note">A lead plans patches.</p>}
    </section>
  )
}
