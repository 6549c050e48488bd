import type { Metadata, Route } from 'next'
import { shortDate } from '#lib/core/dates'
import { entryWords } from '#lib/core/log/index'
import { latestEntries, type NamedEntry } from '#lib/services/log'
import { listMatters } from '#lib/services/open-matters'
import { listPatches } from '#lib/services/patches'
import { benchMoulds, type RackRow } from '#lib/services/rack'
import { readStockMatters } from '#lib/services/stores-lots'
import { requireActor } from '#lib/web/session'
import { Link } from '../ui/link'
import { OpenMatters } from '../ui/log/open-matters'
import { settleHref } from '../ui/matters'
import { oneLine, shortened } from '../ui/one-line'
import { StockLines } from '../ui/stock-lines'

export const metadata: Metadata = { title: 'Bench' }

/** How many lines a block holds. */
const mattersShown = 8
const latestShown = 12
const patchesShown = 30

/** Letters of a note that stand in a line. */
const noteShown = 120

const weight = { stop: 'held', look: 'due', note: 'soft' } as const

export default async function BenchPage() {
  const actor = await requireActor('/')
  const [moulds, patches, latest, matters, stock] = await Promise.all([
    benchMoulds(actor, {}),
    listPatches(actor, { mouldId: null, states: ['on the bench', 'signed', 'sketched'], size: patchesShown }),
    latestEntries(actor, { limit: 24 }),
    listMatters(actor, { size: mattersShown }),
    readStockMatters(actor, {}),
  ])
  const { partIn, partInAll, open, openInAll, total, context } = moulds
  const mayLog = actor.role !== 'viewer'
  const onBench = patches.rows.filter((patch) => patch.state === 'on the bench')
  const toSign = patches.rows.filter((patch) => patch.state === 'sketched')
  const toStart = patches.rows.filter((patch) => patch.state === 'signed')
  return (
    <>
      <div className="crumb-row">
        <div style={{ marginRight: 'auto' }}>
          <h1>Bench</h1>
          <p className="note">
            {context.shop.name}, {shortDate(context.today, context.today)}
            {context.season ? `, season ${context.season.name}` : ''}
          </p>
        </div>
      </div>
      {context.shop.isDemo ? (
        <p className="notice" style={{ marginBottom: 20 }}>
          This is the demo shop: a workshop that does not exist, with three invented seasons. Everything works
          on it as on your own.
          {actor.role === 'lead' ? (
            <>
              {' '}
              <Link href={'/people/leave-demo' as Route}>Leave it and start your own</Link>
            </>
          ) : null}
        </p>
      ) : null}
      {total === 0 ? (
        <div className="empty">
          <p>
            The book is empty. What is to be done now will stand here: parts to pull, moulds to coat, patches
            on the bench.
          </p>
          {actor.role === 'lead' ? (
            <p className="acts">
              <Link className="btn primary" href={'/moulds/new' as Route}>
                Add the first mould
              </Link>
              <Link className="btn" href={'/stores' as Route}>
                Materials and stacks
              </Link>
              <Link className="btn" href={'/people' as Route}>
                Add people
              </Link>
            </p>
          ) : (
            <p>A lead adds moulds.</p>
          )}
        </div>
      ) : (
        <div className="columns">
          <div className="stack-gap" style={{ alignContent: 'start' }}>
            <section className="rule-top">
              <h2>Part in the mould</h2>
              {partIn.length === 0 ? <p className="note">No mould has a part in it.</p> : null}
              <Lines>
                {partIn.map((row) => (
                  <Line
                    key={row.mould.id}
                    row={row}
                    text={`cleared ${row.counts.clearedOn ? shortDate(row.counts.clearedOn, context.today) : ''}`}
                    word="log the pull"
                    href={mayLog ? (`/moulds/${encodeURIComponent(row.mould.code)}/log/pull` as Route) : null}
                    tone="due"
                  />
                ))}
              </Lines>
              {partInAll > partIn.length ? (
                <p className="note">
                  <Link href={'/moulds?state=part+in+it' as Route}>
                    and {partInAll - partIn.length} more on the rack
                  </Link>
                </p>
              ) : null}
            </section>
            <section className="rule-top">
              <h2>To settle before a lay-up</h2>
              {open.length === 0 ? <p className="note">Nothing is open on any mould in use.</p> : null}
              <Lines>
                {open.map((row) => {
                  const first = row.matters[0]
                  return first ? (
                    <Line
                      key={row.mould.id}
                      row={row}
                      text={first.text}
                      word={first.word}
                      href={mayLog ? settleHref(row.mould.code, first) : null}
                      tone={weight[first.severity]}
                      more={row.matters.length - 1}
                    />
                  ) : null
                })}
              </Lines>
              {openInAll > open.length ? (
                <p className="note">
                  <Link href={'/moulds?sort=next' as Route}>
                    and {openInAll - open.length} more on the rack
                  </Link>
                </p>
              ) : null}
            </section>
            <section className="rule-top">
              <h2>Patches</h2>
              {onBench.length + toSign.length + toStart.length === 0 ? (
                <p className="note">No patch is planned or on the bench.</p>
              ) : null}
              <dl className="figures">
                {[...onBench, ...toStart, ...toSign].map((patch) => (
                  <div key={patch.id}>
                    <dt>
                      <Link href={`/patches/${patch.id}` as Route}>
                        {patch.mouldCode} Patch {patch.number}
                      </Link>
                      <div className="note">
                        {patch.title}, {patch.place}
                      </div>
                    </dt>
                    <dd className={patch.state === 'sketched' && patch.stops > 0 ? 'held' : 'due'}>
                      {patch.state === 'on the bench'
                        ? `${patch.ticked} of ${patch.lines} lines`
                        : patch.state === 'signed'
                          ? 'to the bench'
                          : patch.stops > 0
                            ? `${patch.stops} ${patch.stops === 1 ? 'stop' : 'stops'}`
                            : 'to be signed'}
                    </dd>
                  </div>
                ))}
              </dl>
              {patches.matching > patches.rows.length ? (
                <p className="note">
                  <Link href={'/patches' as Route}>
                    and {patches.matching - patches.rows.length} more patches
                  </Link>
                </p>
              ) : null}
            </section>
          </div>
          <div className="stack-gap" style={{ alignContent: 'start' }}>
            <section className="rule-top">
              <h2>Open matters</h2>
              {matters.total === 0 ? (
                <p className="note">
                  Nothing is open. What somebody has to see to is opened on the page of its mould or pattern.
                </p>
              ) : null}
              <OpenMatters matters={matters.matters} base={null} today={context.today} mayLog={mayLog} />
              {matters.total > 0 ? (
                <p className="note">
                  <Link href={'/matters' as Route}>
                    {matters.total > matters.matters.length
                      ? `and ${matters.total - matters.matters.length} more open matters`
                      : 'All on one page'}
                  </Link>
                </p>
              ) : null}
            </section>
            <section className="rule-top">
              <h2>Low or late in the stores</h2>
              <StockLines matters={stock.matters} />
            </section>
          </div>
          <div className="stack-gap" style={{ alignContent: 'start' }}>
            <section className="rule-top">
              <h2>Last written</h2>
              {latest.length === 0 ? <p className="note">Nothing written yet.</p> : null}
              <dl className="figures">
                {asOne(latest).map(({ entry, codes }) => {
                  const { what, detail } = entryWords(entry)
                  return (
                    <div key={entry.id}>
                      <dt>
                        <Link
                          href={
                            `/${entry.of === 'pattern' ? 'patterns' : 'moulds'}/${encodeURIComponent(entry.code)}` as Route
                          }
                        >
                          {codes.join(', ')}
                        </Link>{' '}
                        {what}
                        <div className="note">
                          {oneLine([detail, shortened(entry.note, noteShown), entry.byName])}
                        </div>
                      </dt>
                      <dd className="soft">{shortDate(entry.doneOn, context.today)}</dd>
                    </div>
                  )
                })}
              </dl>
            </section>
          </div>
        </div>
      )}
    </>
  )
}

