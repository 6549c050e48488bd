import { randomBytes, randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { changePerson, endToken, listPeople, listTokens, makeToken } from '#lib/services/people'
import { db } from '#lib/store/db'
import { addPerson } from '#lib/store/people'
import { actorByToken } from '#lib/store/tokens'
import { GET } from '../../app/api/v1/moulds/route'
import { ada, book, password, refusal } from './book'
import { get, problem } from './calls'

book()

const wanted = (changes = {}) => ({
  id: randomUUID(),
  name: `rig ${randomUUID()}`,
  role: 'viewer' as const,
  token: `mw_${randomBytes(32).toString('base64url')}`,
  ...changes,
})

test('a token is made, acts by its name and role, and is refused from the moment it is ended', async () => {
  const made = wanted()
  expect(await makeToken(ada, made)).toEqual({ token: made.token, name: made.name, role: 'viewer' })
  expect(await actorByToken(made.token)).toMatchObject({
    id: null,
    name: `token ${made.name}`,
    role: 'viewer',
  })
  expect((await GET(get('/api/v1/moulds', { token: made.token }))).status).toBe(200)
  await endToken(ada, { id: made.id })
  await problem(await GET(get('/api/v1/moulds', { token: made.token })), 401)
  await endToken(ada, { id: made.id })
  const [line] = (await listTokens(ada, {})).filter(({ id }) => id === made.id)
  expect(line).toMatchObject({
    createdByName: 'Ada Lead',
    lastUsedAt: expect.any(String),
    endedAt: expect.any(String),
  })
})

test('neither the token nor its hash stands in the audit; making and ending do', async () => {
  const made = wanted()
  await makeToken(ada, made)
  await endToken(ada, { id: made.id })
  const rows = await db()
    .sql`select act, before, after, by_name from audit where record_id = ${made.id} order by id`
  expect(rows.map(({ act, by_name }) => [act, by_name])).toEqual([
    ['made', 'Ada Lead'],
    ['ended', 'Ada Lead'],
  ])
  const [{ hash } = { hash: '' }] = await db()
    .sql`select token_hash as hash from api_token where id = ${made.id}`
  expect(JSON.stringify(rows)).not.toContain(hash)
  expect(JSON.stringify(rows)).not.toContain(made.token)
})

test('sent twice, also at once: one token, and both answers show it; another token under the same id is refused', async () => {
  const made = wanted()
  const both = await Promise.all([makeToken(ada, made), makeToken(ada, made)])
  expect(both.map(({ token }) => token)).toEqual([made.token, made.token])
  expect((await listTokens(ada, {})).filter(({ id }) => id === made.id)).toHaveLength(1)
  expect((await refusal(makeToken(ada, { ...made, token: wanted().token }))).status).toBe(409)
})

test('living tokens have names of their own, whatever their case; the name of an ended one is free again', async () => {
  const made = wanted({ name: 'Scale' })
  await makeToken(ada, made)
  expect((await refusal(makeToken(ada, wanted({ name: ' scale' })))).fields).toHaveProperty('name')
  await endToken(ada, { id: made.id })
  await makeToken(ada, wanted({ name: 'scale' }))
})

test('the use of a token is noted once a minute at most', async () => {
  const made = wanted()
  await makeToken(ada, made)
  const used = async () => (await listTokens(ada, {})).find(({ id }) => id === made.id)?.lastUsedAt
  await actorByToken(made.token)
  const first = await used()
  expect(first).toBeTruthy()
  await actorByToken(made.token)
  expect(await used()).toBe(first)
  await db()
    .sql`update api_token set last_used_at = last_used_at - interval '61 seconds' where id = ${made.id}`
  await actorByToken(made.token)
  expect(Date.parse((await used()) ?? '')).toBeGreaterThanOrEqual(Date.parse(first ?? ''))
})

test('a token of somebody who has left goes on, and the list says so', async () => {
  const id = randomUUID()
  const person = { id, name: 'Gone Lead', initials: 'GL', role: 'lead' as const }
  await addPerson(ada, { ...person, email: 'gone@shop.example', password })
  const made = wanted()
  await makeToken({ id, name: person.name, role: 'lead' }, made)
  await changePerson(ada, { ...person, version: 1, ended: true })
  const [line] = (await listTokens(ada, {})).filter((token) => token.id === made.id)
  expect(line).toMatchObject({ makerHasLeft: true, endedAt: null })
  expect(await actorByToken(made.token)).not.toBeNull()
})

test('the day on which somebody left stays when only their name is put right', async () => {
  const id = randomUUID()
  const person = { id, name: 'Old Nmae', initials: 'ON', role: 'viewer' as const }
  await addPerson(ada, { ...person, email: 'old@shop.example', password })
  await changePerson(ada, { ...person, version: 1, ended: true })
  const left = async () => (await listPeople(ada, {})).find((each) => each.id === id)
  const first = (await left())?.endedAt
  expect(first).toBeTruthy()
  await changePerson(ada, { ...person, name: 'Old Name', version: 2, ended: true })
  expect(await left()).toMatchObject({ endedAt: first, name: 'Old Name', ended: true })
  await changePerson(ada, { ...person, name: 'Old Name', version: 3, ended: false })
  expect(await left()).toMatchObject({ endedAt: null, ended: false })
})
