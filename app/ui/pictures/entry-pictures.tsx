import type { Route } from 'next'
import { cache } from 'react'
import type { PictureSubjectKind } from '#lib/schema/picture'
import { picturesBeside } from '#lib/services/pictures'
import { readSettings } from '#lib/services/shop'
import { requireActor } from '#lib/web/session'
import { Link } from '../link'
import { PictureImage } from './picture'

/** Asked once a page, however many entries it shows. */
const beside = cache(async (on: PictureSubjectKind, onId: string) =>
  picturesBeside(await requireActor(), { on, onId }),
)

/** The photos beside one entry of a log; nothing where there is none. */
export async function EntryPictures({
  on,
  onId,
  entryId,
}: {
  readonly on: 'mould' | 'pattern'
  readonly onId: string
  readonly entryId: string
}) {
  const pictures = (await beside(on, onId)).get(entryId) ?? []
  if (pictures.length === 0) return null
  const { today } = await readSettings(await requireActor(), {})
  return (
    <span className="entry-pics">
      {pictures.map((picture) => (
        <Link key={picture.id} href={`/pictures/${picture.id}` as Route} className="entry-pic">
          <PictureImage picture={picture} size="small" today={today} />
        </Link>
      ))}
    </span>
  )
}
