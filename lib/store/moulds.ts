import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { MouldInput, MouldSetInput, PartInput, PatternInput } from '#lib/schema/mould'
import { db } from './db'
import type { MouldModel } from './generated/models'
import { changeSeen, createOnce } from './once'

export type StoredPart = PartInput & { readonly version: number }
export type StoredPattern = PatternInput & { readonly version: number }
export type StoredSet = MouldSetInput

export interface StoredMould extends MouldInput {
  readonly version: number
  readonly part: StoredPart | null
  readonly pattern: StoredPattern | null
  readonly set: (StoredSet & { readonly pieces: number }) | null
  readonly stackCode: string | null
}

export const listParts = (): Promise<StoredPart[]> => db().prisma.part.findMany({ orderBy: { code: 'asc' } })

export const addPart = (actor: Actor, input: PartInput) =>
  createOnce(actor, 'part', input.id, input, (tx) => tx.part.create({ data: input }))

export const changePart = (actor: Actor, sawVersion: number, { id, ...columns }: PartInput) =>
  changeSeen(
    actor,
    'part',
    id,
    (tx) => tx.part.findUnique({ where: { id } }),
    (tx) =>
      tx.part.updateMany({
        where: { id, version: sawVersion },
        data: { ...columns, version: { increment: 1 } },
      }),
  )

export async function listPatterns(): Promise<
  (StoredPattern & { moulds: { id: string; code: string; name: string }[] })[]
> {
  return db().prisma.pattern.findMany({
    orderBy: { code: 'asc' },
    include: { moulds: { select: { id: true, code: true, name: true }, orderBy: { code: 'asc' } } },
  })
}

export const addPattern = (actor: Actor, input: PatternInput) =>
  createOnce(actor, 'pattern', input.id, input, (tx) => tx.pattern.create({ data: input }))

export const changePattern = (actor: Actor, sawVersion: number, { id, ...columns }: PatternInput) =>
  changeSeen(
    actor,
    'pattern',
    id,
    (tx) => tx.pattern.findUnique({ where: { id } }),
    (tx) =>
      tx.pattern.updateMany({
        where: { id, version: sawVersion },
        data: { ...columns, version: { increment: 1 } },
      }),
  )

export const listSets = (): Promise<StoredSet[]> =>
  db().prisma.mouldSet.findMany({ orderBy: { code: 'asc' } })

export const addSet = (actor: Actor, input: MouldSetInput) =>
  createOnce(actor, 'mould-set', input.id, input, (tx) => tx.mouldSet.create({ data: input }))

const withNames = {
  part: true,
  pattern: true,
  set: { include: { _count: { select: { moulds: true } } } },
  stack: { select: { code: true } },
} as const

type MouldRow = MouldModel & {
  part: StoredPart | null
  pattern: StoredPattern | null
  set: (StoredSet & { _count: { moulds: number } }) | null
  stack: { code: string } | null
}

function toMould({ set, stack, createdAt: _createdAt, ...row }: MouldRow): StoredMould {
  return {
    ...row,
    hand: row.hand as MouldInput['hand'],
    set: set && { id: set.id, code: set.code, name: set.name, note: set.note, pieces: set._count.moulds },
    stackCode: stack?.code ?? null,
  }
}

export async function listMoulds(): Promise<StoredMould[]> {
  const rows = await db().prisma.mould.findMany({ orderBy: { code: 'asc' }, include: withNames })
  return rows.map(toMould)
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
