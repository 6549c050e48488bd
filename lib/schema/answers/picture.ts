import * as z from 'zod'
import { pictureKinds } from '../picture'

/** A photo or drawing as the API tells it. */
export const PictureAnswer = z.object({
  id: z.string(),
  kind: z.enum(pictureKinds),
  mimeType: z.enum(['image/jpeg', 'image/png', 'application/pdf']),
  widthPx: z.int().nullable().meta({ description: 'Of the full picture, turned right; null for a PDF' }),
  heightPx: z.int().nullable(),
  sizeBytes: z.int(),
  takenOn: z.string().meta({ description: 'Calendar date in the shop that it shows' }),
  caption: z.string(),
  view: z.string().meta({ description: 'Name of a fixed view; blank for none' }),
  entryId: z.string().nullable().meta({ description: 'The entry of the log that it stands beside' }),
  byName: z.string(),
  writtenAt: z.string(),
  version: z.int(),
  fullPath: z.string().meta({ description: 'Where its bytes are, for who is signed in' }),
  smallPath: z.string().nullable(),
})

export const PictureListAnswer = z.object({ pictures: z.array(PictureAnswer) })

/** A picture just sent. */
export const AddedPictureAnswer = PictureAnswer.extend({
  notices: z.array(z.string()).meta({ description: 'What was done to it that the sender may not expect' }),
})
