import 'server-only'
import type { PullOfPiece } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import type { AddPiece, HardwareKind, MouldSetInput, TakePieceOut } from '#lib/schema/mould-set'
import { db, type Transaction } from './db'
import type { SetHardwareModel } from './generated/models'
import { changeSeen, createOnce } from './once'
import type { StoredPart } from './parts'

/** A mould as a piece of a split mould. */
export interface SetPiece {
  readonly id: string
  readonly code: string
  readonly name: string
  readonly pieceNo: number
  readonly massKg: number | null
  readonly canBeMadeAgain: boolean
  readonly pattern: {
    readonly code: string
    readonly available: boolean
    readonly canBeMadeAgain: boolean
  } | null
  readonly demoulding: string
  readonly doNots: string
  readonly version: number
}

export interface StoredSet extends MouldSetInput {
  readonly version: number
  readonly part: StoredPart | null
  /** In the order of their numbers. */
  readonly pieces: readonly SetPiece[]
}

const whole = {
  part: true,
  hardware: { orderBy: { position: 'asc' } },
  moulds: {
    orderBy: { pieceNo: 'asc' },
    select: {
      id: true,
      code: true,
      name: true,
      pieceNo: true,
      massKg: true,
      canBeMadeAgain: true,
      pattern: { select: { code: true, available: true, canBeMadeAgain: true } },
      demoulding: true,
      doNots: true,
      version: true,
    },
  },
} as const

/** What is edited of a split mould, as a change keeps it before and after. */
async function find(tx: Transaction, id: string) {
  const row = await tx.mouldSet.findUnique({ where: { id }, include: { hardware: whole.hardware } })
  return row && { ...row, hardware: row.hardware.map(toLine) }
}

function toLine({ setId: _set, position: _position, kind, ...line }: SetHardwareModel) {
  return { ...line, kind: kind as HardwareKind }
}

function toSet({ moulds, hardware, ...row }: NonNullable<Awaited<ReturnType<typeof findRow>>>): StoredSet {
  return {
    ...row,
    hardware: hardware.map(toLine),
    pieces: moulds.map(({ pieceNo, ...piece }) => ({ ...piece, pieceNo: pieceNo ?? 0 })),
  }
}

const findRow = (id: string) => db().prisma.mouldSet.findUnique({ where: { id }, include: whole })

export async function listSets(): Promise<StoredSet[]> {
  const rows = await db().prisma.mouldSet.findMany({ orderBy: { code: 'asc' }, include: whole })
  return rows.map(toSet)
}

/** By its code, compared without case or outer blanks. */
export async function readSetByCode(code: string): Promise<StoredSet | null> {
  const [found] = await db().sql`select id from mould_set where lower(btrim(code)) = lower(btrim(${code}))`
  if (!found) return null
  const row = await findRow(found.id as string)
  return row && toSet(row)
}

const numbered = (setId: string, hardware: MouldSetInput['hardware']) =>
  hardware.map((line, index) => ({ ...line, setId, position: index + 1 }))

export const addSet = (actor: Actor, input: MouldSetInput) =>
  createOnce(actor, 'mould-set', input.id, input, async (tx) => {
    const { hardware, ...columns } = input
    await tx.mouldSet.create({ data: columns })
    await tx.setHardware.createMany({ data: numbered(input.id, hardware) })
  })

export const changeSet = (actor: Actor, sawVersion: number, { id, hardware, ...columns }: MouldSetInput) =>
  changeSeen(
    actor,
    'mould-set',
    id,
    (tx) => find(tx, id),
    (tx) =>
      tx.mouldSet.updateMany({
        where: { id, version: sawVersion },
        data: { ...columns, version: { increment: 1 } },
      }),
    async (tx) => {
      await tx.setHardware.deleteMany({ where: { setId: id } })
      await tx.setHardware.createMany({ data: numbered(id, hardware) })
    },
  )

/** A mould becomes a piece, or leaves: its own record changes, seen in a version like any other change of it. */
const changePiece = (
  actor: Actor,
  { mouldId, version }: TakePieceOut,
  from: string | null,
  to: { readonly setId: string | null; readonly pieceNo: number | null },
) =>
  changeSeen(
    actor,
    'mould',
    mouldId,
    (tx) => tx.mould.findUnique({ where: { id: mouldId } }),
    (tx) =>
      tx.mould.updateMany({
        where: { id: mouldId, version, setId: from },
        data: { ...to, version: { increment: 1 } },
      }),
  )

export const addPiece = (actor: Actor, { setId, pieceNo, ...mould }: AddPiece) =>
  changePiece(actor, { setId, ...mould }, null, { setId, pieceNo })

export const takePieceOut = (actor: Actor, input: TakePieceOut) =>
  changePiece(actor, input, input.setId, { setId: null, pieceNo: null })

/** Moulds that are no piece of any split mould, to be chosen as one. */
export const freeMoulds = (): Promise<{ id: string; code: string; name: string; version: number }[]> =>
  db().prisma.mould.findMany({
    where: { setId: null },
    orderBy: { code: 'asc' },
    select: { id: true, code: true, name: true, version: true },
  })

/** Pulls off some moulds, oldest first, with what tells which of them gave the same part. */
export async function pullsOfPieces(mouldIds: readonly string[]): Promise<PullOfPiece[]> {
  return db().sql<PullOfPiece[]>`
    select p.id, p.mould_id as "mouldId", p.done_on as "doneOn", p.data ->> 'went' as went, p.cleared,
      coalesce(nullif(lower(btrim(p.data ->> 'serial')), ''),
        max(nullif(lower(btrim(p.data ->> 'serial')), '')) over (partition by coalesce(e.group_id, e.id)), e.group_id::text) as "partKey"
    from pull_entry p join effective_entry e on e.id = p.id
    where p.mould_id = any(${[...mouldIds]}::uuid[])
    order by p.done_on, p.day_order, p.written_at, p.id`
}

/** Patches laid on some moulds, oldest first. */
export async function patchesOfPieces(
  mouldIds: readonly string[],
): Promise<{ mouldId: string; number: number; doneOn: string }[]> {
  return db().sql<{ mouldId: string; number: number; doneOn: string }[]>`
    select mould_id as "mouldId", (data ->> 'number')::int as number, done_on as "doneOn" from effective_entry
    where kind = 'patch-laid' and mould_id = any(${[...mouldIds]}::uuid[])
    order by done_on, day_order, written_at, id`
}
