import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { FirstLead, NewPassword, NewPerson, PersonChange } from '#lib/schema/people'
import { defaultShopRules, type Role } from '#lib/schema/shop'
import { auth } from './auth'
import { db, type Transaction } from './db'
import { Refusal } from './errors'
import { audit, changeSeen, createOnce, json } from './once'

export interface StoredPerson {
  readonly id: string
  readonly name: string
  readonly initials: string
  readonly email: string
  readonly role: Role
  readonly ended: boolean
  /** The moment at which the access was ended. */
  readonly endedAt: string | null
  readonly version: number
}

const columns = {
  id: true,
  name: true,
  initials: true,
  email: true,
  role: true,
  endedAt: true,
  version: true,
} as const

function toPerson({
  endedAt,
  role,
  ...row
}: Omit<StoredPerson, 'ended' | 'endedAt' | 'role'> & { endedAt: Date | null; role: string }): StoredPerson {
  return { ...row, role: role as Role, ended: endedAt !== null, endedAt: endedAt?.toISOString() ?? null }
}

export async function listPeople(): Promise<StoredPerson[]> {
  const rows = await db().prisma.person.findMany({
    select: columns,
    orderBy: [{ endedAt: 'desc' }, { name: 'asc' }],
  })
  return rows.map(toPerson)
}

export async function readPerson(id: string): Promise<StoredPerson | null> {
  const row = await db().prisma.person.findUnique({ where: { id }, select: columns })
  return row && toPerson(row)
}

/** Initials by name, for tables: entries keep the full name. */
export async function initialsByName(): Promise<Map<string, string>> {
  const rows = await db().prisma.person.findMany({ select: { name: true, initials: true } })
  return new Map(rows.map((row) => [row.name, row.initials]))
}

async function insertAccount(
  tx: Transaction,
  person: Omit<NewPerson, 'password'>,
  password: string,
): Promise<void> {
  const hash = await (await auth().$context).password.hash(password)
  const { id, name, initials, role } = person
  await tx.person.create({ data: { id, name, initials, role, email: person.email.toLowerCase() } })
  await tx.account.create({ data: { accountId: id, providerId: 'credential', personId: id, password: hash } })
}

export async function addPerson(actor: Actor, { password, ...person }: NewPerson): Promise<boolean> {
  return createOnce(actor, 'person', person.id, person, async (tx) => {
    if (await tx.person.findUnique({ where: { email: person.email.toLowerCase() } })) {
      throw new Refusal('Somebody has this e-mail address already', { fields: { email: 'Already in use' } })
    }
    await insertAccount(tx, person, password)
  })
}

/** Sets up the shop and its first lead; refused as soon as there is anybody. */
export async function addFirstLead(id: string, input: FirstLead): Promise<void> {
  await db().prisma.$transaction(async (tx) => {
    await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext('first lead'))`
    if ((await tx.person.count()) > 0) {
      throw new Refusal('This shop has its first lead already; sign in, or ask the lead to add you', {
        status: 409,
      })
    }
    const { password, code: _code, shopName, timeZone, currency, ...person } = input
    await insertAccount(tx, { ...person, id, role: 'lead' }, password)
    await tx.shop.upsert({
      where: { id: 1 },
      create: { id: 1, name: shopName, timeZone, currency, rules: json(defaultShopRules) },
      update: { name: shopName, timeZone, currency },
    })
    const actor: Actor = { id, name: input.name, role: 'lead' }
    await audit(tx, actor, 'made', 'person', id, null, { ...person, role: 'lead' })
  })
}

export async function hasPeople(): Promise<boolean> {
  return (await db().prisma.person.count()) > 0
}

export async function changePerson(actor: Actor, change: PersonChange): Promise<void> {
  const { id, version, ended, name, initials, role } = change
  await changeSeen(
    actor,
    'person',
    id,
    async (tx) => {
      const row = await tx.person.findUnique({ where: { id }, select: columns })
      return row && toPerson(row)
    },
    (tx) =>
      tx.person.updateMany({
        where: { id, version },
        data: { name, initials, role, ...(ended ? {} : { endedAt: null }), version: { increment: 1 } },
      }),
    async (tx) => {
      // The day on which somebody left stays as it was when only the name is put right later.
      if (ended) await tx.person.updateMany({ where: { id, endedAt: null }, data: { endedAt: new Date() } })
      // Leads are counted one writer at a time, or two could end each other.
      await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext('last lead'))`
      const leads = await tx.person.count({ where: { role: 'lead', endedAt: null } })
      if (leads === 0) throw new Refusal('A shop needs a lead: make somebody else lead first')
      if (ended) await tx.session.deleteMany({ where: { personId: id } })
    },
  )
}

/** A new password ends the person's sessions. */
export async function setPassword(actor: Actor, { id, password }: NewPassword): Promise<void> {
  const hash = await (await auth().$context).password.hash(password)
  await db().prisma.$transaction(async (tx) => {
    const { count } = await tx.account.updateMany({
      where: { personId: id, providerId: 'credential' },
      data: { password: hash },
    })
    if (count === 0) throw new Refusal('There is no such person', { status: 404 })
    await tx.session.deleteMany({ where: { personId: id } })
    await audit(tx, actor, 'set the password', 'person', id, null, null)
  })
}
