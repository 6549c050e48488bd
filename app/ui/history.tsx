import type { Route } from 'next'
import { monthWords, shopTime, shortDate } from '#lib/core/dates'
import { entryWords, type LogEntry } from '#lib/core/log/index'
import { figure } from '#lib/core/units'
import { entryHref } from './entry-href'
import { Link } from './link'
import { AddPhoto } from './pictures/add-photo'
import { EntryPictures } from './pictures/entry-pictures'

/** Entries that only a plan writes, and that are put right by a plan. */
const byPlan = new Set(['patch-laid', 'proved', 'correction'])

/** The day of an entry, as well as it is known, with its time. */
export function whenWords(entry: LogEntry, today: string, timeZone: string): string {
  if (entry.precision === 'month') return monthWords(entry.doneOn.slice(0, 7))
  if (entry.precision === 'year') return entry.doneOn.slice(0, 4)
  if (entry.precision === 'before') return `before ${shortDate(entry.doneOn, today)}`
  const day = shortDate(entry.doneOn, today)
  return entry.doneAt ? `${day}, ${shopTime(entry.doneAt, timeZone)}` : day
}

/** The history of a mould or a pattern, newest first. What was put right stays readable, struck through. */
export function History({
  base,
  entries,
  initials,
  today,
  timeZone,
  mayLog,
  marked = null,
  photosOf,
}: {
  /** "/moulds/LH-P" */
  readonly base: string
  /** Whose photos stand beside its entries. */
  readonly photosOf: { readonly on: 'mould' | 'pattern'; readonly onId: string }
  readonly entries: readonly LogEntry[]
  readonly initials: ReadonlyMap<string, string>
  readonly today: string
  readonly timeZone: string
  readonly mayLog: boolean
  /** The entry that the address asks for. */
  readonly marked?: string | null
}) {
  const here = new Set(entries.map((entry) => entry.id))
  return (
    <div className="table-room">
      <table className="lines history-lines">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">What</th>
            <th scope="col">
              <span className="quiet">Detail</span>
            </th>
            <th scope="col">Who</th>
            {mayLog ? (
              <th scope="col" className="no-print">
                <span className="quiet">Add a photo, put right</span>
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => {
            const { what, detail } = entryWords(entry)
            const struck = entry.correctedById !== null
            const line = struck ? <s>{what}</s> : <b>{what}</b>
            const rest = [detail, entry.note, takenWords(entry)].filter(Boolean).join('. ')
            return (
              <tr
                key={entry.id}
                id={`entry-${entry.id}`}
                className={
                  [struck ? 'soft' : '', entry.id === marked ? 'marked' : ''].filter(Boolean).join(' ') ||
                  undefined
                }
                aria-current={entry.id === marked ? 'true' : undefined}
              >
                <td className="soft when">{whenWords(entry, today, timeZone)}</td>
                <td className="what">{line}</td>
                <td className="detail">
                  {struck ? <s>{rest}</s> : rest}
                  {entry.groupId ? <span className="note"> with the whole split mould</span> : null}
                  {struck ? (
                    <>
                      {' '}
                      <EntryLink id={entry.correctedById} base={base} here={here} words="put right" />
                    </>
                  ) : null}
                  {entry.correctsId ? (
                    <>
                      {' '}
                      <EntryLink
                        id={entry.correctsId}
                        base={base}
                        here={here}
                        words="puts an earlier entry right"
                      />
                    </>
                  ) : null}
                  <EntryPictures {...photosOf} entryId={entry.id} />
                </td>
                <td className="who" title={entry.byName}>
                  {initials.get(entry.byName) ?? entry.byName}
                </td>
                {mayLog ? (
                  <td className="n no-print">
                    <AddPhoto
                      subject={photosOf}
                      entryId={entry.id}
                      className=""
                      label={`Add a photo: ${what}, ${whenWords(entry, today, timeZone)}`}
                    >
                      add a photo
                    </AddPhoto>
                    {struck || byPlan.has(entry.kind) ? null : ' · '}
                    {struck || byPlan.has(entry.kind) ? null : (
                      <Link
                        href={`${base}/log/${entry.kind}?corrects=${entry.id}` as Route}
                        aria-label={`Put right: ${what}, ${whenWords(entry, today, timeZone)}`}
                      >
                        put right
                      </Link>
                    )}
                  </td>
                ) : null}
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

/** A link to an entry: on this page, or on the page of the history that holds it. */
function EntryLink({
  id,
  base,
  here,
  words,
}: {
  readonly id: string | null
  readonly base: string
  readonly here: ReadonlySet<string>
  readonly words: string
}) {
  if (id === null) return null
  return here.has(id) ? <a href={`#entry-${id}`}>{words}</a> : <Link href={entryHref(base, id)}>{words}</Link>
}

/** "0.2 l of Slipwell 40, lot 7" */
function takenWords({ uses }: LogEntry): string {
  return uses.map((use) => `${figure(use.amount, 3)} ${use.unit} of ${use.name}, lot ${use.lot}`).join('; ')
}
