import * as z from 'zod'
import type { LogEntry } from '#lib/core/log/index'
import { type ReadPicture, readPicture as readFile } from '#lib/exchange/picture/index'
import type { Actor } from '#lib/schema/actor'
import { asked } from '#lib/schema/fields'
import { NewPicture, PictureChange, PicturePutAway, pictureSizes, pictureSubjects } from '#lib/schema/picture'
import { Refusal } from '#lib/store/errors'
import { readEntry } from '#lib/store/history'
import { readMouldByCode } from '#lib/store/moulds'
import {
  countPictures,
  listViews,
  readPictureBytes,
  listPictures as readPictures,
  readSubject,
  type StoredPicture,
  setPutAway,
  picturesBeside as storedBeside,
  readPicture as storedPicture,
  addPicture as storePicture,
  changePicture as updatePicture,
} from '#lib/store/pictures'
import { shopContext, told } from './shop'
import { asking, everyone, hands, leads, verb } from './verb'

const bytes = () =>
  z.custom<Uint8Array<ArrayBuffer>>((value) => value instanceof Uint8Array, { error: () => 'Choose a file' })

const Subject = z.object({ on: z.enum(pictureSubjects), onId: z.uuid() })

export interface AddedPicture {
  readonly picture: StoredPicture
  /** False: it stood there already with the same content. */
  readonly written: boolean
  /** What was done to it that the sender may not expect. */
  readonly notices: readonly string[]
}

/** Takes a photo or drawing in. Sent twice with the same id, stored once. */
export const addPicture = verb(
  'pictures.add',
  hands,
  NewPicture.safeExtend({ bytes: bytes() }),
  (actor, { bytes: sent, ...input }) => add(actor, input, sent),
)

/** The same for a mould by its code, as a script sends it. */
export const addPictureOf = verb(
  'pictures.add-of',
  hands,
  NewPicture.omit({ on: true, onId: true }).safeExtend({ code: asked(), bytes: bytes() }),
  async (actor, { code, bytes: sent, ...input }) =>
    add(actor, { ...input, on: 'mould', onId: await mouldId(code) }, sent),
)

async function mouldOf(code: string) {
  const mould = await readMouldByCode(code)
  if (!mould) throw new Refusal(`There is no mould ${code}`, { status: 404 })
  return mould
}

const mouldId = async (code: string) => (await mouldOf(code)).id

async function add(actor: Actor, input: NewPicture, sent: Uint8Array<ArrayBuffer>): Promise<AddedPicture> {
  const { today } = await shopContext()
  checkDay(input.takenOn, today)
  const reading = await readFile(sent)
  if (!reading.ok) {
    throw new Refusal(reading.reason, reading.unable ? { status: 503 } : { fields: { file: reading.reason } })
  }
  const { picture } = reading
  const { day, notice } = dayShown(input, picture, today)
  const kind = picture.mimeType === 'application/pdf' ? 'drawing' : input.kind
  const written = await told(storePicture(actor, { ...input, kind }, sent, picture, day), {
    ...Object.fromEntries(
      ['mould_id', 'pattern_id', 'set_id', 'built_part_id'].map((column) => [
        `picture_${column}_fkey`,
        { field: 'onId', says: 'What the picture belongs to is not in the book; load the page again' },
      ]),
    ),
  })
  const stored = await storedPicture(input.id)
  if (!stored) throw new Refusal('There is no such picture', { status: 404 })
  return { picture: stored, written, notices: [...picture.notices, ...(notice === null ? [] : [notice])] }
}

function checkDay(day: string | null, today: string): void {
  if (day === null || day <= today) return
  throw new Refusal(`${day} is in the future: today is ${today} in the shop`, {
    fields: { takenOn: `In the future; today is ${today}` },
  })
}

/** The day given, else the one that the camera wrote into the photo, else today. */
function dayShown(
  { takenOn }: NewPicture,
  picture: ReadPicture,
  today: string,
): { readonly day: string; readonly notice: string | null } {
  if (takenOn !== null) return { day: takenOn, notice: null }
  if (picture.takenOn === null) return { day: today, notice: null }
  if (picture.takenOn <= today) return { day: picture.takenOn, notice: null }
  return {
    day: today,
    notice: `The photo says that it was taken on ${picture.takenOn}, which is in the future: today was written`,
  }
}

/** Pictures of a thing, newest first, its fixed views, and how many pictures there are in all. */
export const listPictures = asking(
  'pictures.list',
  everyone,
  Subject.extend({
    view: asked().optional(),
    putAway: z.boolean().optional(),
    limit: z.int().min(1).max(500).optional(),
  }),
  async (_actor, { on, onId, view, putAway, limit }) => {
    const subject = { on, onId }
    const [pictures, views, count] = await Promise.all([
      readPictures(subject, {
        ...(view === undefined ? {} : { view }),
        ...(putAway === undefined ? {} : { putAway }),
        ...(limit === undefined ? {} : { limit }),
      }),
      listViews(subject),
      countPictures(subject),
    ])
    return { pictures, views, count }
  },
)

