import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import postgres from 'postgres'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type DatabaseHome, databaseFolder } from '#lib/platform/database-folder.js'
import type { DatabaseServer } from '#lib/platform/database-server.js'
import { databaseHome, embeddedUrl, ensureDatabase, startEmbedded } from '#lib/platform/embedded-shop.js'
import { readPostmaster } from '#lib/platform/postmaster.js'
import { known, lives, waitUntil } from '#lib/platform/process-mark.js'
import { throwawayFolder } from '#lib/platform/throwaway-server.js'

/** What a killed start leaves behind must neither keep the next one out nor cost an entry. */

let home: DatabaseHome

beforeAll(async () => {
  const folder = await throwawayFolder('orphan')
  home = databaseHome(process.cwd(), {
    folder,
    log: join(folder, 'database.log'),
    durable: true,
    secrets: { keeperPassword: 'keeper-of-a-test', databasePassword: 'app-of-a-test' },
  })
})

let server: DatabaseServer | null = null

afterAll(async () => {
  await server?.stop()
  rmSync(home.folder, { recursive: true })
})

async function query<T>(running: DatabaseServer, work: (sql: postgres.Sql) => Promise<T>): Promise<T> {
  const sql = postgres(embeddedUrl(home, running, 'book'), { max: 1, onnotice: () => {} })
  try {
    return await work(sql)
  } finally {
    await sql.end({ timeout: 2 })
  }
}

const entries = (running: DatabaseServer) =>
  query(running, async (sql) =>
    (await sql`select number from entry order by number`).map(({ number }) => number),
  )

test('a server whose launcher was killed is ended, and the next one has all it wrote', async () => {
  server = await startEmbedded(home)
  await ensureDatabase(home, server, 'book')
  await query(server, (sql) => sql`create table entry (number int)`)
  await server.stop()

  const script = `
    import { startEmbedded } from '#lib/platform/embedded-shop.js'
    await startEmbedded(${JSON.stringify(home)})
    console.log('up')`
  const launcher = spawn(process.execPath, ['--input-type=module', '-e', script], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  await once(launcher.stdout, 'data')
  launcher.kill('SIGKILL')
  await once(launcher, 'exit')
  const left = readPostmaster(databaseFolder(home))
  const orphan = known(left?.pid ?? 0)
  expect(lives(orphan)).toBe(true)
  await query({ ...server, port: left?.port ?? 0 }, (sql) => sql`insert into entry values (1)`)

  server = await startEmbedded(home)
  expect(lives(orphan)).toBe(false)
  expect(await entries(server)).toEqual([1])
})

test('a pid file that names a stranger does not keep the next server out', async () => {
  if (server === null) throw new Error('the test before this one started no server')
  await query(server, (sql) => sql`insert into entry values (2)`)
  const first = server.process
  process.kill(first.pid, 'SIGKILL')
  await waitUntil(() => !lives(first), 5_000)
  // Process numbers come round again: this one is the test runner's own.
  writeFileSync(
    join(databaseFolder(home), 'postmaster.pid'),
    `${process.pid}\n${databaseFolder(home)}\n1\n1\n`,
  )

  server = await startEmbedded(home)
  expect(await entries(server)).toEqual([1, 2])
})

test('passwords that were lost with the secrets file are set anew', async () => {
  await server?.stop()
  home = { ...home, secrets: { keeperPassword: 'another-keeper', databasePassword: 'another-app' } }
  server = await startEmbedded(home)
  expect(await entries(server)).toEqual([1, 2])
})

test('data of another Postgres is refused with its folder, and left alone', async () => {
  await server?.stop()
  server = null
  await expect(startEmbedded({ ...home, major: '99' })).rejects.toThrow(
    /written by Postgres \d+, and this code brings Postgres 99/,
  )
  server = await startEmbedded(home)
  expect(await entries(server)).toEqual([1, 2])
})
