import { randomBytes } from 'node:crypto'
import postgres from 'postgres'
import type { TestProject } from 'vitest/node'
import { openDatabase } from '#lib/platform/connection.js'
import { applyMigrations, readMigrations } from '#lib/platform/migrate.js'
import { startThrowaway } from '#lib/platform/throwaway-server.js'

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the test server's `postgres` database, as a role that may make databases. */
    databaseServer: string
    /** A migrated, empty database that is copied for each test file. */
    templateDatabase: string
  }
}

/** Vitest's global set-up of the store project: one server, one migrated template. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const server = await testServer()
  const template = await migratedDatabase(server.url)
  project.provide('databaseServer', server.url)
  project.provide('templateDatabase', template.name)
  return async () => {
    await template.drop()
    await server.stop()
  }
}

/** The server that `npm test` has started, else one of our own. */
export async function testServer(): Promise<{ readonly url: string; readonly stop: () => Promise<void> }> {
  const given = process.env.TEST_DATABASE_URL
  return given ? { url: given, stop: async () => {} } : startThrowaway()
}

export interface TestDatabase {
  readonly name: string
  readonly url: string
  /** Ends what is still connected to it. */
  readonly drop: () => Promise<void>
}

/** A database of its own with the code's schema and nothing in it, copied from the template. */
export async function freshDatabase(): Promise<TestDatabase> {
  const { inject } = await import('vitest')
  return makeDatabase(inject('databaseServer'), inject('templateDatabase'))
}

export async function migratedDatabase(server: string): Promise<TestDatabase> {
  const database = await makeDatabase(server)
  const sql = await openDatabase(database.url)
  await applyMigrations(sql, readMigrations('prisma/migrations'))
  await sql.end()
  return database
}

export async function makeDatabase(server: string, template = 'template0'): Promise<TestDatabase> {
  const name = `test_${randomBytes(6).toString('hex')}`
  await onServer(server, (sql) => sql`create database ${sql(name)} template ${sql(template)}`)
  const url = new URL(server)
  url.pathname = `/${name}`
  return {
    name,
    url: url.href,
    drop: () => onServer(server, (sql) => dropDatabase(sql, name)),
  }
}

/**
 * Drops a database and ends what is still connected to it. The server's own housekeeping may be at work in it just then, and
 * who isn't its administrator can't end that: it is done soon, so we ask again.
 */
export async function dropDatabase(sql: postgres.Sql, name: string): Promise<void> {
  for (let left = 50; ; left -= 1) {
    try {
      await sql`drop database if exists ${sql(name)} with (force)`
      return
    } catch (error) {
      const busy = error instanceof postgres.PostgresError && error.code === '42501'
      if (!busy || left === 0) throw error
      await new Promise((resolve) => setTimeout(resolve, 200))
    }
  }
}

async function onServer(server: string, work: (sql: postgres.Sql) => Promise<unknown>): Promise<void> {
  const sql = postgres(server, { max: 1, onnotice: () => {} })
  try {
    await work(sql)
  } finally {
    await sql.end()
  }
}