export const listPicturesOf = asking(
  'pictures.list-of',
  everyone,
  z.object({ code: asked(), view: asked().optional() }),
  async (_actor, { code, view }) =>
    readPictures({ on: 'mould', onId: await mouldId(code) }, view === undefined ? {} : { view }),
)

/** Pictures that stand beside entries of a log, by the entry's id. */
export const picturesBeside = verb(
  'pictures.beside',
  everyone,
  Subject,
  async (_actor, subject): Promise<ReadonlyMap<string, readonly StoredPicture[]>> => {
    const byEntry = new Map<string, StoredPicture[]>()
    for (const picture of await storedBeside(subject)) {
      const entryId = picture.entryId ?? ''
      byEntry.set(entryId, [...(byEntry.get(entryId) ?? []), picture])
    }
    return byEntry
  },
)

export interface FixedView {
  readonly view: string
  /** Oldest first. */
  readonly pictures: readonly StoredPicture[]
}

/** A thing's fixed views, each over time; the view with most pictures first. */
export const readViews = verb(
  'pictures.views',
  everyone,
  Subject,
  async (_actor, subject): Promise<FixedView[]> => {
    const byView = new Map<string, StoredPicture[]>()
    for (const picture of (await readPictures(subject)).reverse()) {
      if (picture.view !== '' && picture.widthPx !== null)
        byView.set(picture.view, [...(byView.get(picture.view) ?? []), picture])
    }
    return [...byView]
      .map(([view, pictures]) => ({ view, pictures }))
      .sort((a, b) => b.pictures.length - a.pictures.length || a.view.localeCompare(b.view))
  },
)

export interface PicturePage {
  readonly picture: StoredPicture
  /** The entry that it stands beside. */
  readonly entry: LogEntry | null
  readonly views: readonly string[]
  readonly today: string
}

export const readPicture = asking(
  'pictures.read',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }): Promise<PicturePage> => {
    const picture = await present(id)
    const [entry, views, { today }] = await Promise.all([
      picture.entryId ? readEntry(picture.entryId) : null,
      listViews(picture),
      shopContext(),
    ])
    return { picture, entry, views, today }
  },
)

async function present(id: string): Promise<StoredPicture> {
  const picture = await storedPicture(id)
  if (!picture) throw new Refusal('There is no such picture', { status: 404 })
  return picture
}

export const readPictureFile = verb(
  'pictures.bytes',
  everyone,
  z.object({ id: z.uuid(), size: z.enum(pictureSizes) }),
  async (_actor, { id, size }) => {
    const picture = await present(id)
    const file = await readPictureBytes(id, size)
    if (!file) throw new Refusal('There is no small picture of a PDF; ask for the full one', { status: 404 })
    return { picture, size, bytes: file }
  },
)

/** What a page needs before a picture is sent: to what, beside which entry, which views there are. */
export const readPictureSubject = asking(
  'pictures.subject',
  everyone,
  Subject.extend({ entryId: z.uuid().nullable() }),
  async (_actor, { on, onId, entryId }) => {
    const [subject, views, { today }, entry] = await Promise.all([
      readSubject({ on, onId }),
      listViews({ on, onId }),
      shopContext(),
      entryId ? readEntry(entryId) : null,
    ])
    if (!subject) throw new Refusal('It is not in the book', { status: 404 })
    return { ...subject, views, today, entry }
  },
)

/** The mould of a code as pictures know it. */
export const readPictureSubjectByCode = asking(
  'pictures.subject-of',
  everyone,
  z.object({ code: asked() }),
  async (_actor, { code }) => {
    const mould = await mouldOf(code)
    return { on: 'mould' as const, onId: mould.id, code: mould.code }
  },
)

export const changePicture = verb('pictures.change', hands, PictureChange, async (actor, input) => {
  const { today } = await shopContext()
  checkDay(input.takenOn, today)
  await updatePicture(actor, input)
})

/** Puts a picture away with a because; by a lead, or by the one who added it. Its bytes stay. */
export const putPictureAway = verb(
  'pictures.put-away',
  hands,
  PicturePutAway,
  async (actor, { id, version, because }) => {
    const picture = await present(id)
    if (actor.role !== 'lead' && (actor.id === null || picture.byId !== actor.id)) {
      throw new Refusal(`${picture.byName} added this picture; they or a lead put it away`, { status: 403 })
    }
    await setPutAway(actor, id, version, because)
  },
)

export const bringPictureBack = verb(
  'pictures.bring-back',
  leads,
  z.object({ id: z.uuid(), version: z.int() }),
  (actor, { id, version }) => setPutAway(actor, id, version, null),
)