/** Entries that were written as one stand in one line, with the codes of their pieces. */
function asOne(latest: readonly NamedEntry[]): { entry: NamedEntry; codes: string[] }[] {
  const lines: { entry: NamedEntry; codes: string[] }[] = []
  for (const entry of latest) {
    const same = entry.groupId ? lines.find((line) => line.entry.groupId === entry.groupId) : undefined
    if (same) same.codes.unshift(entry.code)
    else lines.push({ entry, codes: [entry.code] })
  }
  return lines.slice(0, latestShown)
}

function Lines({ children }: { readonly children: React.ReactNode }) {
  return <dl className="figures">{children}</dl>
}

function Line({
  row,
  text,
  word,
  href,
  tone,
  more = 0,
}: {
  readonly row: RackRow
  readonly text: string
  readonly word: string
  readonly href: Route | null
  readonly tone: string
  readonly more?: number
}) {
  return (
    <div>
      <dt>
        <Link href={`/moulds/${encodeURIComponent(row.mould.code)}` as Route}>{row.mould.code}</Link>{' '}
        {row.mould.name}
        <div className="note">
          {text}
          {more > 0 ? `; and ${more} more` : ''}
        </div>
      </dt>
      <dd className={tone}>{href ? <Link href={href}>{word}</Link> : word}</dd>
    </div>
  )
}
