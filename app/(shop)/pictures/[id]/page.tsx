import type { Metadata, Route } from 'next'
import { notFound } from 'next/navigation'
import { shopDay, shortDate } from '#lib/core/dates'
import { entryWords } from '#lib/core/log/index'
import { listPictures, type PicturePage, readPicture } from '#lib/services/pictures'
import { readSettings } from '#lib/services/shop'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../../ui/action-form'
import { entryHref } from '../../../ui/entry-href'
import { Hidden, TextField } from '../../../ui/fields'
import { Link } from '../../../ui/link'
import { AddPhoto } from '../../../ui/pictures/add-photo'
import { allAddress, homeAddress, type NamedSubject, viewsAddress } from '../../../ui/pictures/addresses'
import { PictureImage } from '../../../ui/pictures/picture'
import { sizeWords, titleOf } from '../../../ui/pictures/words'
import { bringBack, change, putAway } from '../actions'

export const metadata: Metadata = { title: 'Photo' }

export default async function PicturePageView({ params }: PageProps<'/pictures/[id]'>) {
  const { id } = await params
  const actor = await requireActor(`/pictures/${encodeURIComponent(id)}`)
  if (!/^[0-9a-f-]{36}$/i.test(id)) notFound()
  const page = await found(readPicture(actor, { id }))
  if (!page) notFound()
  const { picture, today } = page
  const subject: NamedSubject = { on: picture.on, onId: picture.onId, code: picture.subjectCode }
  const [{ pictures }, { shop }] = await Promise.all([
    listPictures(actor, { on: picture.on, onId: picture.onId, limit: 500 }),
    readSettings(actor, {}),
  ])
  const at = pictures.findIndex((each) => each.id === picture.id)
  const [later, earlier] = at < 0 ? [] : [pictures[at - 1], pictures[at + 1]]
  const mayChange = actor.role !== 'viewer'
  const mayPutAway = actor.role === 'lead' || (actor.role === 'laminator' && picture.byId === actor.id)
  const flat = picture.widthPx === null
  return (
    <>
      <div className="crumb-row">
        <div className="crumb">
          <Link href={homeAddress(subject)}>{picture.subjectCode}</Link> /{' '}
          <Link href={allAddress(subject)}>Photos and drawings</Link>
        </div>
        <nav className="acts no-print" aria-label="Other photos of the same">
          {earlier ? (
            <Link className="btn" href={`/pictures/${earlier.id}` as Route}>
              Earlier
            </Link>
          ) : null}
          {later ? (
            <Link className="btn" href={`/pictures/${later.id}` as Route}>
              Later
            </Link>
          ) : null}
          {picture.view && !flat ? (
            <AddPhoto subject={subject} view={picture.view} like={picture.id}>
              Take this view again
            </AddPhoto>
          ) : null}
        </nav>
      </div>
      {picture.putAwayBecause ? (
        <p className="notice look" style={{ marginBottom: 16 }}>
          Put away: {picture.putAwayBecause}. It stands in no list but that of what was put away.
        </p>
      ) : null}
      <div className="sheet">
        <a
          className="pic-large"
          href={`/pictures/${picture.id}/full`}
          aria-label={flat ? 'Save the drawing' : 'The picture alone'}
        >
          <PictureImage picture={picture} size="full" today={today} eager />
          {flat ? <span>Save the drawing</span> : null}
        </a>
        <Strip page={page} subject={subject} writtenOn={shopDay(picture.writtenAt, shop.timeZone).day} />
      </div>
      {mayChange ? (
        <div className="columns" style={{ marginTop: 28 }}>
          <section className="rule-top">
            <h2 style={{ marginBottom: 12 }}>Change the words</h2>
            <ActionForm
              key={picture.version}
              action={change}
              labels={{ caption: 'Caption', view: 'Fixed view', takenOn: 'Taken on' }}
              defaults={{
                id: picture.id,
                version: String(picture.version),
                caption: picture.caption,
                view: picture.view,
                takenOn: picture.takenOn,
              }}
              submit="Save"
            >
              <Hidden name="id" />
              <Hidden name="version" />
              <TextField name="caption" label="Caption" />
              <TextField
                name="view"
                label="Fixed view"
                list={page.views}
                hint="the same name each time lays the years side by side"
              />
              <TextField name="takenOn" label="Taken on" type="date" />
            </ActionForm>
          </section>
          {mayPutAway ? <Away page={page} lead={actor.role === 'lead'} /> : null}
        </div>
      ) : null}
    </>
  )
}

/** The data of the picture stand in the strip at its foot. */
function Strip({
  page: { picture, entry, today },
  subject,
  writtenOn,
}: {
  readonly page: PicturePage
  readonly subject: NamedSubject
  readonly writtenOn: string
}) {
  const words = entry ? entryWords(entry) : null
  return (
    <div className="strip">
      <div>
        <small>
          {picture.subjectCode} {picture.subjectName}
        </small>
        <h1>{titleOf(picture)}</h1>
      </div>
      <div>
        <small>Taken</small>
        <b>{shortDate(picture.takenOn, today)}</b>
        <small>
          added {shortDate(writtenOn, today)} by {picture.byName}
        </small>
      </div>
      <div>
        <small>Fixed view</small>
        {picture.view ? (
          <b>
            {picture.widthPx === null ? (
              picture.view
            ) : (
              <Link href={viewsAddress(subject, { view: picture.view, right: picture.id })}>
                {picture.view}
              </Link>
            )}
          </b>
        ) : (
          <b>none</b>
        )}
        {picture.view && picture.widthPx !== null ? <small>over time, side by side</small> : null}
      </div>
      {entry && words ? (
        <div>
          <small>Beside the entry</small>
          <b>
            <Link href={entryHref(homeAddress(subject), entry.id)}>{words.what}</Link>
          </b>
          <small>
            {shortDate(entry.doneOn, today)}
            {words.detail ? `, ${words.detail}` : ''}
          </small>
        </div>
      ) : null}
      <div>
        <small>{picture.kind === 'drawing' ? 'Drawing' : 'Photo'}</small>
        <b>{picture.widthPx === null ? 'PDF' : `${picture.widthPx} × ${picture.heightPx} px`}</b>
        <small>{sizeWords(picture.sizeBytes)}</small>
      </div>
    </div>
  )
}

function Away({ page: { picture }, lead }: { readonly page: PicturePage; readonly lead: boolean }) {
  const defaults = { id: picture.id, version: String(picture.version), because: '' }
  if (picture.putAwayAt !== null) {
    return lead ? (
      <section className="rule-top">
        <h2 style={{ marginBottom: 12 }}>Bring it back</h2>
        <ActionForm key={picture.version} action={bringBack} defaults={defaults} submit="Bring it back">
          <Hidden name="id" />
          <Hidden name="version" />
        </ActionForm>
      </section>
    ) : null
  }
  return (
    <section className="rule-top">
      <h2>Put it away</h2>
      <p className="note" style={{ margin: '0 0 12px' }}>
        It is of another mould, blurred, or was sent twice. It stays in the book, out of the lists.
      </p>
      <ActionForm key={picture.version} action={putAway} defaults={defaults} submit="Put it away">
        <Hidden name="id" />
        <Hidden name="version" />
        <TextField name="because" label="Because" />
      </ActionForm>
    </section>
  )
}
