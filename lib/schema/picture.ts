import * as z from 'zod'
import { choice, freeText, isoDate, text, uuid } from './fields'

export const pictureKinds = ['photo', 'drawing'] as const
export type PictureKind = (typeof pictureKinds)[number]

/** What a picture may be with; one entry of a mould's or a pattern's log beside it. */
export const pictureSubjects = ['mould', 'pattern', 'set', 'part'] as const
export type PictureSubjectKind = (typeof pictureSubjects)[number]

export interface PictureSubject {
  readonly on: PictureSubjectKind
  readonly onId: string
}

/** What is taken of a picture, and what is kept. Bytes, pixels in all, pixels of a side. */
export const pictureLimits = {
  mostBytes: 25_000_000,
  mostPixels: 60_000_000,
  leastSidePx: 16,
  fullSidePx: 2560,
  smallSidePx: 480,
  filesAtOnce: 10,
} as const

export const pictureSizes = ['full', 'small'] as const
export type PictureSize = (typeof pictureSizes)[number]

const caption = () => freeText(500)
/** "floor from the front": the same name each time lays the years side by side. */
const view = () => freeText(80)

/** A photo or drawing as it is sent, beside its bytes. */
export const NewPicture = z.object({
  id: uuid(),
  kind: choice(pictureKinds),
  on: choice(pictureSubjects),
  onId: uuid(),
  entryId: uuid().nullable(),
  caption: caption(),
  view: view(),
  /** Null: the day that the photo itself names, else today. */
  takenOn: isoDate().nullable(),
})
export type NewPicture = z.output<typeof NewPicture>

export const PictureChange = z.object({
  id: uuid(),
  version: z.int(),
  caption: caption(),
  view: view(),
  takenOn: isoDate(),
})
export type PictureChange = z.output<typeof PictureChange>

export const PicturePutAway = z.object({
  id: uuid(),
  version: z.int(),
  because: text('a because', 300),
})
