import * as z from 'zod'
import { freeText, text, uuid } from './fields'

/** A line of what a part was laid from; a lot that Stores doesn't know is named only. */
export const BuiltPartLot = z
  .object({ lotId: uuid().nullable(), material: freeText(120), lot: freeText(80) })
  .refine((row) => row.lotId !== null || row.material !== '', {
    path: ['material'],
    error: () => 'Choose a lot of Stores, or name the material',
  })
  .refine((row) => row.lotId !== null || row.lot !== '', {
    path: ['lot'],
    error: () => 'Choose a lot of Stores, or name the lot',
  })
export type BuiltPartLot = z.output<typeof BuiltPartLot>

/** What people add to a part that a pull has put into the book. Its serial is the pull's. */
export const BuiltPartInput = z.object({
  id: uuid(),
  partId: uuid().nullable(),
  cure: freeText(500),
  whereNow: freeText(200),
  note: freeText(),
  lots: z.array(BuiltPartLot).max(60),
})
export type BuiltPartInput = z.output<typeof BuiltPartInput>

/** A serial as people write it, compared without case or outer blanks. */
export const Serial = z.object({ serial: text('a serial', 80) })
