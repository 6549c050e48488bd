import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import postgres from 'postgres'
import { PrismaClient } from './generated/client'

/** Calendar dates stay text: a date must not move by a day on its way through a Date. */
const isoDateAsText = {
  to: 1082,
  from: [1082],
  serialize: (value: string) => value,
  parse: (value: string) => value,
}

function open(url: string) {
  return {
    prisma: new PrismaClient({
      adapter: new PrismaPg({ connectionString: url, max: 5, connectionTimeoutMillis: 5000 }),
    }),
    sql: postgres(url, { max: 5, connect_timeout: 5, onnotice: () => {}, types: { date: isoDateAsText } }),
  }
}

type Database = ReturnType<typeof open>
export type Prisma = Database['prisma']
/** A client for plain SQL: the pool, or the one connection of a transaction. */
export type Sql = postgres.Sql | postgres.TransactionSql
/** The client inside one transaction. */
export type Transaction = Parameters<Parameters<Prisma['$transaction']>[0]>[0]

const held = globalThis as typeof globalThis & { mouldwrightDatabase?: Database }

/** The two clients of this process. A write goes through one of them only. */
export function db(): Database {
  if (!held.mouldwrightDatabase) {
    const url = process.env.DATABASE_URL
    if (!url) throw new Error('DATABASE_URL is not set; start with npm start')
    held.mouldwrightDatabase = open(url)
  }
  return held.mouldwrightDatabase
}

/** Whether the database answers within a few seconds. */
export async function databaseAnswers(): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const silence = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error('the database does not answer')), 3000)
  })
  try {
    await Promise.race([db().sql`select 1`, silence])
    return true
  } catch {
    return false
  } finally {
    clearTimeout(timer)
  }
}

export async function closeDatabase(): Promise<void> {
  const database = held.mouldwrightDatabase
  delete held.mouldwrightDatabase
  if (database) await Promise.all([database.prisma.$disconnect(), database.sql.end()])
}
