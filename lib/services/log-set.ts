import 'server-only'
import { createHash } from 'node:crypto'
import * as z from 'zod'
import { beforeLayUp, type Matter, type MouldStanding, mouldStanding } from '#lib/core/log/index'
import { type NewLogEntry, NewSetEntry } from '#lib/schema/log'
import { mouldCounts } from '#lib/store/counts'
import { Refusal } from '#lib/store/errors'
import { appendEntries, entriesOfGroup } from '#lib/store/log'
import { piecesOfSet, type SetPieceName } from '#lib/store/set-pieces'
import { judgeClearance } from './clearance'
import { orderInDay } from './log'
import { shopContext } from './shop'
import { everyone, hands, verb } from './verb'

/**
 * Writes one pull or one clearance on every piece of a split mould, all or none. The id that was sent is the group's;
 * the pieces' ids follow from it, so that a form sent twice is stored once. What was taken from stock is written with
 * the first piece.
 */
export const writeForSet = verb('log.write-set', hands, NewSetEntry, async (actor, sent) => {
  const context = await shopContext()
  const { setId, id, uses, ...rest } = sent
  // Sent again after a piece came or went: the pieces are those of then. What somebody else named this group is not.
  const before = (await entriesOfGroup(id)).filter((entry) => entry.id === pieceEntryId(id, entry.mouldId))
  const pieces = (await piecesOfSet(setId)).filter(
    (piece) => before.length === 0 || before.some((entry) => entry.mouldId === piece.id),
  )
  if (pieces.length === 0) throw new Refusal('This split mould has no pieces yet', { status: 404 })
  const dayOrder = orderInDay(sent, context)
  const entries = pieces.map((piece, index) => {
    const entry = {
      ...rest,
      id: pieceEntryId(id, piece.id),
      mouldId: piece.id,
      areaId: null,
      patchId: null,
      correctsId: null,
      sawVersion: null,
      groupId: id,
      ...(index === 0 && uses ? { uses } : {}),
    } as NewLogEntry
    return entry.kind === 'cleared'
      ? {
          entry,
          dayOrder,
          judge: (sql: Parameters<typeof judgeClearance>[4]) =>
            judgeClearance(actor, entry, dayOrder, context, sql, piece.code),
        }
      : { entry, dayOrder }
  })
  const written = await appendEntries(actor, entries)
  return {
    id,
    entries: entries.map(({ entry }) => ({ mouldId: entry.mouldId, id: entry.id })),
    written: written > 0,
  }
})

/** A piece of a split mould as it stands before the next lay-up. */
export interface PieceBefore extends SetPieceName {
  readonly standing: MouldStanding
  readonly clearedOn: string | null
  readonly matters: readonly Matter[]
}

/** The pieces of a split mould in their order, and what must be settled on each before the next lay-up. */
export const readSetPieces = verb(
  'log.set-pieces',
  everyone,
  z.object({ setId: z.uuid() }),
  async (_actor, { setId }): Promise<PieceBefore[]> => {
    const [context, pieces] = await Promise.all([shopContext(), piecesOfSet(setId)])
    const counts = await mouldCounts(
      pieces.map((piece) => piece.id),
      context.season?.startsOn ?? null,
    )
    return pieces.flatMap((piece) => {
      const counted = counts.get(piece.id)
      if (!counted) return []
      return [
        {
          ...piece,
          standing: mouldStanding(counted),
          clearedOn: counted.clearedOn,
          matters: beforeLayUp(counted, context.shop.rules.upkeep, context.today, context.now),
        },
      ]
    })
  },
)

/** A uuid that follows from the group and the piece (RFC 9562, version 8: the layout is ours). */
export function pieceEntryId(groupId: string, mouldId: string): string {
  const hex = createHash('sha256').update(`${groupId.toLowerCase()} ${mouldId.toLowerCase()}`).digest('hex')
  const variant = ((Number.parseInt(hex.charAt(16), 16) & 0x3) | 0x8).toString(16)
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join('-')
}
