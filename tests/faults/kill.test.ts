import { createHash, randomUUID } from 'node:crypto'
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import postgres from 'postgres'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openDatabase } from '#lib/platform/connection.js'
import { startDatabaseServer } from '#lib/platform/database-server.js'
import { loadDemo } from '#lib/platform/demo.js'
import { embeddedUrl, ensureDatabase } from '#lib/platform/embedded-shop.js'
import { freePort } from '#lib/platform/free-port.js'
import { keepAlive } from '#lib/platform/keep-alive.js'
import { applyMigrations, readMigrations } from '#lib/platform/migrate.js'
import { readSecrets } from '#lib/platform/secrets.js'
import { startThrowaway, type Throwaway, throwawayFolder } from '#lib/platform/throwaway-server.js'
import { startWebServer } from '#lib/platform/web-server.js'

/** An entry that the book has acknowledged must be in it after any crash, and once only. */

const token = 'mw_kill_test'
const entries = 200
/** Of the demo shop: a split mould, and a tin that coats are taken from. */
const set = { code: 'LH-SET', pieces: 0 }
const tin = { id: '', before: 0 }
const litres = 0.001
let shop: Throwaway
let keptDatabase: ReturnType<typeof keepAlive>
let keptWeb: ReturnType<typeof keepAlive>
let folder: string
let databaseUrl: string
let address: string
const pids = { database: 0, web: 0 }
const returns = { database: 0, web: 0 }

function giveUp(why: unknown): never {
  throw new Error(`given up: ${String(why)}`)
}

beforeAll(async () => {
  const checkout = process.cwd()
  shop = await startThrowaway({ durable: true })
  pids.database = shop.server.process.pid
  keptDatabase = keepAlive(Promise.resolve(shop.server), {
    again: () => startDatabaseServer(shop.home, shop.server.port),
    onEnd: () => {},
    onReturn: (next) => {
      pids.database = next.process.pid
      returns.database += 1
    },
    onGiveUp: giveUp,
  })
  await ensureDatabase(shop.home, shop.server, 'kill')
  databaseUrl = embeddedUrl(shop.home, shop.server, 'kill')
  const sql = await openDatabase(databaseUrl)
  await applyMigrations(sql, readMigrations('prisma/migrations'))
  folder = await throwawayFolder('kill')
  const secretsPath = join(folder, 'secrets.json')
  const secrets = await loadDemo(checkout, {
    url: databaseUrl,
    secretsPath,
    secrets: readSecrets(secretsPath),
  })
  const tokenHash = createHash('sha256').update(token).digest('hex')
  await sql`insert into api_token (name, role, token_hash) values ('kill test', 'laminator', ${tokenHash})`
  const [pieces] = await sql`
    select count(*)::int as count from mould m join mould_set s on s.id = m.set_id where s.code = ${set.code}`
  set.pieces = pieces?.count as number
  const [lot] = await sql`
    select l.id, s.remaining from stock_lot l join lot_state s on s.lot_id = l.id join product p on p.id = l.product_id
    where p.use = 'release' and l.closed_on is null order by s.remaining desc limit 1`
  tin.id = lot?.id as string
  tin.before = lot?.remaining as number
  await sql.end()

  const port = await freePort()
  address = `http://localhost:${port}`
  const web = () =>
    startWebServer(checkout, {
      host: '127.0.0.1',
      port,
      log: join(folder, 'web.log'),
      env: {
        DATABASE_URL: databaseUrl,
        BETTER_AUTH_SECRET: secrets.authSecret,
        MOULDWRIGHT_SECRETS: secretsPath,
        APP_URL: address,
        NEXT_SERVER_ACTIONS_ENCRYPTION_KEY: secrets.actionsKey,
      },
      onProcess: (one) => {
        pids.web = one.pid
      },
    })
  const first = web()
  keptWeb = keepAlive(first, {
    again: web,
    onEnd: () => {},
    onReturn: () => {
      returns.web += 1
    },
    onGiveUp: giveUp,
  })
  await first
}, 180_000)

afterAll(async () => {
  await keptWeb?.stop()
  await keptDatabase?.stop()
  await shop?.stop()
  if (folder) rmSync(folder, { recursive: true, force: true })
})

interface Sent {
  readonly id: string
  readonly kind: 'pull' | 'pull of every piece' | 'coat'
}

