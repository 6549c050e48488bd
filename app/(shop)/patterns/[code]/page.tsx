import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { monthWords, shortDate } from '#lib/core/dates'
import { mouldLost, patternLost } from '#lib/core/lineage/index'
import { kindNames } from '#lib/core/log/index'
import { openMatters } from '#lib/services/open-matters'
import { type PatternPage, readPatternPage } from '#lib/services/patterns'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { addressOf } from '../../../ui/page-address'
import '../../../ui/book-sheet.css'
import { CantBeMadeAgain, OnceOnly } from '../../../ui/cant-be-made-again'
import { FigureLine } from '../../../ui/figure-line'
import { Link } from '../../../ui/link'
import { HistorySection } from '../../../ui/log/history-section'
import { LogMenu } from '../../../ui/log/log-menu'
import { OpenMatters } from '../../../ui/log/open-matters'
import { Wrote } from '../../../ui/log/wrote'
import { massWords, sizeWords } from '../../../ui/outer-size'
import { PictureBlock } from '../../../ui/pictures/picture-block'
import { Stamp } from '../../../ui/stamp'
import '../../moulds/[code]/mould.css'

export async function generateMetadata({ params }: PageProps<'/patterns/[code]'>): Promise<Metadata> {
  return { title: `Pattern ${decodeURIComponent((await params).code)}` }
}

const quick = ['inspection', 're-machined', 'moved'] as const

export default async function PatternPageView({ params, searchParams }: PageProps<'/patterns/[code]'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(addressOf(`/patterns/${encodeURIComponent(code)}`, await searchParams))
  const page = await found(readPatternPage(actor, { code }))
  if (!page) notFound()
  const query = await searchParams
  const { pattern, context } = page
  const open = await openMatters(actor, { patternId: pattern.id })
  const base = `/patterns/${encodeURIComponent(pattern.code)}`
  const mayLog = actor.role !== 'viewer'
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={'/patterns' as Route}>Patterns</Link> / {pattern.code}
        </div>
        <div className="acts">
          {mayLog
            ? quick.map((kind) => (
                <Link key={kind} className="btn" href={`${base}/log/${kind}` as Route}>
                  {kindNames[kind]}
                </Link>
              ))
            : null}
          {mayLog ? (
            <details className="menu">
              <summary className="btn">More…</summary>
              <div className="menu-box">
                <LogMenu of="pattern" base={base} />
                {actor.role === 'lead' ? (
                  <Link href={`/moulds/new?pattern=${pattern.id}` as Route}>Add a mould off it</Link>
                ) : null}
              </div>
            </details>
          ) : null}
          {actor.role === 'lead' ? (
            <Link className="btn primary" href={`${base}/edit` as Route}>
              Change the pattern
            </Link>
          ) : null}
        </div>
      </div>

      <Wrote actor={actor} id={query.wrote} />

      <div className="sheet">
        <div className="sheet-body">
          <CantBeMadeAgain of={patternLost(pattern)} />
          <Lineage page={page} lead={actor.role === 'lead'} />
        </div>
        <TitleStrip page={page} />
      </div>

      <div className="two-sides">
        <section className="rule-top">
          <h2>Condition</h2>
          <p className="prose">
            {pattern.condition || <span className="soft">Nobody has written how it was left.</span>}
          </p>
          {pattern.note ? (
            <>
              <h2 style={{ marginTop: 16 }}>Note</h2>
              <p className="prose">{pattern.note}</p>
            </>
          ) : null}
        </section>
        <section className="rule-top">
          <h2>Figures</h2>
          <dl className="figures">
            <FigureLine name="Mass" value={massWords(pattern.massKg)} />
            <FigureLine name="Outer size" value={sizeWords(pattern)} />
            <FigureLine name="Owner" value={pattern.owner || null} />
          </dl>
        </section>
      </div>

      <PictureBlock
        actor={actor}
        today={context.today}
        subject={{ on: 'pattern', onId: pattern.id, code: pattern.code }}
      />

      {open.length > 0 ? (
        <section className="rule-top" style={{ marginTop: 28 }}>
          <h2>Open matters</h2>
          <OpenMatters matters={open} base={base} today={context.today} mayLog={mayLog} />
        </section>
      ) : null}

      <HistorySection
        actor={actor}
        subject={{ patternId: pattern.id }}
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

/** Which mould came off it, when, and in which state it was then. */
function Lineage({ page: { pattern }, lead }: { readonly page: PatternPage; readonly lead: boolean }) {
  return (
    <section>
      <h2>Moulds off it</h2>
      {pattern.moulds.length === 0 ? (
        <p className="note">
          None in the book. A mould names its pattern in its own record
          {lead ? (
            <>
              : <Link href={`/moulds/new?pattern=${pattern.id}` as Route}>add a mould off it</Link>
            </>
          ) : null}
          .
        </p>
      ) : (
        <div className="table-room">
          <table className="lines stacked">
            <thead>
              <tr>
                <th scope="col">Mould</th>
                <th scope="col">Made</th>
                <th scope="col">State of the pattern then</th>
              </tr>
            </thead>
            <tbody>
              {pattern.moulds.map((mould) => (
                <tr key={mould.id}>
                  <td>
                    <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>
                      <b>{mould.code}</b>
                    </Link>{' '}
                    {mould.name} <OnceOnly of={mouldLost(mould, pattern)} />
                  </td>
                  <td data-label="Made">
                    {monthWords(mould.madeWhen) || <span className="soft">not known</span>}
                  </td>
                  <td data-label="Pattern then" className="words">
                    {mould.patternState || <span className="soft">not known</span>}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}

function TitleStrip({ page: { pattern, context } }: { readonly page: PatternPage }) {
  const { movedTo } = pattern
  return (
    <div className="strip">
      <div>
        <small>{pattern.code}, pattern</small>
        <h1>{pattern.name}</h1>
      </div>
      <div style={{ flexGrow: 2 }}>
        <small>Made of</small>
        <b>{pattern.madeOf || 'not known'}</b>
      </div>
      <div>
        <small>Moulds off it</small>
        <b>{pattern.moulds.length}</b>
      </div>
      <div>
        <small>Place</small>
        <b>{movedTo?.place || pattern.place || 'not known'}</b>
        <small>{movedTo ? `moved ${shortDate(movedTo.doneOn, context.today)}` : 'no move written'}</small>
        <small className="paper-only">printed {shortDate(context.today, context.today)}</small>
      </div>
      <div className="stamp-field">
        <Stamp state={pattern.available ? 'can be used' : 'gone or unfit'} />
      </div>
    </div>
  )
}
