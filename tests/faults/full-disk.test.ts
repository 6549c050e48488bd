import { spawnSync } from 'node:child_process'
import { createHash, randomBytes, randomUUID } from 'node:crypto'
import { mkdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import postgres from 'postgres'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openDatabase } from '#lib/platform/connection.js'
import { startDatabaseServer } from '#lib/platform/database-server.js'
import { checkRoom } from '#lib/platform/disk-room.js'
import { databaseHome, embeddedUrl, ensureDatabase, startEmbedded } from '#lib/platform/embedded-shop.js'
import { keepAlive } from '#lib/platform/keep-alive.js'
import { applyMigrations, readMigrations } from '#lib/platform/migrate.js'
import { throwawayFolder } from '#lib/platform/throwaway-server.js'
import { startApp, type TestApp } from '#tests/support/app'

/** A disk that fills up under the running shop: a small one of memory, which only root on Linux can make. */

const token = 'mw_full_disk_test'
const folder = await throwawayFolder('full')
const disk = join(folder, 'disk')
mkdirSync(disk)
const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=400m,mode=711', 'tmpfs', disk]).status === 0
const filler = join(disk, 'filler')

let keptDatabase: ReturnType<typeof keepAlive> | undefined
let app: TestApp | undefined
let databaseUrl = ''

beforeAll(async () => {
  if (!mounted) return
  const home = databaseHome(process.cwd(), {
    folder: disk,
    log: join(folder, 'database.log'),
    durable: true,
    secrets: { keeperPassword: 'keeper of a test', databasePassword: 'shop of a test' },
  })
  const server = await startEmbedded(home)
  keptDatabase = keepAlive(Promise.resolve(server), {
    again: () => startDatabaseServer(home, server.port),
    onEnd: () => {},
    onReturn: () => {},
    onGiveUp: () => {},
  })
  await ensureDatabase(home, server, 'full')
  databaseUrl = embeddedUrl(home, server, 'full')
  const sql = await openDatabase(databaseUrl)
  await applyMigrations(sql, readMigrations('prisma/migrations'))
  app = await startApp({ database: databaseUrl })
  const tokenHash = createHash('sha256').update(token).digest('hex')
  await sql`insert into api_token (name, role, token_hash) values ('full disk test', 'laminator', ${tokenHash})`
  await sql`checkpoint`.catch(() => {})
  await sql.end()
}, 240_000)

afterAll(async () => {
  await app?.stop()
  await keptDatabase?.stop()
  if (mounted) spawnSync('umount', ['-l', disk])
  rmSync(folder, { recursive: true, force: true })
})

const roomKb = () => {
  const { bavail, bsize } = statfsSync(disk)
  return (bavail * bsize) / 1024
}

function send(path: string, body: FormData | string): Promise<Response> {
  return fetch(`${app?.url}/api/v1/moulds/LH-P/${path}`, {
    method: 'POST',
    headers: {
      authorization: `Bearer ${token}`,
      ...(typeof body === 'string' ? { 'content-type': 'application/json' } : {}),
    },
    body,
  })
}

/** Noise can't be packed: the stored photo is as large as a real one. */
async function photo(): Promise<Blob> {
  const [width, height] = [2000, 1500]
  const raw = randomBytes(width * height * 3)
  const jpeg = await sharp(raw, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 90 })
    .toBuffer()
  return new Blob([new Uint8Array(jpeg)], { type: 'image/jpeg' })
}

async function sendPhoto(): Promise<{ id: string; response: Response }> {
  const [form, id] = [new FormData(), randomUUID()]
  form.set('id', id)
  form.set('file', await photo(), 'crack.jpg')
  return { id, response: await send('pictures', form) }
}

function sendCoat(): Promise<Response> {
  return send(
    'log',
    JSON.stringify({
      id: randomUUID(),
      kind: 'coat',
      doneOn: '2026-11-20',
      note: 'written on a full disk',
      data: { product: 'Semi-permanent agent A', coats: 1 },
    }),
  )
}

test.skipIf(!mounted)(
  'a disk that fills up during an upload: one sentence, nothing half-saved, nothing lost',
  async () => {
    const before = await sendPhoto()
    expect(before.response.status).toBe(201)

    writeFileSync(filler, Buffer.alloc(Math.max(0, Math.floor((roomKb() - 200) * 1024))))
    const kept: string[] = [before.id]
    let refused = 0
    let coats = 0
    for (let round = 0; round < 12; round += 1) {
      const { id, response } = await sendPhoto()
      if (response.status === 201) kept.push(id)
      else {
        expect([503, 507]).toContain(response.status)
        expect((await response.json()).detail).toMatch(/disk|database/i)
        if (response.status === 507) refused += 1
      }
      const coat = await sendCoat()
      if (coat.status === 201) coats += 1
      else expect([503, 507]).toContain(coat.status)
    }
    expect(refused).toBeGreaterThan(0)
    expect(() => checkRoom(disk, { begun: true })).toThrow(/^The disk is full: .* Make room and start again/)

    rmSync(filler)
    let again = await sendPhoto()
    for (let tries = 0; again.response.status !== 201 && tries < 100; tries += 1) {
      await pause(300)
      again = await sendPhoto()
    }
    expect(again.response.status).toBe(201)
    kept.push(again.id)
    const sql = postgres(databaseUrl, { max: 1 })
    const pictures = await sql<{ id: string; sizes: number }[]>`
    select p.id, count(b.*)::int as sizes from picture p left join picture_bytes b on b.picture_id = p.id
    where p.id = any(${kept}::uuid[]) or p.caption = '' and p.by_name like '%full disk test%' group by p.id`
    const [written] =
      await sql`select count(*)::int as coats from log_entry where note = 'written on a full disk'`
    await sql.end()
    expect(pictures.map(({ id }) => id).sort()).toEqual(kept.sort())
    expect(pictures.every(({ sizes }) => sizes === 2)).toBe(true)
    expect(written?.coats).toBe(coats)
  },
  240_000,
)
