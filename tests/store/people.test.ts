import { createHash, randomUUID } from 'node:crypto'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { FirstLead } from '#lib/schema/people'
import { readDoor, setUpShop } from '#lib/services/door'
import { writeEntry } from '#lib/services/log'
import { addPerson, changePerson, listPeople, setPassword } from '#lib/services/people'
import { readSettings, saveSettings } from '#lib/services/shop'
import { auth } from '#lib/store/auth'
import { db } from '#lib/store/db'
import { addFirstLead, readPerson } from '#lib/store/people'
import { actorByToken } from '#lib/store/tokens'
import { signedInBy } from '#lib/web/signed-in'
import { ada, aMould, emptyBook, entry, firstLead, password, refusal } from './book'

emptyBook()

const folder = mkdtempSync(join(tmpdir(), 'first-lead-'))
afterAll(() => {
  delete process.env.MOULDWRIGHT_SECRETS
})

describe('the first lead', () => {
  test('nobody is there: the door says so', async () => {
    expect(await readDoor()).toEqual({ setUp: false, shopName: '', isDemo: false })
  })

  test('needs the code that the start printed', async () => {
    delete process.env.MOULDWRIGHT_SECRETS
    expect((await refusal(setUpShop({ ...firstLead, code: '' }))).fields).toHaveProperty('code')
    process.env.MOULDWRIGHT_SECRETS = join(folder, 'secrets.json')
    writeFileSync(process.env.MOULDWRIGHT_SECRETS, JSON.stringify({ firstLeadCode: 'AB-CD' }))
    expect((await refusal(setUpShop({ ...firstLead, code: 'AB-CE' }))).fields).toHaveProperty('code')
    expect((await refusal(setUpShop({ ...firstLead, code: '' }))).fields).toHaveProperty('code')
  })

  test("a zone and a currency that don't exist never get as far as the shop", () => {
    const faults = FirstLead.safeParse({ ...firstLead, timeZone: 'Moon/Crater', currency: 'euro' }).error
      ?.issues
    expect(new Set(faults?.map((issue) => issue.path.join('.')))).toEqual(new Set(['currency', 'timeZone']))
  })

  test('only once, also when ten try at the same moment', async () => {
    const tries = await Promise.allSettled(
      Array.from({ length: 10 }, (_, index) =>
        addFirstLead(ada.id ?? '', { ...firstLead, email: `lead${index}@shop.example` }),
      ),
    )
    expect(tries.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    for (const each of tries.filter((one) => one.status === 'rejected')) {
      expect(each.reason).toMatchObject({ name: 'Refusal', status: 409 })
    }
    expect(await listPeople(ada, {})).toHaveLength(1)
    expect(await readDoor()).toMatchObject({ setUp: true, shopName: 'Test shop' })
    expect((await refusal(setUpShop({ ...firstLead, code: 'ab-cd ' }))).status).toBe(409)
  })
})

async function aPerson(role: 'lead' | 'laminator' | 'viewer') {
  const id = randomUUID()
  const email = `${id}@shop.example`
  await addPerson(ada, { id, name: `P ${id.slice(0, 4)}`, initials: 'PP', email, role, password })
  return { id, email }
}

/** Signs in as the form does, and gives the headers that a browser would send from then on. */
async function signIn(email: string, word = password): Promise<Headers> {
  const answer = await auth().api.signInEmail({ body: { email, password: word }, asResponse: true })
  if (!answer.ok) throw new Error(`refused with ${answer.status}`)
  const cookie = answer.headers
    .getSetCookie()
    .map((each) => each.split(';')[0])
    .join('; ')
  return new Headers({ cookie })
}

const versionOf = async (id: string) => (await readPerson(id))?.version ?? 0

describe('signing in', () => {
  test('with the right password; the e-mail address in any case', async () => {
    const { id, email } = await aPerson('laminator')
    const signed = await signedInBy(await signIn(email.toUpperCase()))
    expect(signed).toMatchObject({ id, role: 'laminator', initials: 'PP' })
  })

  test('a wrong password and a forged cookie are nobody', async () => {
    const { email } = await aPerson('viewer')
    await expect(signIn(email, 'not the right sentence')).rejects.toThrow('401')
    expect(await signedInBy(new Headers({ cookie: 'better-auth.session_token=forged.token' }))).toBeNull()
    expect(await signedInBy(new Headers())).toBeNull()
  })

  test('nobody signs up by himself', async () => {
    const body = { email: 'me@elsewhere.example', password, name: 'Me' }
    await expect(auth().api.signUpEmail({ body: body as never })).rejects.toThrow()
    expect((await listPeople(ada, {})).some((person) => person.email === body.email)).toBe(false)
  })

  test('a role that changes counts for the session that is there', async () => {
    const { id, email } = await aPerson('viewer')
    const headers = await signIn(email)
    await changePerson(ada, { id, version: 1, name: 'V', initials: 'V', role: 'laminator', ended: false })
    expect(await signedInBy(headers)).toMatchObject({ role: 'laminator', name: 'V' })
  })
})

describe('somebody who leaves', () => {
  test("is signed out at once and doesn't sign in again; the name stays on the entries", async () => {
    const { id, email } = await aPerson('laminator')
    const headers = await signIn(email)
    const person = await readPerson(id)
    if (!person) throw new Error('nobody')
    const mould = await aMould({ stackId: null })
    await writeEntry({ id, name: person.name, role: 'laminator' }, entry(mould.id, 'pull'))
    await changePerson(ada, { ...person, ended: true })
    expect(await signedInBy(headers)).toBeNull()
    await expect(signIn(email)).rejects.toThrow()
    const [row] = await db().sql`select count(*)::int as sessions from session where person_id = ${id}`
    expect(row?.sessions).toBe(0)
    const [written] = await db().sql`select by_name from log_entry where by_id = ${id}`
    expect(written?.by_name).toBe(person.name)
    await changePerson(ada, { ...person, ended: false, version: 2 })
    expect(await signedInBy(await signIn(email))).toMatchObject({ id })
  })

  test('a new password ends the sessions, and the old one no longer opens', async () => {
    const { id, email } = await aPerson('viewer')
    const headers = await signIn(email)
    await setPassword(ada, { id, password: 'another long sentence' })
    expect(await signedInBy(headers)).toBeNull()
    await expect(signIn(email)).rejects.toThrow('401')
    expect(await signedInBy(await signIn(email, 'another long sentence'))).toMatchObject({ id })
    expect(
      (await refusal(setPassword(ada, { id: randomUUID(), password: 'another long sentence' }))).status,
    ).toBe(404)
  })
})

describe('leads', () => {
  test('the last one is not ended, nor made something else', async () => {
    const lead = await readPerson(ada.id ?? '')
    if (!lead) throw new Error('no lead')
    for (const change of [{ ended: true }, { role: 'viewer' as const }]) {
      const refused = await refusal(changePerson(ada, { ...lead, ...change }))
      expect(refused.message).toBe('A shop needs a lead: make somebody else lead first')
    }
    expect(await readPerson(lead.id)).toEqual(lead)
  })

  test('two leads who end each other at once: one stays', async () => {
    const other = await aPerson('lead')
    const people = await Promise.all([ada.id ?? '', other.id].map(readPerson))
    const tries = await Promise.allSettled(
      people.map((person) =>
        person ? changePerson(ada, { ...person, ended: true }) : Promise.reject(new Error('nobody')),
      ),
    )
    expect(tries.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    const left = (await listPeople(ada, {})).filter((person) => person.role === 'lead' && !person.ended)
    expect(left).toHaveLength(1)
    // The tests go on with the lead that everything else is written by.
    if (left[0]?.id !== ada.id) {
      const lead = await readPerson(ada.id ?? '')
      if (lead) await changePerson(ada, { ...lead, ended: false })
    }
  })
})

describe('people', () => {
  test('sent twice: one person; other content: refused without showing a password', async () => {
    const id = randomUUID()
    const person = {
      id,
      name: 'Twin',
      initials: 'TW',
      email: `${id}@shop.example`,
      role: 'viewer' as const,
      password,
    }
    await addPerson(ada, person)
    await addPerson(ada, person)
    const refused = await refusal(addPerson(ada, { ...person, name: 'Other' }))
    expect(refused.stored).toMatchObject({ name: 'Twin' })
    expect(JSON.stringify(refused.stored)).not.toContain(password)
    const rows = await db().sql`select before, after from audit where record_id = ${id}`
    expect(JSON.stringify(rows)).not.toContain(password)
  })

  test('an e-mail address that is taken is told at its field, whatever its case, also at the same moment', async () => {
    const { email } = await aPerson('viewer')
    const again = () =>
      addPerson(ada, {
        id: randomUUID(),
        name: 'X',
        initials: 'X',
        email: email.toUpperCase(),
        role: 'viewer',
        password,
      })
    expect((await refusal(again())).fields).toHaveProperty('email')
    const fresh = `${randomUUID()}@shop.example`
    const tries = await Promise.allSettled(
      [1, 2, 3].map(() =>
        addPerson(ada, {
          id: randomUUID(),
          name: 'Y',
          initials: 'Y',
          email: fresh,
          role: 'viewer',
          password,
        }),
      ),
    )
    expect(tries.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    for (const each of tries)
      if (each.status === 'rejected') expect(each.reason.fields).toHaveProperty('email')
  })

  test('a change of a person that was seen in an older version is refused', async () => {
    const { id } = await aPerson('viewer')
    const change = { id, name: 'New name', initials: 'NN', role: 'viewer' as const, ended: false }
    await changePerson(ada, { ...change, version: await versionOf(id) })
    const refused = await refusal(changePerson(ada, { ...change, name: 'Mine', version: 1 }))
    expect(refused.current).toMatchObject({ version: 2, values: { name: 'New name' } })
  })
})

describe('tokens', () => {
  test('a token acts by its name and role; only its hash is kept; use is noted', async () => {
    const token = `mw_${randomUUID()}`
    const hash = createHash('sha256').update(token).digest('hex')
    await db().sql`insert into api_token (name, role, token_hash) values ('rig', 'laminator', ${hash})`
    expect(await actorByToken(token)).toEqual({ id: null, name: 'token rig', role: 'laminator' })
    const [row] = await db()
      .sql`select last_used_at is not null as used from api_token where token_hash = ${hash}`
    expect(row?.used).toBe(true)
  })

  test('an unknown token, its hash, and one that was ended are nobody', async () => {
    const token = `mw_${randomUUID()}`
    const hash = createHash('sha256').update(token).digest('hex')
    expect(await actorByToken(token)).toBeNull()
    await db().sql`insert into api_token (name, role, token_hash) values ('old', 'lead', ${hash})`
    expect(await actorByToken(hash)).toBeNull()
    await db().sql`update api_token set ended_at = now() where token_hash = ${hash}`
    expect(await actorByToken(token)).toBeNull()
  })
})

test('the settings of the shop: seen versions, rules as they were saved', async () => {
  const { shop } = await readSettings(ada, {})
  const { isDemo: _demo, ...settings } = shop
  const rules = { ...settings.rules, repair: { ...settings.rules.repair, edgeMarginMm: 30 } }
  await saveSettings(ada, { ...settings, rules })
  expect((await readSettings(ada, {})).shop.rules.repair.edgeMarginMm).toBe(30)
  const refused = await refusal(saveSettings(ada, { ...settings, name: 'Mine' }))
  expect(refused.current).toMatchObject({ version: 2, values: { name: 'Test shop' } })
})