/** A pull, a pull of a whole split mould, or coats taken from a tin, in turn. */
function contentOf(number: number): {
  readonly kind: Sent['kind']
  readonly path: string
  readonly body: object
} {
  const note = `number ${number}`
  const pull = { went: 'usual', serial: `KT-${number}`, partFate: 'good', mouldFate: 'unharmed', cureC: null }
  const common = { doneOn: '2026-11-20', note }
  switch (number % 3) {
    case 0:
      return { kind: 'pull', path: 'moulds/UD-1', body: { ...common, kind: 'pull', data: pull } }
    case 1:
      return {
        kind: 'pull of every piece',
        path: `sets/${set.code}`,
        body: { ...common, kind: 'pull', data: pull },
      }
    default: {
      const data = { product: 'Semi-permanent agent A', lot: null, coats: 1, minutesBetween: null }
      const uses = [{ lotId: tin.id, amount: litres }]
      // The note is the because where the tin is past its life by then.
      return { kind: 'coat', path: 'moulds/LH-P', body: { ...common, kind: 'coat', data, uses } }
    }
  }
}

/** Sends an entry under its own id until it is acknowledged, as a phone with a bad network does. */
async function append(number: number): Promise<Sent> {
  const id = randomUUID()
  const { kind, path, body } = contentOf(number)
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/json' }
  for (;;) {
    try {
      const answer = await fetch(`${address}/api/v1/${path}/log`, {
        method: 'POST',
        headers,
        body: JSON.stringify({ id, ...body }),
      })
      if (answer.status === 201 || answer.status === 200) return { id, kind }
      if (answer.status < 500) throw new Refused(`${answer.status} ${await answer.text()}`)
    } catch (error) {
      if (error instanceof Refused) throw error
    }
    await pause(30)
  }
}

class Refused extends Error {}

test(`${entries} entries while Postgres and the web server are killed with -9: each acknowledged one once`, async () => {
  const acknowledged: Sent[] = []
  let next = 0
  async function writer(): Promise<void> {
    for (let number = next++; number < entries; number = next++) acknowledged.push(await append(number))
  }
  async function killer(): Promise<void> {
    for (const [which, after] of [
      ['database', 20],
      ['web', 60],
      ['database', 100],
      ['web', 130],
      ['database', 160],
    ] as const) {
      while (acknowledged.length < after) await pause(5)
      const before = returns[which]
      process.kill(pids[which], 'SIGKILL')
      while (returns[which] === before) await pause(10)
    }
  }
  await Promise.all([killer(), writer(), writer(), writer(), writer()])

  expect(returns).toEqual({ database: 3, web: 2 })
  const sql = postgres(databaseUrl, { max: 1 })
  const stored = await sql<{ id: string; groupId: string | null; note: string }[]>`
    select id, group_id as "groupId", note from log_entry where note like 'number %'`
  const [parts] = await sql`select count(*)::int as count from built_part where serial like 'KT-%'`
  const [lot] = await sql`select remaining from lot_state where lot_id = ${tin.id}`
  const [moves] = await sql`
    select count(*)::int as count from lot_move m join log_entry e on e.id = m.entry_id where e.note like 'number %'`
  await sql.end()

  const of = (...kinds: readonly Sent['kind'][]) =>
    acknowledged.filter(({ kind }) => kinds.includes(kind)).map(({ id }) => id)
  const alone = stored.filter(({ groupId }) => groupId === null)
  expect(alone.map(({ id }) => id).sort()).toEqual(of('pull', 'coat').sort())
  // A split mould is pulled whole or not at all.
  const groups = new Map<string, number>()
  for (const { groupId } of stored) if (groupId) groups.set(groupId, (groups.get(groupId) ?? 0) + 1)
  expect([...groups.keys()].sort()).toEqual(of('pull of every piece').sort())
  expect(new Set(groups.values())).toEqual(new Set([set.pieces]))
  expect(new Set(stored.map(({ note }) => note)).size).toBe(entries)
  expect(parts?.count).toBe(of('pull', 'pull of every piece').length)
  expect(moves?.count).toBe(of('coat').length)
  expect(lot?.remaining).toBeCloseTo(tin.before - of('coat').length * litres, 6)
}, 600_000)
