import { sharp } from '#lib/exchange/picture/sharp.js'
import { NewPicture } from '#lib/schema/picture'
import { addPicture } from '#lib/services/pictures'
import { db } from '#lib/store/db'
import { momentOf } from '../base/calendar'
import { idOf } from '../base/ids'
import { type DemoPicture, demoPictures } from '../data/pictures'
import type { Book } from '../diary/book'
import { entryId } from './log'
import { actorOf } from './people'

/** Draws the pictures and sends each through the door that people use; then they are as old as what they show. */
export async function writePictures(books: readonly Book[]): Promise<void> {
  await Promise.all(demoPictures.map((picture) => writePicture(picture, books)))
}

async function writePicture(picture: DemoPicture, books: readonly Book[]): Promise<void> {
  const { key, on, code, kind, svg, takenOn, by, view, caption } = picture
  const drawn = sharp(Buffer.from(svg))
  const bytes = kind === 'photo' ? await drawn.jpeg({ quality: 85 }).toBuffer() : await drawn.png().toBuffer()
  const id = idOf(`picture/${key}`)
  const input = {
    id,
    on,
    onId: idOf(`${on}/${code}`),
    kind,
    view,
    caption,
    takenOn,
    entryId: entryOf(picture, books),
  }
  await addPicture(actorOf(by), { ...NewPicture.parse(input), bytes: new Uint8Array(bytes) })
  await db().sql`update picture set written_at = ${momentOf(takenOn, 18 * 60)} where id = ${id}`
}

function entryOf({ key, code, besideDamageOn }: DemoPicture, books: readonly Book[]): string | null {
  if (besideDamageOn === null) return null
  const drafts = books.find((book) => book.mould === code)?.drafts ?? []
  const entry = drafts.find((draft) => draft.kind === 'damage' && draft.doneOn === besideDamageOn)
  if (!entry) throw new Error(`${key}: no damage of ${code} on ${besideDamageOn}`)
  return entryId(entry.key)
}
