import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, inject, test } from 'vitest'
import { openDatabase, type Sql } from '#lib/platform/connection.js'
import { applyMigrations, readMigrations } from '#lib/platform/migrate.js'
import { drift, writeMigration } from '#lib/platform/migration'
import { freshDatabase, makeDatabase, type TestDatabase } from '#tests/support/database'

test('the migrations make what the schema asks for', async () => {
  const database = await freshDatabase()
  try {
    expect(await drift(database.url)).toBe('')
  } finally {
    await database.drop()
  }
})

const schema = (fields: string) => `
datasource db {
  provider = "postgresql"
}

model Tool {
  id   String @id @default(dbgenerated("gen_random_uuid()")) @db.Uuid
  code String @unique
${fields}

  @@map("tool")
}
`

let folder = ''
let database: TestDatabase
let sql: Sql

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'migration-'))
  mkdirSync(join(folder, 'migrations'))
  writeFileSync(join(folder, 'schema.prisma'), schema(''))
  database = await makeDatabase(inject('databaseServer'))
  sql = await openDatabase(database.url)
})

afterEach(async () => {
  await sql.end()
  await database.drop()
  rmSync(folder, { recursive: true })
})

const apply = () => applyMigrations(sql, readMigrations(join(folder, 'migrations')))

function migration(name: string, script: string): void {
  mkdirSync(join(folder, 'migrations', name))
  writeFileSync(join(folder, 'migrations', name, 'migration.sql'), script)
}

const day = (number: number) => new Date(Date.UTC(2026, 0, number))

test('the first migration is written, applied once, and then nothing is left to write', async () => {
  const path = await writeMigration(folder, database.url, 'tools', day(1))
  expect(path).toBe(join(folder, 'migrations/20260101000000_tools/migration.sql'))
  expect(readFileSync(path ?? '', 'utf8')).toMatch(/CREATE TABLE "tool"/)
  expect(await apply()).toEqual(['20260101000000_tools'])
  expect(await apply()).toEqual([])
  await sql`insert into tool (code) values ('T1')`
  expect(await drift(database.url, folder)).toBe('')
  expect(await writeMigration(folder, database.url, 'again', day(2))).toBeNull()
})

test('the next migration holds only the difference, and leaves checks and partial indexes alone', async () => {
  await writeMigration(folder, database.url, 'tools', day(1))
  migration(
    '20260102000000_by_hand',
    `alter table tool add constraint code_filled check (btrim(code) <> '');
     create unique index tool_lower on tool (code) where code like 'T%';`,
  )
  writeFileSync(join(folder, 'schema.prisma'), schema('  massKg Float? @map("mass_kg")'))
  const path = await writeMigration(folder, database.url, 'Mass of a tool', day(3))
  const statements = readFileSync(path ?? '', 'utf8')
    .replace(/--.*\n/g, '')
    .trim()
  expect(statements).toMatch(/^ALTER TABLE "tool" ADD COLUMN\s+"mass_kg" DOUBLE PRECISION;$/)
})

test('a column that no migration makes is drift', async () => {
  await writeMigration(folder, database.url, 'tools', day(1))
  await apply()
  await sql`alter table tool add column stray int`
  expect(await drift(database.url, folder)).toMatch(/DROP COLUMN "stray"/)
})

test('a migration that fails half-way is undone whole; those before it stay', async () => {
  migration('1_good', 'create table good (number int);')
  migration('2_bad', 'create table half (number int); insert into good values (1); select * from nowhere;')
  await expect(apply()).rejects.toThrow(
    /2_bad failed and was undone whole.*relation "nowhere" does not exist/,
  )
  const [state] = await sql`
    select to_regclass('half') is null as undone, (select count(*)::int from good) as rows,
           (select string_agg(migration_name, ' ') from _prisma_migrations) as applied`
  expect(state).toEqual({ undone: true, rows: 0, applied: '1_good' })
})

test('two starts at once apply each migration once', async () => {
  migration('1_good', 'create table good (number int); select pg_sleep(0.2);')
  const other = await openDatabase(database.url)
  const migrations = readMigrations(join(folder, 'migrations'))
  const applied = await Promise.all([applyMigrations(sql, migrations), applyMigrations(other, migrations)])
  await other.end()
  expect(applied.flat()).toEqual(['1_good'])
})

test('a migration changed after it was applied, and one that the code lost, stop the start', async () => {
  migration('1_good', 'create table good (number int);')
  await apply()
  writeFileSync(join(folder, 'migrations/1_good/migration.sql'), 'create table better (number int);')
  await expect(apply()).rejects.toThrow(/1_good was changed after/)
  rmSync(join(folder, 'migrations/1_good'), { recursive: true })
  await expect(apply()).rejects.toThrow(/newer schema than the code/)
})

test('a book of the release before moves over whole', async () => {
  const all = readMigrations('prisma/migrations')
  expect(await applyMigrations(sql, all.slice(0, 1))).toHaveLength(1)
  const made = (name: string, hash: string, day: number, ended: string | null = null) => sql`
    insert into api_token (name, role, token_hash, created_at, ended_at)
    values (${name}, 'laminator', ${hash}, ${`2026-01-0${day}T10:00:00Z`}, ${ended})`
  await made('scale', 'a', 1)
  await made(' Scale', 'b', 2)
  await made('scale', 'c', 3, '2026-02-01T10:00:00Z')
  await made('rig', 'd', 4)
  await sql`insert into shop (name, time_zone, currency, rules) values ('shop', 'UTC', 'GBP', '{}')`
  await sql`insert into mould_set (code, name) values ('LH', ' ')`
  await sql`
    insert into material (code, name, role, fibre_areal_weight_gsm, fibre_density_g_cm3, fibre_volume_fraction, roll_width_mm, price_minor_per_m2)
    values ('S200', 'twill', 'surface', 200, 1.78, 0.5, 1250, 4205), ('B650', 'twill', 'bulk', 650, 1.78, 0.5, 1250, null)`
  await sql`insert into part (code, name) values ('HULL', 'hull')`
  await sql`insert into mould (code, name, part_id) select 'LH-P', 'hull', id from part`
  const entry = (kind: string, data: string) => sql`
    insert into log_entry (id, mould_id, kind, done_on, precision, day_order, by_name, data, content_hash)
    select gen_random_uuid(), id, ${kind}, '2026-01-05', 'day', 720, 'Ada', ${data}::text::jsonb, 'x' from mould`
  await entry('pull', '{"went": "usual", "serial": " LH-01 "}')
  await entry('pull', '{"went": "usual", "serial": null}')
  await applyMigrations(sql, all)
  const tokens = await sql`select name, token_hash as hash from api_token order by token_hash`
  expect(tokens.map(({ name, hash }) => `${hash} ${name}`)).toEqual([
    'a scale',
    expect.stringMatching(/^b Scale \(2, [0-9a-f]{8}\)$/),
    'c scale',
    'd rig',
  ])
  expect(await sql`select name from mould_set`).toEqual([{ name: 'LH' }])
  expect(await sql`select minor_per_unit, currency, unit from price`).toEqual([
    { minor_per_unit: 4205, currency: 'GBP', unit: 'm2' },
  ])
  expect(await sql`select b.serial, p.code from built_part b join part p on p.id = b.part_id`).toEqual([
    { serial: 'LH-01', code: 'HULL' },
  ])
  expect(await sql`select dirty <> clean as stale from mould_tally`).toEqual([{ stale: true }])
})
