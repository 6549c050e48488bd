import { randomUUID } from 'node:crypto'
import type { Route } from 'next'
import { shortDate } from '#lib/core/dates'
import { type SeasonSeam, seasonSeams } from '#lib/core/season/index'
import { textOf } from '#lib/schema/form'
import { SeasonInput } from '#lib/schema/season'
import type { readSettings } from '#lib/services/shop'
import { ActionForm } from '../../ui/action-form'
import { Hidden, TextField } from '../../ui/fields'
import { Link } from '../../ui/link'
import { HeadOut } from '../../ui/table-out'
import { addTheSeason, changeTheSeason } from './actions'

type Season = Awaited<ReturnType<typeof readSettings>>['seasons'][number]

const labels = { name: 'Name', startsOn: 'First day', endsOn: 'Last day' }

/** The shop's seasons: pulls are counted and strips are marked by them. */
export function Seasons({
  seasons,
  lead,
  changing,
  today,
}: {
  readonly seasons: readonly Season[]
  readonly lead: boolean
  /** Id of the season that is changed; null: a new one is added. */
  readonly changing: string | null
  readonly today: string
}) {
  const edited = seasons.find((season) => season.id === changing)
  const seams = seasonSeams(seasons)
  const last = seasons.at(-1)
  return (
    <section id="seasons" className="rule-top" style={{ marginTop: 34 }}>
      <HeadOut name="seasons" label="All seasons">
        <h2>Seasons</h2>
      </HeadOut>
      {seasons.length === 0 ? (
        <p className="note">
          No season yet. With its first and last day, pulls are counted by season and marked on every pull
          strip.
        </p>
      ) : (
        <table className="lines">
          <thead>
            <tr>
              <th scope="col">Season</th>
              <th scope="col">From</th>
              <th scope="col">To</th>
              {lead ? (
                <th scope="col">
                  <span className="quiet">Change</span>
                </th>
              ) : null}
            </tr>
          </thead>
          <tbody>
            {seasons.map((season) => (
              <tr key={season.id}>
                <td>
                  <b>{season.name}</b>
                  {season.startsOn <= today && today <= season.endsOn ? (
                    <span className="soft"> now</span>
                  ) : null}
                </td>
                <td>{shortDate(season.startsOn, today)}</td>
                <td>{shortDate(season.endsOn, today)}</td>
                {lead ? (
                  <td className="n">
                    <Link href={`/settings?season=${season.id}#season-form` as Route}>change</Link>
                  </td>
                ) : null}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {seams.map((seam) => (
        <p
          key={`${seam.earlier} ${seam.later}`}
          className={seam.kind === 'overlap' ? 'notice look' : 'note'}
          style={{ marginTop: 10 }}
        >
          {seamWords(seam)}
        </p>
      ))}
      {lead ? (
        <div id="season-form" style={{ marginTop: 16 }}>
          <h3 style={{ marginBottom: 10 }}>{edited ? `Change ${edited.name}` : 'Add a season'}</h3>
          <ActionForm
            key={edited ? `${edited.id} ${edited.version}` : `new ${seasons.length}`}
            action={edited ? changeTheSeason : addTheSeason}
            labels={labels}
            defaults={
              edited
                ? { ...(textOf(SeasonInput, edited) as object), version: String(edited.version) }
                : { id: randomUUID(), name: '', startsOn: last ? dayAfter(last.endsOn) : '', endsOn: '' }
            }
            submit={edited ? 'Save the season' : 'Add the season'}
          >
            <Hidden name="id" />
            {edited ? <Hidden name="version" /> : null}
            <div className="field-row">
              <TextField name="name" label={labels.name} hint="for example 2026/27" />
              <TextField name="startsOn" label={labels.startsOn} type="date" />
              <TextField name="endsOn" label={labels.endsOn} type="date" />
            </div>
          </ActionForm>
        </div>
      ) : null}
    </section>
  )
}

function seamWords({ kind, earlier, later, days }: SeasonSeam): string {
  const long = `${days} ${days === 1 ? 'day' : 'days'}`
  return kind === 'overlap'
    ? `${earlier} and ${later} have ${long} in common: a pull of these days counts for ${later}.`
    : `Between ${earlier} and ${later} ${long} belong to no season: a pull of these days counts for ${earlier}.`
}

function dayAfter(day: string): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10)
}
