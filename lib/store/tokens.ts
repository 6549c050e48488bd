import 'server-only'
import { createHash } from 'node:crypto'
import type { Actor } from '#lib/schema/actor'
import type { Role } from '#lib/schema/shop'
import { db } from './db'

/** The actor behind a bearer token; null when there is none or it was ended. */
export async function actorByToken(token: string): Promise<Actor | null> {
  const tokenHash = createHash('sha256').update(token).digest('hex')
  const { prisma } = db()
  const row = await prisma.apiToken.findUnique({ where: { tokenHash } })
  if (!row || row.endedAt) return null
  await prisma.apiToken.update({ where: { id: row.id }, data: { lastUsedAt: new Date() } })
  return { id: null, name: `token ${row.name}`, role: row.role as Role }
}
