import type { Metadata, Route } from 'next'
import { redirect } from 'next/navigation'
import { shortDate } from '#lib/core/dates'
import {
  type Hit,
  type HitKind,
  hitKindNames,
  hitKinds,
  hitKindWords,
  longestAsked,
} from '#lib/core/search/index'
import { findInBook, type HitGroup } from '#lib/services/search'
import { requireActor } from '#lib/web/session'
import { hitHref } from '../../ui/hit-href'
import { Link } from '../../ui/link'
import { weightOf } from '../../ui/stamp'
import './find.css'

export const metadata: Metadata = { title: 'Find' }

/** How many of one kind are listed when only that kind is wanted. */
const manyOfOne = 100

export default async function FindPage({ searchParams }: PageProps<'/find'>) {
  const query = await searchParams
  const one = (value: string | string[] | undefined) => (typeof value === 'string' ? value : '')
  const q = one(query.q).slice(0, longestAsked).trim()
  const only = hitKinds.find((kind) => kind === one(query.in)) ?? null
  const actor = await requireActor(q === '' ? '/find' : `/find?q=${encodeURIComponent(q)}`)
  const lead = actor.role === 'lead'
  const found = await findInBook(actor, { q, ...(only ? { in: only, limit: manyOfOne } : {}) })
  // A code that was typed whole is gone to at once; "all" looks for it all the same.
  if (found.exact && !only && one(query.all) === '') redirect(hitHref(found.exact, lead))
  return (
    <>
      <h1>Find</h1>
      <form action="/find" className="find-form">
        <label className="quiet" htmlFor="find-words">
          What to find
        </label>
        <input
          id="find-words"
          type="search"
          name="q"
          defaultValue={q}
          maxLength={longestAsked}
          autoComplete="off"
        />
        {only ? null : <input type="hidden" name="all" value="1" />}
        <button type="submit" className="btn">
          Find
        </button>
      </form>
      {found.asked ? (
        <Told q={q} meant={found.meant} groups={found.groups} only={only} />
      ) : (
        <HowTo typed={q !== ''} />
      )}
      <div className="stack-gap">
        {found.groups.map((group) => (
          <Group
            key={group.kind}
            group={group}
            q={found.meant ?? q}
            only={only}
            lead={lead}
            today={found.today}
          />
        ))}
      </div>
    </>
  )
}

function Told({
  q,
  meant,
  groups,
  only,
}: {
  readonly q: string
  readonly meant: string | null
  readonly groups: readonly HitGroup[]
  readonly only: HitKind | null
}) {
  const within = only ? ` in ${hitKindNames[only].toLowerCase()}` : ''
  if (groups.length === 0) {
    return (
      <div className="empty">
        <p role="status">
          Nothing in the book{within} has “{q}”{only ? '' : ', nor anything that reads like it'}.
        </p>
        <p>
          {q.trim().includes(' ')
            ? 'All words have to be found in the same thing: try one of them alone.'
            : 'Try a part of it, or a word that stands beside it in the book.'}{' '}
          {only ? (
            <Link href={`/find?q=${encodeURIComponent(q)}&all=1` as Route}>Look everywhere</Link>
          ) : null}
        </p>
      </div>
    )
  }
  if (meant !== null) {
    return (
      <p className="notice look find-told" role="status">
        Nothing has “{q}”. Did you mean{' '}
        <Link href={`/find?q=${encodeURIComponent(meant)}` as Route}>
          <b>{meant}</b>
        </Link>
        ? That is what stands below.
      </p>
    )
  }
  return (
    <p className="note find-told" role="status">
      What has “{q}”{within}, the best first.{' '}
      {only ? <Link href={`/find?q=${encodeURIComponent(q)}&all=1` as Route}>Look everywhere</Link> : null}
    </p>
  )
}

function HowTo({ typed }: { readonly typed: boolean }) {
  return (
    <div className="empty">
      {typed ? <p role="status">There is no letter and no figure in it to look for.</p> : null}
      <p>
        Codes, names, notes, places, serials, lots, people and the whole log are looked through. A code alone
        leads straight to its page.
      </p>
      <p>
        <b>floor B5</b> finds what lies in that cell of the location grid, <b>patch 7</b> all patches of that
        number, <b>D03</b> the locating points of that tag; with a mould’s code before it, only there. The key{' '}
        <kbd>/</kbd> leads here from any page.
      </p>
    </div>
  )
}

function Group({
  group: { kind, hits, more },
  q,
  only,
  lead,
  today,
}: {
  readonly group: HitGroup
  readonly q: string
  readonly only: HitKind | null
  readonly lead: boolean
  readonly today: string
}) {
  const heading = `find-${kind}`
  return (
    <section className="rule-top" aria-labelledby={heading}>
      <div className="crumb-row find-head">
        <h2 id={heading}>{hitKindNames[kind]}</h2>
        {more && !only ? (
          <Link href={`/find?q=${encodeURIComponent(q)}&in=${kind}` as Route}>
            More<span className="quiet"> {hitKindNames[kind].toLowerCase()}</span>
          </Link>
        ) : null}
        {kind === 'mould' ? (
          <Link href={`/moulds?find=${encodeURIComponent(q)}` as Route}>In the rack</Link>
        ) : null}
      </div>
      <ul className="hits">
        {hits.map((hit) => (
          <Line key={hit.id} hit={hit} lead={lead} today={today} />
        ))}
      </ul>
      {more && only ? (
        <p className="note">There are more than these {hits.length}. Another word makes them fewer.</p>
      ) : null}
    </section>
  )
}

function Line({ hit, lead, today }: { readonly hit: Hit; readonly lead: boolean; readonly today: string }) {
  const title = hit.of ? `${hit.of.code} ${hit.title}` : hit.title
  return (
    <li>
      <div className="hit-what">
        <Link href={hitHref(hit, lead)}>
          <b>{title}</b>
          <span className="quiet">, {hitKindWords[hit.kind]}</span>
        </Link>{' '}
        {hit.name}
      </div>
      <div className="hit-state">
        {hit.kind === 'mould' && hit.state !== '' ? (
          <b style={{ color: `var(--${weightOf(hit.state as Parameters<typeof weightOf>[0])})` }}>
            {hit.state}
          </b>
        ) : (
          <span className="soft">{hit.state}</span>
        )}
      </div>
      <div className="hit-place">{hit.place}</div>
      <div className="hit-detail note">
        {[hit.on ? shortDate(hit.on, today) : '', hit.detail].filter(Boolean).join(', ')}
        {hit.kind === 'person' && lead ? (
          <>
            {' · '}
            <Link href={`/find?q=${encodeURIComponent(hit.title)}&in=entry` as Route}>what they wrote</Link>
          </>
        ) : null}
      </div>
    </li>
  )
}
