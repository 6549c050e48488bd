// @ts-check
import { createHash, randomUUID } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { wordsOf } from './connection.js'
import { databaseNewer, migrationChanged, migrationFailed, migrationHalfDone, Trouble } from './messages.js'

/**
 * Applies migrations, in the table of Prisma's own shape, so that a machine with Prisma's engine may use Prisma's
 * commands on the same database.
 * @typedef {{ readonly name: string, readonly script: string, readonly checksum: string }} Migration
 * @typedef {{ readonly name: string, readonly checksum: string, readonly finished: boolean }} Applied
 */

/** The lock that Prisma's own engine takes while it migrates. */
const lockNumber = 72707369

/**
 * @param {string} folder prisma/migrations
 * @returns {readonly Migration[]} in the order of their names
 */
export function readMigrations(folder) {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, 'migration.sql')))
    .map((entry) => {
      // A checkout on Windows may have turned the line ends.
      const script = readFileSync(join(folder, entry.name, 'migration.sql'), 'utf8').replaceAll('\r\n', '\n')
      return { name: entry.name, script, checksum: createHash('sha256').update(script).digest('hex') }
    })
    .sort((left, right) => (left.name < right.name ? -1 : 1))
}

/**
 * What is left to apply.
 * @param {readonly Migration[]} here the code's migrations
 * @param {readonly Applied[]} there the database's
 * @returns {readonly Migration[]}
 * @throws {Trouble} when the two don't belong together
 */
export function pendingMigrations(here, there) {
  const halfDone = there.find((one) => !one.finished)
  if (halfDone !== undefined) throw new Trouble(migrationHalfDone(halfDone.name))
  const byName = new Map(here.map((one) => [one.name, one]))
  const unknown = there.find((one) => !byName.has(one.name))
  if (unknown !== undefined) throw new Trouble(databaseNewer(unknown.name, 'prisma/migrations'))
  const changed = there.find((one) => byName.get(one.name)?.checksum !== one.checksum)
  if (changed !== undefined) throw new Trouble(migrationChanged(changed.name))
  const done = new Set(there.map((one) => one.name))
  return here.filter((one) => !done.has(one.name))
}

/**
 * Brings a database to the code's schema. Each migration is applied in a transaction of its own: it counts whole or
 * not at all. Two starts at once take turns.
 * @param {import('./connection.js').Sql} sql one connection: the lock belongs to it
 * @param {readonly Migration[]} migrations
 * @returns {Promise<readonly string[]>} the names applied just now
 * @throws {Trouble} when one fails, or the database is not this code's
 */
export async function applyMigrations(sql, migrations) {
  await sql`select pg_advisory_lock(${lockNumber})`
  try {
    const pending = pendingMigrations(migrations, await appliedMigrations(sql))
    for (const migration of pending) await apply(sql, migration)
    return pending.map((one) => one.name)
  } finally {
    await sql`select pg_advisory_unlock(${lockNumber})`
  }
}

/** @param {import('./connection.js').Sql} sql @returns {Promise<readonly Applied[]>} */
async function appliedMigrations(sql) {
  const [table] = await sql`select to_regclass('_prisma_migrations') is not null as present`
  if (!table?.present) return []
  return sql`
    select migration_name as name, checksum, finished_at is not null as finished
    from _prisma_migrations where rolled_back_at is null order by started_at`
}

/** @param {import('./connection.js').Sql} sql @param {Migration} migration */
async function apply(sql, { name, script, checksum }) {
  try {
    await sql.begin(async (work) => {
      await work.unsafe(historyTable)
      await work.unsafe(script)
      await work`
        insert into _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
        values (${randomUUID()}, ${checksum}, ${name}, now(), clock_timestamp(), 1)`
    })
  } catch (error) {
    const forbidden = error instanceof Error && 'code' in error && error.code === '42501'
    const cure = forbidden ? '. Make the account of DATABASE_URL the owner of its database.' : ''
    throw new Trouble(migrationFailed(name, wordsOf(error) + cure))
  }
}

/** As Prisma's engine makes it. */
const historyTable = `
  create table if not exists _prisma_migrations (
    id varchar(36) primary key not null,
    checksum varchar(64) not null,
    finished_at timestamptz,
    migration_name varchar(255) not null,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz not null default now(),
    applied_steps_count integer not null default 0
  )`
