import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { PatternInput } from '#lib/schema/mould'
import { db, type Transaction } from './db'
import { changeSeen, createOnce } from './once'

export type StoredPattern = PatternInput & { readonly version: number }

/** A mould that came off a pattern: when, and in which state the pattern was. */
export interface MouldOff {
  readonly id: string
  readonly code: string
  readonly name: string
  readonly madeWhen: string
  readonly patternState: string
  readonly canBeMadeAgain: boolean
}

export interface PatternRow extends StoredPattern {
  /** Where its last move has put it; null while no move is written. */
  readonly movedTo: { readonly place: string; readonly doneOn: string } | null
  readonly moulds: readonly MouldOff[]
}

const withMoulds = {
  moulds: {
    select: { id: true, code: true, name: true, madeWhen: true, patternState: true, canBeMadeAgain: true },
    orderBy: { code: 'asc' },
  },
} as const

/** What each pattern's last move says, by the pattern's id. */
async function places(ids: readonly string[] | null): Promise<Map<string, PatternRow['movedTo']>> {
  const { sql } = db()
  const rows = await sql<{ id: string; place: string; doneOn: string }[]>`
    select pattern_id as id, place, done_on as "doneOn" from pattern_place
    where ${ids === null ? sql`true` : sql`pattern_id = any(${[...ids]}::uuid[])`}`
  return new Map(rows.map(({ id, ...place }) => [id, place]))
}

export async function listPatterns(): Promise<PatternRow[]> {
  const [rows, movedTo] = await Promise.all([
    db().prisma.pattern.findMany({ orderBy: { code: 'asc' }, include: withMoulds }),
    places(null),
  ])
  return rows.map((row) => ({ ...row, movedTo: movedTo.get(row.id) ?? null }))
}

/** By its code, compared without case or outer blanks. */
export async function readPatternByCode(code: string): Promise<PatternRow | null> {
  const [found] = await db().sql`select id from pattern where lower(btrim(code)) = lower(btrim(${code}))`
  if (!found) return null
  const id = found.id as string
  const [row, movedTo] = await Promise.all([
    db().prisma.pattern.findUnique({ where: { id }, include: withMoulds }),
    places([id]),
  ])
  return row && { ...row, movedTo: movedTo.get(id) ?? null }
}

export const addPattern = (actor: Actor, input: PatternInput) =>
  createOnce(actor, 'pattern', input.id, input, (tx) => tx.pattern.create({ data: input }))

const read = (id: string) => (tx: Transaction) => tx.pattern.findUnique({ where: { id } })

export const changePattern = (actor: Actor, sawVersion: number, { id, ...columns }: PatternInput) =>
  changeSeen(actor, 'pattern', id, read(id), (tx) =>
    tx.pattern.updateMany({
      where: { id, version: sawVersion },
      data: { ...columns, version: { increment: 1 } },
    }),
  )
