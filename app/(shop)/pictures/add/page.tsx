import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { shortDate } from '#lib/core/dates'
import { entryWords } from '#lib/core/log/index'
import { pictureLimits, pictureSubjects } from '#lib/schema/picture'
import { readPicture, readPictureSubject } from '#lib/services/pictures'
import { found } from '#lib/web/page'
import { requireActor } from '#lib/web/session'
import { toldHere } from '#lib/web/told-next'
import { Link } from '../../../ui/link'
import { addAddress, allAddress, homeAddress } from '../../../ui/pictures/addresses'
import { PictureImage } from '../../../ui/pictures/picture'
import { SendForm } from '../../../ui/pictures/send-form'

export const metadata: Metadata = { title: 'Add a photo' }

export default async function AddPicturePage({ searchParams }: PageProps<'/pictures/add'>) {
  const query = await searchParams
  const on = pictureSubjects.find((each) => each === query.on)
  const onId = text(query.id)
  const given = { entryId: uuid(query.entry), like: uuid(query.like), view: text(query.view).slice(0, 80) }
  if (!on || !uuid(onId)) notFound()
  const here = addAddress({ on, onId }, given)
  const actor = await requireActor(here)
  const subject = await found(readPictureSubject(actor, { on, onId, entryId: given.entryId }))
  if (!subject) notFound()
  const named = { on, onId, code: subject.code }
  const crumb = (
    <div className="crumb-row">
      <div className="crumb">
        <Link href={homeAddress(named)}>{subject.code}</Link> /{' '}
        <Link href={allAddress(named)}>Photos and drawings</Link> / Add
      </div>
    </div>
  )
  if (actor.role === 'viewer') {
    return (
      <>
        {crumb}
        <p className="empty">A viewer reads the book. A laminator or a lead adds photos to it.</p>
      </>
    )
  }
  const like = given.like ? await found(readPicture(actor, { id: given.like })) : null
  const told = await toldHere(query.told)
  const words = subject.entry ? entryWords(subject.entry) : null
  return (
    <div className="narrow">
      {crumb}
      <h1>Add photos to {subject.code}</h1>
      <p style={{ margin: '8px 0 18px' }}>
        {subject.name}
        {words && subject.entry ? (
          <>
            , beside <b>{words.what}</b>, {shortDate(subject.entry.doneOn, subject.today)}
          </>
        ) : null}
      </p>
      {told ? (
        <div
          className={`notice ${told.lines.length > 0 ? 'look' : 'done'}`}
          role="status"
          style={{ marginBottom: 18 }}
        >
          <p>
            <b>
              {told.kept === 0
                ? 'Nothing was kept'
                : `${told.kept} ${told.kept === 1 ? 'file' : 'files'} kept`}
            </b>
            {told.kept > 0 ? (
              <>
                {' '}
                with <Link href={homeAddress(named)}>{subject.code}</Link>
              </>
            ) : null}
          </p>
          {told.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      ) : null}
      {like ? (
        <div className="send-like">
          <span className="pic-frame">
            <PictureImage picture={like.picture} size="small" today={subject.today} eager />
          </span>
          <p>
            Take the same view again: <b>{like.picture.view}</b>, last on{' '}
            {shortDate(like.picture.takenOn, subject.today)}.{' '}
            <span className="soft">Stand where it was taken from; the same light helps.</span>
          </p>
        </div>
      ) : null}
      <SendForm
        subject={{ on, onId }}
        entryId={given.entryId}
        ids={Array.from({ length: pictureLimits.filesAtOnce }, () => randomUUID())}
        views={subject.views}
        view={given.view || (like?.picture.view ?? '')}
        today={subject.today}
        here={here}
      />
      <p style={{ marginTop: 18 }}>
        <Link href={homeAddress(named)}>Back to {subject.code}</Link>
      </p>
    </div>
  )
}

function text(value: string | string[] | undefined): string {
  return typeof value === 'string' ? value : ''
}

function uuid(value: string | string[] | undefined): string | null {
  return typeof value === 'string' && /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(value)
    ? value
    : null
}
