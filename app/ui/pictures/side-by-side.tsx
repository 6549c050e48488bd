import type { Route } from 'next'
import { shortDate } from '#lib/core/dates'
import { type FixedView, readViews } from '#lib/services/pictures'
import { readSettings } from '#lib/services/shop'
import { requireActor } from '#lib/web/session'
import { Link } from '../link'
import { AddPhoto } from './add-photo'
import { homeAddress, type NamedSubject, viewsAddress } from './addresses'
import { Choice } from './all-pictures'
import { PictureImage, type StoredPicture } from './picture'

interface Asked {
  readonly view: string | null
  readonly left: string | null
  readonly right: string | null
}

/**
 * One fixed view of a thing over time: two days large beside each other, below them all days as columns. Stepping is
 * by links, so that it needs neither a swipe nor a script.
 */
export async function SideBySide({
  subject,
  asked,
}: {
  readonly subject: NamedSubject
  readonly asked: Asked
}) {
  const actor = await requireActor()
  const { on, onId, code } = subject
  const [series, { today }] = await Promise.all([readViews(actor, { on, onId }), readSettings(actor, {})])
  const shown = series.find(({ view }) => view === asked.view) ?? series[0]
  const last = shown?.pictures.at(-1)
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={homeAddress(subject)}>{code}</Link> / Same view over time
        </div>
        <div className="acts no-print">
          {shown && last ? (
            <AddPhoto subject={subject} view={shown.view} like={last.id} className="btn primary">
              Take this view again
            </AddPhoto>
          ) : (
            <AddPhoto subject={subject} className="btn primary" />
          )}
        </div>
      </div>
      <h1>{shown ? shown.view : 'Same view over time'}</h1>
      {series.length > 1 ? (
        <p className="pic-filter note">
          <span>View</span>
          {series.map(({ view }) => (
            <Choice key={view} href={viewsAddress(subject, { view })} on={view === shown?.view} name={view} />
          ))}
        </p>
      ) : null}
      {shown ? (
        <Pair subject={subject} series={shown} asked={asked} today={today} />
      ) : (
        <p className="empty">
          No fixed view yet. Give a photo the name of a view, such as "floor from the front", and take the
          same view each season: the years then stand here side by side.
        </p>
      )}
    </>
  )
}

function Pair({
  subject,
  series: { view, pictures },
  asked,
  today,
}: {
  readonly subject: NamedSubject
  readonly series: FixedView
  readonly asked: Asked
  readonly today: string
}) {
  const at = (id: string | null, otherwise: number) => {
    const found = pictures.findIndex((picture) => picture.id === id)
    return found < 0 ? otherwise : found
  }
  const right = at(asked.right, pictures.length - 1)
  const left = at(asked.left, Math.max(0, pictures.length - 2))
  const address = (l: number, r: number, mark: string) =>
    `${viewsAddress(subject, { view, left: pictures[l]?.id ?? '', right: pictures[r]?.id ?? '' })}#${mark}` as Route
  const sides =
    pictures.length === 1
      ? [{ name: 'right', at: 0, go: (to: number) => address(to, to, 'right') }]
      : [
          { name: 'left', at: left, go: (to: number) => address(to, right, 'left') },
          { name: 'right', at: right, go: (to: number) => address(left, to, 'right') },
        ]
  return (
    <>
      <div className="pair" data-sides={sides.length}>
        {sides.map((side) => {
          const picture = pictures[side.at]
          return picture ? (
            <figure key={side.name} id={side.name} className="pair-side">
              <figcaption className="pair-head">
                <h2>{shortDate(picture.takenOn, today)}</h2>
                {pictures.length > 1 ? (
                  <span className="acts no-print">
                    <Step to={side.at > 0 ? side.go(side.at - 1) : null} side={side.name} name="earlier" />
                    <Step
                      to={side.at < pictures.length - 1 ? side.go(side.at + 1) : null}
                      side={side.name}
                      name="later"
                    />
                  </span>
                ) : null}
              </figcaption>
              <Link href={`/pictures/${picture.id}` as Route} className="pic-frame">
                <PictureImage picture={picture} size="full" today={today} eager />
              </Link>
              <p className="note">{[picture.caption, picture.byName].filter(Boolean).join(' · ')}</p>
            </figure>
          ) : null
        })}
      </div>
      {pictures.length === 1 ? (
        <p className="note">One day so far. Take this view again, and both days stand here side by side.</p>
      ) : (
        <Days pictures={pictures} left={left} right={right} address={address} view={view} today={today} />
      )}
    </>
  )
}

function Step({
  to,
  side,
  name,
}: {
  readonly to: Route | null
  readonly side: string
  readonly name: string
}) {
  const label = `${name} on the ${side}`
  const shown = name.charAt(0).toUpperCase() + name.slice(1)
  return to === null ? (
    <span className="btn" aria-disabled="true">
      {shown}
    </span>
  ) : (
    <Link className="btn" href={to} scroll={false} aria-label={label}>
      {shown}
    </Link>
  )
}

/** All days of a view as columns, oldest first; each can be put on the left or on the right. */
function Days({
  pictures,
  left,
  right,
  address,
  view,
  today,
}: {
  readonly pictures: readonly StoredPicture[]
  readonly left: number
  readonly right: number
  readonly address: (left: number, right: number, mark: string) => Route
  readonly view: string
  readonly today: string
}) {
  return (
    <section className="days" aria-label={`All days of ${view}`}>
      <h2>All days</h2>
      <div className="days-room">
        <ol>
          {pictures.map((picture, index) => (
            <li key={picture.id} aria-current={index === left || index === right ? 'true' : undefined}>
              <b>{shortDate(picture.takenOn, today)}</b>
              <Link href={`/pictures/${picture.id}` as Route} className="pic-frame">
                <PictureImage picture={picture} size="small" today={today} />
              </Link>
              <span className="days-acts no-print">
                <Place
                  to={address(index, right, 'left')}
                  on={index === left}
                  name="left"
                  day={picture.takenOn}
                />
                <Place
                  to={address(left, index, 'right')}
                  on={index === right}
                  name="right"
                  day={picture.takenOn}
                />
              </span>
            </li>
          ))}
        </ol>
      </div>
    </section>
  )
}

function Place({
  to,
  on,
  name,
  day,
}: {
  readonly to: Route
  readonly on: boolean
  readonly name: string
  readonly day: string
}) {
  const place = (
    <>
      <span className="sides-beside">{name}</span>
      <span className="sides-stacked">{name === 'left' ? 'above' : 'below'}</span>
    </>
  )
  return on ? (
    <b>{place}</b>
  ) : (
    <Link href={to} scroll={false} aria-label={`${day} on the ${name}`}>
      {place}
    </Link>
  )
}
