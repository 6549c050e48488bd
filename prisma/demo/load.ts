import { closeDatabase, db } from '#lib/store/db'
import { Refusal } from '#lib/store/errors'
import { loadShop } from './write/shop'

/**
 * Puts the invented shop into an empty, migrated database: `tsx --conditions=react-server prisma/demo/load.ts` with
 * DATABASE_URL, and MOULDWRIGHT_SECRETS for the passwords of the demo accounts. The same content at every load.
 */
async function load(): Promise<void> {
  const [kept] = await db().sql`
    select (select count(*)::int from person) as people, (select count(*)::int from mould) as moulds,
      (select count(*)::int from shop) as shops`
  if (!kept || kept.people + kept.moulds + kept.shops > 0) {
    throw new Refusal(
      'This database is not empty; perhaps an earlier load broke off. The demo shop goes into an empty one: ' +
        'make a new database, apply the migrations, and load again.',
    )
  }
  await loadShop()
}

try {
  await load()
} catch (error) {
  console.error(error instanceof Refusal ? [error.message, ...Object.values(error.fields)].join('\n') : error)
  process.exitCode = 1
} finally {
  await closeDatabase()
}
