import 'server-only'
import { createHash } from 'node:crypto'
import type { Actor } from '#lib/schema/actor'
import { db, type Transaction } from './db'
import { Refusal } from './errors'

/** Fingerprint of what was sent, the same for any order of keys. */
export function contentHash(content: unknown): string {
  return createHash('sha256').update(JSON.stringify(content, sortedKeys)).digest('hex')
}

function sortedKeys(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
}

/**
 * Writes a new record once. Its id was made by whoever sent it: the same id with the same content again changes
 * nothing and is answered alike; with other content it is refused. Answers whether it was written now.
 */
export async function createOnce(
  actor: Actor,
  recordKind: string,
  id: string,
  content: unknown,
  insert: (tx: Transaction) => Promise<unknown>,
): Promise<boolean> {
  const hash = contentHash(content)
  return db().prisma.$transaction(async (tx) => {
    const made = await tx.creation.createMany({
      data: [{ id, recordKind, contentHash: hash }],
      skipDuplicates: true,
    })
    if (made.count === 0) {
      const stored = await tx.creation.findUniqueOrThrow({ where: { id } })
      if (stored.contentHash === hash && stored.recordKind === recordKind) return false
      throw new Refusal('This was already sent with other content. Open it again and change it there.', {
        status: 409,
        stored: await sentFirst(tx, stored.recordKind, id),
      })
    }
    await insert(tx)
    await audit(tx, actor, 'made', recordKind, id, null, content)
    return true
  })
}

/** What was sent when a record was made, as the audit has kept it. */
async function sentFirst(
  tx: Transaction,
  recordKind: string,
  recordId: string,
): Promise<Record<string, unknown>> {
  const made = await tx.audit.findFirst({
    where: { recordKind, recordId, act: 'made' },
    orderBy: { id: 'asc' },
  })
  const content = made?.after
  return typeof content === 'object' && content !== null && !Array.isArray(content)
    ? { ...content }
    : { id: recordId }
}

/** One line of the audit: who, when, what it was before and after. */
export async function audit(
  tx: Transaction,
  actor: Actor,
  act: string,
  recordKind: string,
  recordId: string,
  before: unknown,
  after: unknown,
): Promise<void> {
  await tx.audit.create({
    data: {
      byId: actor.id,
      byName: actor.name,
      act,
      recordKind,
      recordId,
      ...(before === null ? {} : { before: json(before) }),
      ...(after === null ? {} : { after: json(after) }),
    },
  })
}

/** A plain copy that fits a json column. */
export function json(value: unknown): object {
  return JSON.parse(JSON.stringify(value))
}

/** A calendar date as the column's type wants it, and back. */
export const dateColumn = (day: string): Date => new Date(`${day}T00:00:00Z`)
export const dayOf = (column: Date): string => column.toISOString().slice(0, 10)

interface Versioned {
  readonly version: number
}

/**
 * Changes a record that the writer saw in a certain version. When somebody else was faster nothing is written, and
 * the refusal carries what is stored now.
 */
export async function changeSeen<Stored extends Versioned>(
  actor: Actor,
  recordKind: string,
  id: string,
  read: (tx: Transaction) => Promise<Stored | null>,
  write: (tx: Transaction) => Promise<{ count: number }>,
  after?: (tx: Transaction) => Promise<unknown>,
): Promise<void> {
  await db().prisma.$transaction(async (tx) => {
    const before = await read(tx)
    if (!before) throw new Refusal('Not found; it may never have been saved', { status: 404 })
    const { count } = await write(tx)
    if (count === 0) {
      const now = (await read(tx)) ?? before
      const { version, ...values } = now
      throw new Refusal(
        'Somebody else changed this meanwhile. Nothing of yours was saved yet: look and decide.',
        {
          status: 409,
          current: { version, values },
        },
      )
    }
    if (after) await after(tx)
    await audit(tx, actor, 'changed', recordKind, id, before, await read(tx))
  })
}
