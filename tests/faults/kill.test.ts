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
const entries = 50
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

/** Sends an entry under its own id until it is acknowledged, as a phone with a bad network does. */
async function append(number: number): Promise<string> {
  const id = randomUUID()
  const body = JSON.stringify({
    id,
    kind: 'coat',
    doneOn: '2026-11-20',
    note: `number ${number}`,
    data: { product: 'Semi-permanent agent A', lot: null, coats: 1, minutesBetween: null },
  })
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/json' }
  for (;;) {
    try {
      const answer = await fetch(`${address}/api/v1/moulds/LH-P/log`, { method: 'POST', headers, body })
      if (answer.status === 201 || answer.status === 200) return id
      if (answer.status < 500) throw new Refused(`${answer.status} ${await answer.text()}`)
    } catch (error) {
      if (error instanceof Refused) throw error
    }
    await pause(30)
  }
}

class Refused extends Error {}

test(`${entries} entries while Postgres and the web server are killed with -9: each acknowledged one once`, async () => {
  const acknowledged: string[] = []
  let next = 0
  async function writer(): Promise<void> {
    for (let number = next++; number < entries; number = next++) acknowledged.push(await append(number))
  }
  async function killer(): Promise<void> {
    for (const [which, after] of [
      ['database', 8],
      ['web', 20],
      ['database', 34],
    ] as const) {
      while (acknowledged.length < after) await pause(5)
      const before = returns[which]
      process.kill(pids[which], 'SIGKILL')
      while (returns[which] === before) await pause(10)
    }
  }
  await Promise.all([killer(), writer(), writer(), writer(), writer()])

  expect(returns).toEqual({ database: 2, web: 1 })
  const sql = postgres(databaseUrl, { max: 1 })
  const stored = await sql<{ id: string; note: string }[]>`
    select id, note from log_entry where note like 'number %'`
  await sql.end()
  expect(stored.map(({ id }) => id).sort()).toEqual(acknowledged.sort())
  expect(new Set(stored.map(({ note }) => note)).size).toBe(entries)
}, 240_000)
