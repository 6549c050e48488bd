import * as z from 'zod'
import { choice, code, count, freeText, text, uuid } from './fields'
import { massAndSize } from './mould'

export const hardwareKinds = ['flange', 'pin', 'bolt', 'loose block', 'seal', 'lifting', 'other'] as const
export type HardwareKind = (typeof hardwareKinds)[number]

/** A line of what holds a split mould together and what must not be lost between two uses. */
export const SetHardware = z.object({
  kind: choice(hardwareKinds),
  name: text('what it is', 120),
  count: count({ min: 1, max: 10_000 }),
  size: freeText(60),
  joins: freeText(120),
  place: freeText(200),
  note: freeText(500),
})
export type SetHardware = z.output<typeof SetHardware>

/** A split mould as a whole: closed and bolted, with its loose blocks. Its pieces are moulds and name it. */
export const MouldSetInput = z.object({
  id: uuid(),
  code: code('a code, for example LH-SET'),
  name: text('the name of the split mould'),
  partId: uuid().nullable(),
  ...massAndSize(),
  liftingPoints: freeText(1000),
  backing: freeText(1000),
  assembly: freeText(4000),
  note: freeText(),
  hardware: z.array(SetHardware).max(200),
})
export type MouldSetInput = z.output<typeof MouldSetInput>

/** A mould becomes a piece of a split mould. `version` is the mould's. */
export const AddPiece = z.object({
  setId: uuid(),
  mouldId: uuid(),
  pieceNo: z
    .int({ error: () => 'Give the number of the piece' })
    .min(1)
    .max(99),
  version: z.int(),
})
export type AddPiece = z.output<typeof AddPiece>

export const TakePieceOut = AddPiece.omit({ pieceNo: true })
export type TakePieceOut = z.output<typeof TakePieceOut>
