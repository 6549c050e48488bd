import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { PartInput } from '#lib/schema/mould'
import { db } from './db'
import { changeSeen, createOnce } from './once'

export type StoredPart = PartInput & { readonly version: number }

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

/** What a part is made in, and how many of it the pulls have named. */
export interface PartRow extends StoredPart {
  readonly moulds: readonly { readonly code: string; readonly name: string }[]
  readonly sets: readonly { readonly code: string; readonly name: string }[]
  readonly built: number
}

export async function listPartRows(): Promise<PartRow[]> {
  const ofIt = { select: { code: true, name: true }, orderBy: { code: 'asc' } } as const
  const rows = await db().prisma.part.findMany({
    orderBy: { code: 'asc' },
    include: { moulds: ofIt, sets: ofIt, _count: { select: { builtParts: true } } },
  })
  return rows.map(({ _count, ...row }) => ({ ...row, built: _count.builtParts }))
}

/** By its code, compared without case or outer blanks. */
export async function partByCode(code: string): Promise<{ id: string; code: string; name: string } | null> {
  const [row] = await db().sql<{ id: string; code: string; name: string }[]>`
    select id, code, name from part where lower(btrim(code)) = lower(btrim(${code}))`
  return row ?? null
}
