import type { Route } from 'next'
import { shopTime, shortDate } from '#lib/core/dates'
import { entryWords, type LogEntry } from '#lib/core/log/index'
import { figure } from '#lib/core/units'
import { Link } from './link'
import { AddPhoto } from './pictures/add-photo'
import { EntryPictures } from './pictures/entry-pictures'

/** Entries that only a plan writes, and that are put right by a plan. */
const byPlan = new Set(['patch-laid', 'proved', 'correction'])

/** The day of an entry, as well as it is known, with its time. */
export function whenWords(entry: LogEntry, today: string, timeZone: string): string {
  if (entry.precision === 'month') return entry.doneOn.slice(0, 7)
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
}) {
  const here = new Set(entries.map((entry) => entry.id))
  return (
    <div className="table-room">
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">What</th>
            <th scope="col">
              <span className="quiet">Detail</span>
            </th>
            <th scope="col">Who</th>
            {mayLog ? (
              <th scope="col">
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
              <tr key={entry.id} id={`entry-${entry.id}`} className={struck ? 'soft' : undefined}>
                <td className="soft" style={{ whiteSpace: 'nowrap' }}>
                  {whenWords(entry, today, timeZone)}
                </td>
                <td>{line}</td>
                <td>
                  {struck ? <s>{rest}</s> : rest}
                  {entry.groupId ? <span className="note"> with the whole split mould</span> : null}
                  {struck ? (
                    <>
                      {' '}
                      <EntryLink id={entry.correctedById} here={here} words="put right" />
                    </>
                  ) : null}
                  {entry.correctsId ? (
                    <>
                      {' '}
                      <EntryLink id={entry.correctsId} here={here} words="puts an earlier entry right" />
                    </>
                  ) : null}
                  <EntryPictures {...photosOf} entryId={entry.id} />
                </td>
                <td title={entry.byName}>{initials.get(entry.byName) ?? entry.byName}</td>
                {mayLog ? (
                  <td className="n">
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

/** A link to an entry where it stands on this page, else the words alone. */
function EntryLink({
  id,
  here,
  words,
}: {
  readonly id: string | null
  readonly here: ReadonlySet<string>
  readonly words: string
}) {
  return id !== null && here.has(id) ? <a href={`#entry-${id}`}>{words}</a> : <span>{words}</span>
}

/** "0.2 l of Slipwell 40, lot 7" */
function takenWords({ uses }: LogEntry): string {
  return uses.map((use) => `${figure(use.amount, 3)} ${use.unit} of ${use.name}, lot ${use.lot}`).join('; ')
}
