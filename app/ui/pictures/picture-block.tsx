import type { Actor } from '#lib/schema/actor'
import { listPictures } from '#lib/services/pictures'
import { Link } from '../link'
import { AddPhoto } from './add-photo'
import { allAddress, type NamedSubject, subjectWords, viewsAddress } from './addresses'
import { PictureFigure } from './picture'

const newest = 6

/** The newest photos and drawings of a mould, pattern, split mould or built part, for its page. */
export async function PictureBlock({
  actor,
  subject,
  today,
}: {
  readonly actor: Actor
  readonly subject: NamedSubject
  readonly today: string
}) {
  const { on, onId } = subject
  const { pictures, views, count } = await listPictures(actor, { on, onId, limit: newest })
  return (
    <section className="pic-block" aria-labelledby={`pictures-${onId}`}>
      <div className="pic-head">
        <h2 id={`pictures-${onId}`}>Photos and drawings</h2>
        <span className="acts no-print">
          {views.length > 0 ? <Link href={viewsAddress(subject)}>Same view over time</Link> : null}
          {count > 0 ? (
            <Link href={allAddress(subject)}>
              {count === 1 ? 'Show it' : `All ${count} photos and drawings`}
            </Link>
          ) : null}
          <AddPhoto subject={subject} />
        </span>
      </div>
      {pictures.length === 0 ? (
        <p className="empty">
          No photo yet. What this {subjectWords[on]} looks like stands here, season by season; the same view
          each time shows what changed.
        </p>
      ) : (
        <div className="pics">
          {pictures.map((picture) => (
            <PictureFigure key={picture.id} picture={picture} today={today} />
          ))}
        </div>
      )}
    </section>
  )
}
