import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { MouldInput } from '#lib/schema/mould'
import { db } from './db'
import type { MouldModel } from './generated/models'
import { changeSeen, createOnce } from './once'
import type { StoredPart } from './parts'
import type { StoredPattern } from './patterns'

/** The split mould that a piece belongs to, and how many pieces it has. */
export interface SetOfPiece {
  readonly id: string
  readonly code: string
  readonly name: string
  readonly pieces: number
}

export interface StoredMould extends MouldInput {
  readonly version: number
  readonly part: StoredPart | null
  readonly pattern: StoredPattern | null
  readonly set: SetOfPiece | null
  readonly stackCode: string | null
}

const withNames = {
  part: true,
  pattern: true,
  set: { select: { id: true, code: true, name: true, _count: { select: { moulds: true } } } },
  stack: { select: { code: true } },
} as const

type MouldRow = MouldModel & {
  part: StoredPart | null
  pattern: StoredPattern | null
  set: { id: string; code: string; name: string; _count: { moulds: number } } | null
  stack: { code: string } | null
}

function toMould({ set, stack, createdAt: _createdAt, ...row }: MouldRow): StoredMould {
  return {
    ...row,
    hand: row.hand as MouldInput['hand'],
    set: set && { id: set.id, code: set.code, name: set.name, pieces: set._count.moulds },
    stackCode: stack?.code ?? null,
  }
}

/** Some moulds by their ids. */
export async function listMouldsById(ids: readonly string[]): Promise<ReadonlyMap<string, StoredMould>> {
  const rows = await db().prisma.mould.findMany({ where: { id: { in: [...ids] } }, include: withNames })
  return new Map(rows.map((row) => [row.id, toMould(row)]))
}

/** By its code, compared without case or outer blanks. */
export async function readMouldByCode(code: string): Promise<StoredMould | null> {
  // Prisma's "insensitive" is a pattern match, in which the underscore of a code stands for any sign.
  const [found] = await db().sql`select id from mould where lower(btrim(code)) = lower(btrim(${code}))`
  return found ? readMould(found.id as string) : null
}

export async function readMould(id: string): Promise<StoredMould | null> {
  const row = await db().prisma.mould.findUnique({ where: { id }, include: withNames })
  return row && toMould(row)
}

export const addMould = (actor: Actor, input: MouldInput) =>
  createOnce(actor, 'mould', input.id, input, (tx) => tx.mould.create({ data: input }))

export const changeMould = (actor: Actor, sawVersion: number, { id, ...columns }: MouldInput) =>
  changeSeen(
    actor,
    'mould',
    id,
    (tx) => tx.mould.findUnique({ where: { id } }),
    (tx) =>
      tx.mould.updateMany({
        where: { id, version: sawVersion },
        data: { ...columns, version: { increment: 1 } },
      }),
  )
