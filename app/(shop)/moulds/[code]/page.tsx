import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { monthWords, shortDate } from '#lib/core/dates'
import { viewWords } from '#lib/core/drawing/index'
import { meanThicknessMm, stackUp } from '#lib/core/laminate/index'
import { mouldLost } from '#lib/core/lineage/index'
import { kindNames, leakLossMbar, type MouldState, pullsWords } from '#lib/core/log/index'
import { figure } from '#lib/core/units'
import { type MouldPage, readMouldPage } from '#lib/services/moulds'
import { stackPlies } from '#lib/services/stores'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { CantBeMadeAgain } from '../../../ui/cant-be-made-again'
import { Demoulding } from '../../../ui/demoulding'
import { facesAsked, MouldFaces } from '../../../ui/drawing/mould-faces'
import { Link } from '../../../ui/link'
import { HistorySection } from '../../../ui/log/history-section'
import { Clocks } from '../../../ui/log/log-asides'
import { LogMenu } from '../../../ui/log/log-menu'
import { OpenMatters } from '../../../ui/log/open-matters'
import { Wrote } from '../../../ui/log/wrote'
import { Matters } from '../../../ui/matters'
import { MouldParts } from '../../../ui/mould-parts'
import { addressOf } from '../../../ui/page-address'
import { PictureBlock } from '../../../ui/pictures/picture-block'
import { PieceOfSet } from '../../../ui/piece-of-set'
import { LargePullStrip } from '../../../ui/pull-strip'
import { Release } from '../../../ui/release'
import { Stamp } from '../../../ui/stamp'
import { HeadOut } from '../../../ui/table-out'
import './mould.css'

export async function generateMetadata({ params }: PageProps<'/moulds/[code]'>): Promise<Metadata> {
  return { title: decodeURIComponent((await params).code) }
}

/** In these a mould isn't laid up: what comes next is another state. */
const idle: readonly MouldState[] = ['retired', 'away', 'being built']
const mainWords = { state: 'Set the state', pull: 'Log the pull', cleared: 'Clear to lay up' } as const

/** Kinds that are offered as a button; all of them stand under More. */
const quick = ['coat', 'leak-check', 'damage'] as const

export default async function MouldPageView({ params, searchParams }: PageProps<'/moulds/[code]'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(addressOf(`/moulds/${encodeURIComponent(code)}`, await searchParams))
  const query = await searchParams
  const page = await found(readMouldPage(actor, { code }))
  if (!page) notFound()
  const { mould, context, matters, counts } = page
  const base = `/moulds/${encodeURIComponent(mould.code)}`
  const mayLog = actor.role !== 'viewer'
  const lead = actor.role === 'lead'
  const main = idle.includes(page.standing.state) ? 'state' : counts.clearedOn ? 'pull' : 'cleared'
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
                {mainWords[main]}
              </Link>
              {quick.map((kind) => (
                <Link key={kind} className="btn" href={`${base}/log/${kind}` as Route}>
                  {kindNames[kind]}
                </Link>
              ))}
              <details className="menu">
                <summary className="btn">More…</summary>
                <div className="menu-box">
                  {main === 'pull' ? null : <Link href={`${base}/log/pull` as Route}>Pull, not cleared</Link>}
                  <LogMenu of="mould" base={base} />
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

      <Wrote actor={actor} id={query.wrote} />
      <CantBeMadeAgain
        of={mouldLost(mould, mould.pattern)}
        act="Cut, strip or move it only with that in mind."
      />

      <div className="mould-top">
        <div className="sheet">
          <MouldFaces page={page} asked={facesAsked(query)} base={base} lead={lead} />
          <TitleStrip page={page} fromBack={facesAsked(query).fromBack} />
        </div>
        <aside className="stack-gap" aria-label="Before the next lay-up">
          <section className="rule-top">
            <h2>Before the next lay-up</h2>
            <Matters code={mould.code} matters={matters} mayLog={mayLog} />
          </section>
          <section className="rule-top">
            <HeadOut name="open-matters" of={{ mould: mould.code }} label={`Open matters of ${mould.code}`}>
              <h2>Open matters</h2>
            </HeadOut>
            {counts.openMatters.length === 0 ? (
              <p className="note">
                Nothing is open.{' '}
                {mayLog ? <Link href={`${base}/log/matter` as Route}>Open a matter</Link> : null}
              </p>
            ) : (
              <OpenMatters matters={counts.openMatters} base={base} today={context.today} mayLog={mayLog} />
            )}
          </section>
          <section className="rule-top">
            <HeadOut name="release" of={{ mould: mould.code }} label={`Release of ${mould.code}`}>
              <h2>Release</h2>
            </HeadOut>
            <Release targets={counts.release} today={context.today} />
          </section>
        </aside>
        <div className="columns mould-more">
          {mould.set ? <PieceOfSet actor={actor} setCode={mould.set.code} mouldId={mould.id} /> : null}
          <Clocks counts={counts} />
          <Handling page={page} />
        </div>
      </div>

      <section style={{ marginTop: 28 }}>
        <HeadOut name="pulls" of={{ mould: mould.code }} label={`Pulls of ${mould.code}`}>
          <h2 style={{ marginBottom: 8 }}>
            Pull strip{' '}
            <span className="note" style={{ fontWeight: 400 }}>
              each stroke is a pull; the taller, the harder it came out; triangles are coats
            </span>
          </h2>
        </HeadOut>
        <LargePullStrip id="strip" marks={page.strip} seasons={context.seasons} />
      </section>

      <Patches page={page} lead={lead} />
      <MouldParts actor={actor} mould={mould} today={context.today} />
      <PictureBlock
        actor={actor}
        subject={{ on: 'mould', onId: mould.id, code: mould.code }}
        today={context.today}
      />

      <HistorySection
        actor={actor}
        subject={{ mouldId: mould.id, code: mould.code }}
        base={base}
        query={query}
        initials={page.initials}
        today={context.today}
        timeZone={context.shop.timeZone}
        mayLog={mayLog}
      />
    </>
  )
}

/** The data of the mould stand in the strip at the foot of its drawing. */
function TitleStrip({ page, fromBack }: { readonly page: MouldPage; readonly fromBack: boolean }) {
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
          {mould.pattern ? (
            <>
              , off pattern{' '}
              <Link href={`/patterns/${encodeURIComponent(mould.pattern.code)}` as Route}>
                {mould.pattern.code}
              </Link>
            </>
          ) : null}
          {mould.madeWhen ? `, ${monthWords(mould.madeWhen)}` : ''}
        </small>
        <h1>{mould.name}</h1>
        {fromBack && areas.length > 0 ? <small>Drawn as {viewWords('back')}</small> : null}
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
        <small>Pulls</small>
        <b>{pullsWords(counts)}</b>
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
      <HeadOut name="patches" of={{ mould: page.mould.code }} label={`Patches of ${page.mould.code}`}>
        <h2>Patches</h2>
      </HeadOut>
      <div className="table-room">
        <table className="lines stacked">
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
                <td className="beside">{patch.title}</td>
                <td className="beside" data-label="Where">
                  {patch.place}
                </td>
                <td className="beside" data-label="State">
                  {patch.state}
                  {patch.stops > 0 && patch.state === 'sketched' ? (
                    <span className="held">
                      {' '}
                      {patch.stops} {patch.stops === 1 ? 'stop' : 'stops'}
                    </span>
                  ) : null}
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
      {lead ? null : <p className="note">A lead plans patches.</p>}
    </section>
  )
}
