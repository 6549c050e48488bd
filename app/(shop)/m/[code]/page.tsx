import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shopTime, shortDate } from '#lib/core/dates'
import { mouldLost } from '#lib/core/lineage/index'
import { kindNames, leakLossMbar } from '#lib/core/log/index'
import { figure } from '#lib/core/units'
import { type MouldPage, readMouldPage } from '#lib/services/moulds'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { CantBeMadeAgain } from '../../../ui/cant-be-made-again'
import { Demoulding } from '../../../ui/demoulding'
import { DryingTimer } from '../../../ui/drying-timer'
import { Link } from '../../../ui/link'
import { OpenMatters } from '../../../ui/log/open-matters'
import { Wrote } from '../../../ui/log/wrote'
import { Matters } from '../../../ui/matters'
import { sinceWords } from '../../../ui/release'
import { Stamp } from '../../../ui/stamp'
import './phone.css'

export async function generateMetadata({ params }: PageProps<'/m/[code]'>): Promise<Metadata> {
  return { title: decodeURIComponent((await params).code) }
}

/** At the mould: what a hand needs before it touches it, and the acts as large targets. */
export default async function PhonePage({ params, searchParams }: PageProps<'/m/[code]'>) {
  const code = decodeURIComponent((await params).code)
  const actor = await requireActor(`/m/${encodeURIComponent(code)}`)
  const page = await found(readMouldPage(actor, { code }))
  if (!page) notFound()
  const { mould, standing, matters, context } = page
  const { wrote } = await searchParams
  const mayLog = actor.role !== 'viewer'
  return (
    <div className="phone">
      <p className="mono soft">
        <Link href={`/moulds/${encodeURIComponent(mould.code)}` as Route}>{mould.code}</Link>
      </p>
      <h1>{mould.name}</h1>
      <p className="phone-state">
        <Stamp state={standing.state} />
        <span className="soft">{standing.reason}</span>
      </p>
      <Wrote actor={actor} id={wrote} />
      <CantBeMadeAgain of={mouldLost(mould, mould.pattern)} />
      <Drying page={page} />
      {mayLog ? (
        <nav className="big" aria-label="Write down">
          {acts(page).map(({ kind, name, fact }, index) => (
            <Link
              key={kind}
              className={index === 0 ? 'btn primary' : 'btn'}
              href={`/moulds/${encodeURIComponent(mould.code)}/log/${kind}?from=m` as Route}
            >
              <span>{name}</span>
              <small>{fact}</small>
            </Link>
          ))}
          <details className="more">
            <summary className="btn">More…</summary>
            {others.map((kind) => (
              <Link
                key={kind}
                className="btn"
                href={`/moulds/${encodeURIComponent(mould.code)}/log/${kind}?from=m` as Route}
              >
                {kindNames[kind]}
              </Link>
            ))}
            <Link className="btn" href={`/moulds/${encodeURIComponent(mould.code)}/log?from=m` as Route}>
              Everything that can be written down
            </Link>
          </details>
        </nav>
      ) : null}
      <section className="rule-top">
        <h2>Open before lay-up</h2>
        <Matters code={mould.code} matters={matters} mayLog={mayLog} />
      </section>
      {page.counts.openMatters.length > 0 ? (
        <section className="rule-top">
          <h2>Open matters</h2>
          <OpenMatters
            matters={page.counts.openMatters}
            base={`/moulds/${encodeURIComponent(mould.code)}`}
            today={context.today}
            mayLog={mayLog}
            from="m"
          />
        </section>
      ) : null}
      {page.patches
        .filter((patch) => patch.state === 'on the bench')
        .map((patch) => (
          <p key={patch.id}>
            <Link className="btn" href={`/patches/${patch.id}` as Route}>
              Patch {patch.number} on the bench: {patch.ticked} of {patch.lines} lines
            </Link>
          </p>
        ))}
      <Demoulding notes={mould.demoulding} doNots={mould.doNots} />
      <p className="note">
        {context.shop.name}, {shortDate(context.today, context.today)}
      </p>
    </div>
  )
}

interface Act {
  readonly kind: string
  readonly name: string
  readonly fact: string
}

/** The acts at the mould, the likely one first, each with the fact that one wants to see before it. */
function acts({ counts, matters, context }: MouldPage): readonly Act[] {
  const open = matters.filter((matter) => matter.severity !== 'note').length
  const face = counts.release.find((target) => target.target === 'face')
  const leak = counts.lastLeak
  const clear: Act = {
    kind: 'cleared',
    name: 'Clear to lay up',
    fact: open === 0 ? 'nothing open' : `${open} open`,
  }
  const pull: Act = {
    kind: 'pull',
    name: 'Pull',
    fact: counts.clearedOn ? `cleared ${shortDate(counts.clearedOn, context.today)}` : 'not cleared',
  }
  return [
    ...(counts.clearedOn ? [pull, clear] : [clear, pull]),
    { kind: 'coat', name: 'Coats', fact: face ? `${sinceWords(face)} pulls` : '' },
    {
      kind: 'leak-check',
      name: 'Leak check',
      fact: leak
        ? `${figure(leakLossMbar(leak.startMbar, leak.endMbar), 1)} mbar, ${shortDate(leak.doneOn, context.today)}`
        : 'none yet',
    },
    {
      kind: 'damage',
      name: 'Damage',
      fact: counts.openDamage.length > 0 ? `${counts.openDamage.length} open` : '',
    },
  ]
}

/** What is written often enough to stand here; the rest is a page further. */
const others = [
  'tape-test',
  'clean',
  'strip',
  'seal',
  'inspection',
  'repair',
  'dowel-changed',
  'pins',
  'moved',
  'state',
  'matter',
  'note',
] as const

function Drying({ page }: { readonly page: MouldPage }) {
  const { counts, context } = page
  const coatAt = counts.release
    .map((target) => target.coatAt)
    .filter((at): at is string => at !== null)
    .sort()
    .at(-1)
  const drying = page.matters.some((matter) => matter.code === 'coat-drying')
  if (!coatAt || !drying) return null
  return (
    <DryingTimer
      coatAt={coatAt}
      dryMin={context.shop.rules.upkeep.coatDryMin}
      coatAtWords={shopTime(coatAt, context.shop.timeZone)}
    />
  )
}
