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
