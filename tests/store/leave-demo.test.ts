import { randomBytes, randomUUID } from 'node:crypto'
import { beforeEach, expect, test } from 'vitest'
import { defaultShopRules } from '#lib/schema/shop'
import { demoContents, leaveDemo } from '#lib/services/leave-demo'
import { listPeople, makeToken } from '#lib/services/people'
import { readSettings } from '#lib/services/shop'
import { auth } from '#lib/store/auth'
import { db } from '#lib/store/db'
import { Refusal } from '#lib/store/errors'
import { actorByToken } from '#lib/store/tokens'
import { ada, aMould, anArea, ben, book, firstLead, log, password, refusal } from './book'
import { aPatch } from './patch-book'

book()

const wish = (changes = {}) => ({
  id: randomUUID(),
  confirm: 'Test shop',
  name: 'Quayside Composites',
  timeZone: 'Europe/Oslo',
  currency: 'NOK',
  ...changes,
})

/** What every table of records holds, people and accounts aside. */
async function records(): Promise<Record<string, number>> {
  const tables = await db().sql`
    select tablename as name from pg_tables where schemaname = 'public'
      and tablename not in ('person', 'account', 'session', 'shop', 'api_token', '_prisma_migrations', 'audit', 'creation', 'verification')`
  const counts: Record<string, number> = {}
  for (const { name } of tables) {
    const [row] = await db().sql`select count(*)::int as rows from ${db().sql(name)}`
    if (row?.rows > 0) counts[name] = row?.rows
  }
  return counts
}

async function signIn(): Promise<string> {
  const answer = await auth().api.signInEmail({ body: { email: firstLead.email, password } })
  return answer.token
}

let filled: Record<string, number> = {}

beforeEach(async () => {
  await db()
    .sql`update shop set is_demo = true, name = 'Test shop', rules = jsonb_set(rules, '{repair,edgeMarginMm}', '31')`
  const [stack] = await db().sql`select 1 from stack limit 1`
  const mould = await aMould(stack ? {} : { stackId: null })
  const area = await anArea(mould.id)
  await log(mould.id, 'note', { note: 'invented' })
  await log(mould.id, 'pull', { data: { serial: randomUUID() } })
  await db()
    .sql`insert into person (name, initials, email, role, ended_at) values ('Only Aname', 'OA', ${`${randomUUID()}@x.example`}, 'lead', now())`
  if (stack) await aPatch(mould.id, area.id, 'laid')
  filled = await records()
})

test('a wrong name empties nothing, and says which name is meant', async () => {
  const refused = await refusal(leaveDemo(ada, wish({ confirm: 'Other shop' })))
  expect(refused.fields.confirm).toContain('Test shop')
  expect(await records()).toEqual(filled)
})

test('what breaks off in the middle has done nothing', async () => {
  await db().sql`alter table audit add constraint no_leave check (act <> 'left the demo shop')`
  await expect(leaveDemo(ada, wish())).rejects.toThrow()
  await db().sql`alter table audit drop constraint no_leave`
  expect(await records()).toEqual(filled)
  expect((await readSettings(ada, {})).shop).toMatchObject({ isDemo: true, name: 'Test shop' })
  expect(await demoContents(ada, {})).not.toBeNull()
})

test('somebody who writes just now is waited for, or the lead is told', async () => {
  const other = await db().sql.reserve()
  await other`begin`
  await other`lock table mould in row exclusive mode`
  const trying = leaveDemo(ada, wish()).catch((error: unknown) => error)
  const refused = await trying
  await other`rollback`
  other.release()
  expect(refused).toBeInstanceOf(Refusal)
  expect((refused as Refusal).message).toContain('nothing was emptied')
  expect(await records()).toEqual(filled)
}, 20_000)

test('the whole: records go, accounts and sessions stay, tokens end, rules are the usual ones, the audit begins anew', async () => {
  const token = `mw_${randomBytes(32).toString('base64url')}`
  await makeToken(ada, { id: randomUUID(), name: randomUUID(), role: 'viewer', token })
  await signIn()
  const [sessions] = await db().sql`select count(*)::int as open from session`
  const before = await demoContents(ada, {})
  expect(before).toMatchObject({
    shopName: 'Test shop',
    tokens: 1,
    moulds: filled.mould,
    entries: filled.log_entry,
  })
  const input = wish({ confirm: ' test  SHOP ' })
  await leaveDemo(ada, input)
  expect(await records()).toEqual({})
  const { shop } = await readSettings(ada, {})
  expect(shop).toMatchObject({
    isDemo: false,
    name: 'Quayside Composites',
    timeZone: 'Europe/Oslo',
    currency: 'NOK',
    address: '',
  })
  expect(shop.rules).toEqual(defaultShopRules)
  expect((await listPeople(ada, {})).map(({ name }) => name).sort()).toEqual([
    'Ada Lead',
    'Ben Lead',
    'Lam Hands',
    'Vi Looks',
  ])
  expect(await db().sql`select count(*)::int as open from session`).toEqual([sessions])
  expect(await actorByToken(token)).toBeNull()
  const audit = await db()
    .sql`select id::int, act, by_name, before ->> 'shopName' as was, after ->> 'name' as is from audit`
  expect(audit).toEqual([
    { id: 1, act: 'left the demo shop', by_name: 'Ada Lead', was: 'Test shop', is: 'Quayside Composites' },
  ])
  await signIn()
  // Sent again it is answered alike; what was written since stays.
  const first = await aMould({ stackId: null })
  await leaveDemo(ada, input)
  expect(await records()).toMatchObject({ mould: 1 })
  expect((await refusal(leaveDemo(ben, wish({ confirm: 'Quayside Composites' })))).message).toContain(
    'no demo shop',
  )
  expect(first.id).toBeTruthy()
})

test('two leads at once: one empties it, the other is told', async () => {
  const tries = await Promise.allSettled([
    leaveDemo(ada, wish()),
    leaveDemo(ben, wish({ name: 'Other yard' })),
  ])
  expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
  const refused = tries.find((each) => each.status === 'rejected')
  expect(refused?.reason).toBeInstanceOf(Refusal)
  expect(await db().sql`select act from audit where act = 'left the demo shop'`).toHaveLength(1)
})
