import 'server-only'
import { createHash } from 'node:crypto'
import type { Actor } from '#lib/schema/actor'
import type { Role } from '#lib/schema/shop'
import type { NewToken } from '#lib/schema/tokens'
import { db } from './db'
import { Refusal } from './errors'
import { audit, createOnce } from './once'

/** The use of a token is noted at most once in so long: reading must not write each time. */
const notedEveryMs = 60_000

const hashOf = (token: string) => createHash('sha256').update(token).digest('hex')

/** The actor behind a bearer token; null when there is none or it was ended. */
export async function actorByToken(token: string): Promise<Actor | null> {
  const { prisma } = db()
  const row = await prisma.apiToken.findUnique({ where: { tokenHash: hashOf(token) } })
  if (!row || row.endedAt) return null
  const now = new Date()
  const due = new Date(now.getTime() - notedEveryMs)
  if (row.lastUsedAt === null || row.lastUsedAt <= due) {
    await prisma.apiToken.updateMany({
      where: { id: row.id, OR: [{ lastUsedAt: null }, { lastUsedAt: { lte: due } }] },
      data: { lastUsedAt: now },
    })
  }
  return { id: null, name: `token ${row.name}`, role: row.role as Role }
}

export interface StoredToken {
  readonly id: string
  readonly name: string
  readonly role: Role
  /** Blank where the command line made it. */
  readonly createdByName: string
  /** Whoever made it has left the shop. */
  readonly makerHasLeft: boolean
  readonly createdAt: string
  readonly lastUsedAt: string | null
  readonly endedAt: string | null
}

/** All tokens, living ones first, the newest first. */
export async function listTokens(): Promise<StoredToken[]> {
  const rows = await db().sql`
    select id, name, role, created_by_name as "createdByName", to_json(created_at) #>> '{}' as "createdAt",
      to_json(last_used_at) #>> '{}' as "lastUsedAt", to_json(ended_at) #>> '{}' as "endedAt",
      coalesce((select bool_and(p.ended_at is not null) from person p where p.name = created_by_name), false) as "makerHasLeft"
    from api_token order by ended_at desc nulls first, created_at desc, id`
  return rows as unknown as StoredToken[]
}

/** Makes a token. Sent again with the same token it is answered alike. */
export async function makeToken(actor: Actor, { token, ...named }: NewToken): Promise<void> {
  const tokenHash = hashOf(token)
  const madeNow = await createOnce(actor, 'token', named.id, named, (tx) =>
    tx.apiToken.create({ data: { ...named, tokenHash, createdByName: actor.name } }),
  )
  if (madeNow) return
  const stored = await db().prisma.apiToken.findUnique({ where: { id: named.id } })
  if (stored?.tokenHash !== tokenHash) {
    throw new Refusal('This token was made already and shown then. Load the page again to make another.', {
      status: 409,
    })
  }
}

/** Ends a token at once and for good; one that was ended before stays as it was. */
export async function endToken(actor: Actor, id: string): Promise<void> {
  await db().prisma.$transaction(async (tx) => {
    const row = await tx.apiToken.findUnique({ where: { id } })
    if (!row) throw new Refusal('There is no such token', { status: 404 })
    const { count } = await tx.apiToken.updateMany({
      where: { id, endedAt: null },
      data: { endedAt: new Date() },
    })
    if (count > 0) await audit(tx, actor, 'ended', 'token', id, { name: row.name, role: row.role }, null)
  })
}
