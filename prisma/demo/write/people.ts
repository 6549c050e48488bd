import { readFileSync } from 'node:fs'
import * as z from 'zod'
import type { Actor } from '#lib/schema/actor'
import { FirstLead, NewPerson } from '#lib/schema/people'
import { addPerson } from '#lib/services/people'
import { saveSettings } from '#lib/services/shop'
import { db } from '#lib/store/db'
import { createOnce, dateColumn } from '#lib/store/once'
import { addFirstLead } from '#lib/store/people'
import { readShop } from '#lib/store/shop'
import { idOf } from '../base/ids'
import { accountPeople, type DemoPerson, leavers, personOf, type Who } from '../data/people'
import { address, seasons, shopSettings } from '../data/shop'

const Secrets = z.object({ demoPasswords: z.array(z.object({ email: z.string(), password: z.string() })) })

/** Who acts in the story. */
export function actorOf(who: Who): Actor {
  const { id, name, role } = personOf(who)
  return { id, name, role }
}

/** The passwords that the start made, by e-mail address. */
export function readPasswords(path: string | undefined): ReadonlyMap<string, string> {
  if (!path)
    throw new Error(
      'MOULDWRIGHT_SECRETS is not set: it names the file with the passwords of the demo accounts',
    )
  const read = Secrets.safeParse(JSON.parse(readFileSync(path, 'utf8')))
  if (!read.success) throw new Error(`${path} has no demoPasswords: [{ name, email, role, password }]`)
  return new Map(read.data.demoPasswords.map(({ email, password }) => [email, password]))
}

/** The shop with its first lead, the others, and those who have left. */
export async function writeShop(passwords: ReadonlyMap<string, string>): Promise<void> {
  const withPassword = (person: DemoPerson) => {
    const password = passwords.get(person.email)
    if (!password) throw new Error(`No password for ${person.email} among the demoPasswords`)
    return { ...person, password }
  }
  // All passwords are asked for before anything is written.
  const [firstLead, ...others] = accountPeople.map(withPassword)
  if (firstLead?.role !== 'lead') throw new Error('The first of accounts.json must be a lead')
  const { id, ...lead } = firstLead
  await addFirstLead(id, FirstLead.parse({ ...lead, ...shopSettings, code: 'demo' }))
  const { prisma } = db()
  await prisma.shop.update({ where: { id: 1 }, data: { isDemo: true } })
  const actor: Actor = { id, name: firstLead.name, role: firstLead.role }
  const shop = await readShop()
  if (!shop) throw new Error('The shop was not written')
  const { isDemo: _isDemo, ...settings } = shop
  await saveSettings(actor, { ...settings, address })
  for (const person of others) await addPerson(actor, NewPerson.parse(person))
  for (const { endedAt, ...person } of leavers) {
    // No account: a leaver has no password and can't sign in.
    await createOnce(actor, 'person', person.id, person, (tx) =>
      tx.person.create({ data: { ...person, endedAt } }),
    )
  }
  await prisma.season.createMany({
    data: seasons.map(({ name, startsOn, endsOn }) => ({
      id: idOf(`season/${name}`),
      name,
      startsOn: dateColumn(startsOn),
      endsOn: dateColumn(endsOn),
    })),
  })
}
