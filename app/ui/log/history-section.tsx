import type { Route } from 'next'
import { type LogKind, logKinds, patternKinds } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import { readHistory } from '#lib/services/log'
import { History } from '../history'
import { Link } from '../link'
import { HeadOut } from '../table-out'
import './log.css'

type Query = Readonly<Record<string, string | string[] | undefined>>

const filters: readonly { readonly name: string; readonly kinds: readonly LogKind[] }[] = [
  { name: 'pulls', kinds: ['pull', 'cleared', 'before-book'] },
  { name: 'release', kinds: ['strip', 'clean', 'seal', 'coat', 'tape-test', 'test-patch'] },
  { name: 'leaks', kinds: ['leak-check'] },
  { name: 'heat and pins', kinds: ['heat', 'pins'] },
  {
    name: 'damage and repair',
    kinds: ['damage', 'inspection', 'repair', 'patch-laid', 'proved', 'dowel-changed', 're-machined'],
  },
  { name: 'measured', kinds: ['measured'] },
  { name: 'place and state', kinds: ['moved', 'state'] },
  { name: 'open matters', kinds: ['matter', 'settled'] },
  { name: 'notes', kinds: ['note', 'correction'] },
]

/** How much of a history a page opens with; asked for more it shows a whole page of the log. */
const firstLines = 40

/**
 * The history of a mould or a pattern, newest first: by kind, by words, a page at a time. `query` is the page's own
 * query: kind, words, older, all, and entry, which is shown on the page that holds it.
 */
export async function HistorySection({
  actor,
  subject,
  base,
  query,
  initials,
  today,
  timeZone,
  mayLog,
}: {
  readonly actor: Actor
  readonly subject: { readonly mouldId: string; readonly code: string } | { readonly patternId: string }
  /** "/moulds/LH-P" */
  readonly base: string
  readonly query: Query
  readonly initials: ReadonlyMap<string, string>
  readonly today: string
  readonly timeZone: string
  readonly mayLog: boolean
}) {
  const kinds = kindsOf(query.kind)
  const find = typeof query.words === 'string' ? query.words.trim().slice(0, 200) : ''
  const idOf = (value: Query[string]) =>
    typeof value === 'string' && /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(value) ? value : null
  const older = idOf(query.older)
  const marked = idOf(query.entry)
  const all = query.all === 'yes' || older !== null
  const history = await readHistory(actor, {
    ...subject,
    kinds,
    find,
    ...(older ? { olderThan: older } : marked ? { holding: marked } : {}),
    ...(all ? {} : { limit: firstLines }),
  })
  const later = history.above !== 0
  const whole = all || later
  const hrefOf = (changes: Readonly<Record<string, string>>) => {
    const text = new URLSearchParams({
      ...(kinds.length > 0 ? { kind: kinds.join(',') } : {}),
      ...(find ? { words: find } : {}),
      ...changes,
    }).toString()
    return `${base}${text ? `?${text}` : ''}#history` as Route
  }
  const offered = filters.filter(
    (filter) =>
      'mouldId' in subject || filter.kinds.some((kind) => patternKinds.some((known) => known === kind)),
  )
  return (
    <section style={{ marginTop: 28 }} id="history">
      {'mouldId' in subject ? (
        <HeadOut name="log" of={{ mould: subject.code }} label="The whole history">
          <h2>History</h2>
        </HeadOut>
      ) : (
        <h2>History</h2>
      )}
      <div className="history-tools no-print">
        <p className="acts note">
          <span>Show</span>
          <Filter
            href={`${base}${find ? `?words=${encodeURIComponent(find)}` : ''}#history` as Route}
            on={kinds.length === 0}
            name="all"
          />
          {offered.map((filter) => (
            <Filter
              key={filter.name}
              href={
                `${base}?${new URLSearchParams({ kind: filter.kinds.join(','), ...(find ? { words: find } : {}) })}#history` as Route
              }
              on={kinds.length > 0 && filter.kinds.includes(kinds[0] ?? 'note')}
              name={filter.name}
            />
          ))}
        </p>
        <form action={`${base}#history`}>
          {kinds.length > 0 ? <input type="hidden" name="kind" value={kinds.join(',')} /> : null}
          <label className="quiet" htmlFor="history-words">
            Words in the history
          </label>
          <input
            id="history-words"
            type="search"
            name="words"
            defaultValue={find}
            placeholder="Words, lot, name"
          />
          <button type="submit" className="btn">
            Find
          </button>
        </form>
      </div>
      {history.entries.length === 0 ? (
        <p className="empty">
          {history.total === 0
            ? 'Nothing written yet. What happens to it stands here for good.'
            : older
              ? 'Nothing older is written.'
              : 'Nothing of this is written.'}
        </p>
      ) : (
        <History
          base={base}
          entries={history.entries}
          initials={initials}
          today={today}
          timeZone={timeZone}
          mayLog={mayLog}
          marked={marked}
          photosOf={
            'mouldId' in subject
              ? { on: 'mould', onId: subject.mouldId }
              : { on: 'pattern', onId: subject.patternId }
          }
        />
      )}
      <p className="acts no-print" style={{ marginTop: 12 }}>
        {later ? (
          <Link className="btn" href={hrefOf({ all: 'yes' })}>
            Newest
          </Link>
        ) : null}
        {history.next === null ? null : whole ? (
          <Link className="btn" href={hrefOf({ older: history.next })}>
            Older
          </Link>
        ) : (
          <Link className="btn" href={hrefOf({ all: 'yes' })} scroll={false}>
            Show more of {history.fitting} entries
          </Link>
        )}
        {whole || find || kinds.length > 0 ? (
          <span className="note">
            {history.above
              ? `${history.above + 1} to ${history.above + history.entries.length}`
              : history.entries.length}{' '}
            of {history.fitting}
            {history.fitting < history.total ? `, ${history.total} in all` : ''}
          </span>
        ) : null}
      </p>
    </section>
  )
}

function kindsOf(value: string | string[] | undefined): LogKind[] {
  if (typeof value !== 'string') return []
  return value.split(',').filter((kind): kind is LogKind => logKinds.some((known) => known === kind))
}

function Filter({ href, on, name }: { readonly href: Route; readonly on: boolean; readonly name: string }) {
  return on ? (
    <b aria-current="true">{name}</b>
  ) : (
    <Link href={href} scroll={false}>
      {name}
    </Link>
  )
}
