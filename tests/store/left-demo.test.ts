import { randomBytes } from 'node:crypto'
import postgres from 'postgres'
import { afterEach, beforeEach, expect, inject, test } from 'vitest'
import { moveLeftDemo, ownSecrets } from '#lib/platform/left-demo.js'
import { shopState } from '#lib/platform/shop-state.js'
import { dropDatabase, makeDatabase, type TestDatabase } from '#tests/support/database'

/** What a start does with a demo shop that was left: the databases are real, only their names are the test's. */

let server: postgres.Sql
let names: { own: string; demo: string }
let made: TestDatabase[] = []
let kept = 0

beforeEach(() => {
  server = postgres(inject('databaseServer'), { max: 1, onnotice: () => {} })
  const key = randomBytes(5).toString('hex')
  names = { own: `test_own_${key}`, demo: `test_demo_${key}` }
  kept = 0
})

afterEach(async () => {
  for (const name of Object.values(names)) await dropDatabase(server, name)
  for (const database of made) await database.drop()
  made = []
  await server.end()
})

const urlOf = (name: string) =>
  Object.assign(new URL(inject('databaseServer')), { pathname: `/${name}` }).href

async function on<Value>(name: string, work: (sql: postgres.Sql) => Promise<Value>): Promise<Value> {
  const sql = postgres(urlOf(name), { max: 1, onnotice: () => {} })
  try {
    return await work(sql)
  } finally {
    await sql.end()
  }
}

/** A database under this name: migrated and empty, or with a shop in it. */
async function holds(name: string, shop: 'nothing' | 'demo' | 'own'): Promise<void> {
  const database = await makeDatabase(inject('databaseServer'), inject('templateDatabase'))
  await server`alter database ${server(database.name)} rename to ${server(name)}`
  if (shop === 'nothing') return
  await on(name, async (sql) => {
    await sql`insert into shop (id, name, time_zone, currency, rules, is_demo) values (1, ${shop}, 'Europe/Berlin', 'EUR', '{}', ${shop === 'demo'})`
    await sql`insert into person (name, initials, email, role) values ('Ada', 'A', 'ada@x.example', 'lead')`
  })
}

async function stateOf(name: string) {
  const found = await server`select 1 from pg_database where datname = ${name}`
  return found.length === 0 ? null : on(name, (sql) => shopState(sql as never))
}

const move = () =>
  moveLeftDemo(server as never, names, stateOf as never, () => {
    kept += 1
  })

test('a demo that is one, or is not there, is left alone', async () => {
  expect(await move()).toBe('no')
  await holds(names.demo, 'demo')
  expect(await move()).toBe('no')
  expect((await stateOf(names.demo))?.shop).toBe('demo')
  expect(kept).toBe(0)
})

test('one that was left moves to the place of the own shop, also over an empty one; it is kept in mind before', async () => {
  await holds(names.demo, 'own')
  await holds(names.own, 'nothing')
  expect(await move()).toBe('moved')
  expect(kept).toBe(1)
  expect(await stateOf(names.own)).toEqual({ shop: 'own', people: 1 })
  expect(await stateOf(names.demo)).toBeNull()
  expect(await move()).toBe('no')
})

test('a shop of one’s own that is there already is never touched', async () => {
  await holds(names.demo, 'own')
  await holds(names.own, 'own')
  await on(names.own, (sql) => sql`update shop set name = 'the earlier one'`)
  expect(await move()).toBe('stays')
  expect(await on(names.own, (sql) => sql`select name from shop`)).toEqual([{ name: 'the earlier one' }])
  expect((await stateOf(names.demo))?.shop).toBe('own')
  expect(kept).toBe(0)
})

test('the passwords of its accounts are kept, no longer as the demo’s', () => {
  const secrets = { authSecret: 'a', actionsKey: 'b', keeperPassword: 'c', databasePassword: 'd' }
  const demoPasswords = [{ name: 'Ann', email: 'ann@demo.example', role: 'lead', password: 'word-word' }]
  expect(ownSecrets({ ...secrets, shop: 'demo', demoPasswords })).toEqual({
    ...secrets,
    shop: 'own',
    demoLoading: false,
    formerDemoPasswords: demoPasswords,
  })
  expect(ownSecrets({ ...secrets, shop: 'demo' })).toEqual({ ...secrets, shop: 'own', demoLoading: false })
})
