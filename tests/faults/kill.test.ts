import { randomUUID } from 'node:crypto'
import { setTimeout as pause } from 'node:timers/promises'
import postgres from 'postgres'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { startDatabaseServer } from '#lib/platform/database-server.js'
import { embeddedUrl, ensureDatabase } from '#lib/platform/embedded-shop.js'
import { keepAlive } from '#lib/platform/keep-alive.js'
import { startThrowaway, type Throwaway } from '#lib/platform/throwaway-server.js'

/** A pull that the book has acknowledged must be in it after any crash, and once only. */

let shop: Throwaway
let kept: ReturnType<typeof keepAlive>
let sql: postgres.Sql
let serverPid = 0
let returns = 0

beforeAll(async () => {
  shop = await startThrowaway({ durable: true })
  serverPid = shop.server.process.pid
  kept = keepAlive(Promise.resolve(shop.server), {
    again: () => startDatabaseServer(shop.home, shop.server.port),
    onEnd: () => {},
    onReturn: (next) => {
      serverPid = next.process.pid
      returns += 1
    },
    onGiveUp: (why) => {
      throw new Error(`the database was given up: ${why}`)
    },
  })
  await ensureDatabase(shop.home, shop.server, 'kill')
  sql = postgres(embeddedUrl(shop.home, shop.server, 'kill'), {
    max: 4,
    connect_timeout: 2,
    backoff: () => 0.05,
    onnotice: () => {},
  })
  await sql`create table entry (id uuid primary key, number int not null, written_at timestamptz not null default now())`
})

afterAll(async () => {
  await sql?.end({ timeout: 2 })
  await kept?.stop()
  await shop?.stop()
})

/** Sends an entry under its own id until it is acknowledged, as a phone with a bad network does. */
async function append(number: number): Promise<string> {
  const id = randomUUID()
  for (;;) {
    try {
      await sql`insert into entry (id, number) values (${id}, ${number}) on conflict (id) do nothing`
      return id
    } catch {
      await pause(20)
    }
  }
}

test('50 entries while the database is killed three times: each acknowledged one is there exactly once', async () => {
  const acknowledged: string[] = []
  let next = 0
  async function writer(): Promise<void> {
    for (let number = next++; number < 50; number = next++) {
      acknowledged.push(await append(number))
      await pause(10)
    }
  }
  async function killer(): Promise<void> {
    for (const [round, after] of [8, 22, 36].entries()) {
      while (acknowledged.length < after) await pause(5)
      process.kill(serverPid, 'SIGKILL')
      while (returns <= round) await pause(10)
    }
  }
  await Promise.all([killer(), writer(), writer(), writer(), writer()])

  expect(returns).toBe(3)
  const stored = await sql<{ id: string; number: number }[]>`select id, number from entry`
  expect(stored.map(({ id }) => id).sort()).toEqual(acknowledged.sort())
  expect(new Set(stored.map(({ number }) => number)).size).toBe(50)
})
