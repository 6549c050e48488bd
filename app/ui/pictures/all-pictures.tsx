import type { Route } from 'next'
import { listPictures } from '#lib/services/pictures'
import { readSettings } from '#lib/services/shop'
import { requireActor } from '#lib/web/session'
import { Link } from '../link'
import { HeadOut } from '../table-out'
import { AddPhoto } from './add-photo'
import { allAddress, homeAddress, type NamedSubject, subjectWords, viewsAddress } from './addresses'
import { PictureFigure } from './picture'

const most = 500

/** All photos and drawings of a thing, newest first, narrowed to a view, to drawings, or to what was put away. */
export async function AllPictures({
  subject,
  view,
  show,
}: {
  readonly subject: NamedSubject
  readonly view: string | null
  readonly show: string | null
}) {
  const actor = await requireActor()
  const { on, onId, code } = subject
  const putAway = show === 'put-away'
  const [{ pictures, views, count }, { pictures: away }, { today }] = await Promise.all([
    listPictures(actor, { on, onId, limit: most, ...(view === null ? {} : { view }) }),
    listPictures(actor, { on, onId, limit: most, putAway: true }),
    readSettings(actor, {}),
  ])
  const shown = putAway
    ? away
    : show === 'drawings'
      ? pictures.filter((picture) => picture.kind === 'drawing')
      : pictures
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={homeAddress(subject)}>{code}</Link> / Photos and drawings
        </div>
        <div className="acts no-print">
          {views.length > 0 ? (
            <Link className="btn" href={viewsAddress(subject)}>
              Same view over time
            </Link>
          ) : null}
          <AddPhoto subject={subject} className="btn primary" {...(view === null ? {} : { view })} />
        </div>
      </div>
      {on === 'mould' ? (
        <HeadOut name="pictures" of={{ mould: code }} label={`Photos and drawings of ${code}, listed`}>
          <h1>Photos and drawings</h1>
        </HeadOut>
      ) : (
        <h1>Photos and drawings</h1>
      )}
      <p className="pic-filter note">
        <span>Show</span>
        <Choice href={allAddress(subject)} on={view === null && show === null} name="all" />
        {views.map((each) => (
          <Choice key={each} href={allAddress(subject, { view: each })} on={view === each} name={each} />
        ))}
        <Choice href={allAddress(subject, { show: 'drawings' })} on={show === 'drawings'} name="drawings" />
        {away.length > 0 ? (
          <Choice
            href={allAddress(subject, { show: 'put-away' })}
            on={putAway}
            name={`put away (${away.length})`}
          />
        ) : null}
      </p>
      {shown.length === 0 ? (
        <p className="empty">
          {count === 0 && !putAway
            ? `No photo yet. What this ${subjectWords[on]} looks like stands here, season by season; the same view each time shows what changed.`
            : 'None of this kind.'}
        </p>
      ) : (
        <div className="pics">
          {shown.map((picture) => (
            <PictureFigure key={picture.id} picture={picture} today={today}>
              {picture.putAwayBecause ? (
                <span className="note pic-note">put away: {picture.putAwayBecause}</span>
              ) : null}
            </PictureFigure>
          ))}
        </div>
      )}
      {count > most ? (
        <p className="note">
          The newest {most} of {count}; choose a view to see its older ones.
        </p>
      ) : null}
    </>
  )
}

/** One of the choices above a list; the one that is shown is no link. */
export function Choice({
  href,
  on,
  name,
}: {
  readonly href: Route
  readonly on: boolean
  readonly name: string
}) {
  return on ? <b aria-current="true">{name}</b> : <Link href={href}>{name}</Link>
}
