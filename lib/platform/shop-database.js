// @ts-check
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { openDatabase } from './connection.js'
import { databaseFolder } from './database-folder.js'
import { loadDemo } from './demo.js'
import { checkRoom } from './disk-room.js'
import { databaseHome, embeddedUrl, ensureDatabase, onKeeper, startEmbedded } from './embedded-shop.js'
import { moveLeftDemo, ownSecrets, refuseDemoBeside } from './left-demo.js'
import { Trouble } from './messages.js'
import { applyMigrations, readMigrations } from './migrate.js'
import { longStep } from './progress.js'
import { keepSecrets, readableCode, readSecrets } from './secrets.js'
import { shopState } from './shop-state.js'
import { hashOf } from './source-hash.js'

/**
 * @typedef {import('./secrets.js').Secrets} Secrets
 * @typedef {object} ReadyDatabase
 * @property {string} url
 * @property {string} secretsPath
 * @property {Secrets} secrets
 * @property {import('./shop-state.js').ShopState} state
 */

/** The embedded server's databases: the demo shop never stands in the way of the shop's own. */
const databaseNames = { own: 'mouldwright', demo: 'mouldwright_demo' }

/**
 * The embedded server of a place.
 * @param {string} checkout @param {import('./place.js').Place} place
 */
function shopHome(checkout, place) {
  const { keeperPassword, databasePassword } = readSecrets(place.secrets)
  return databaseHome(checkout, {
    folder: place.folder,
    log: join(place.inside, 'database.log'),
    durable: true,
    secrets: { keeperPassword, databasePassword },
  })
}

/**
 * Starts the shop's embedded server and brings the wanted database to the code's schema, with the demo shop in it
 * if that is the one wanted. A demo shop that was half put in, or asked for by name when its passwords are lost, is
 * put in anew.
 * @param {string} checkout
 * @param {import('./place.js').Place} place
 * @param {import('./flags.js').StartFlags['shop']} wanted
 * @param {(home: import('./database-folder.js').DatabaseHome, server: Promise<import('./database-server.js').DatabaseServer>) => void} onServer
 *   hears of the server before it is up, so that a stop can end it
 * @returns {Promise<ReadyDatabase>}
 */
export async function embeddedShop(checkout, place, wanted, onServer) {
  const home = shopHome(checkout, place)
  checkRoom(home.folder, { begun: existsSync(databaseFolder(home)) })
  const starting = startEmbedded(home)
  onServer(home, starting)
  const server = await starting
  const left = await leftDemo(home, server, place.secrets)
  const kept = readSecrets(place.secrets)
  const shop = wanted === 'as before' ? (kept.shop ?? 'demo') : wanted
  if (wanted === 'demo' && left === 'stays') refuseDemoBeside()
  let secrets = keepSecrets(place.secrets, { ...kept, shop })
  const name = databaseNames[shop]
  const lost = wanted === 'demo' && secrets.demoPasswords === undefined
  await ensureDatabase(home, server, name, {
    anew: shop === 'demo' && left !== 'stays' && (secrets.demoLoading === true || lost),
  })
  const url = embeddedUrl(home, server, name)
  await migrated(checkout, url)
  if (shop === 'demo' && (await stateOf(url)).shop === 'none') {
    secrets = await loadDemo(checkout, { url, secretsPath: place.secrets, secrets })
  }
  return readyAt(url, place.secrets, secrets)
}

/**
 * Gives a demo shop that was left its place among the user's own.
 * @param {import('./database-folder.js').DatabaseHome} home
 * @param {import('./database-server.js').DatabaseServer} server
 * @param {string} secretsPath
 */
function leftDemo(home, server, secretsPath) {
  return onKeeper(home, server, (sql) =>
    moveLeftDemo(
      sql,
      databaseNames,
      async (name) => {
        const [found] = await sql`select 1 from pg_database where datname = ${name}`
        return found === undefined ? null : stateIfAny(embeddedUrl(home, server, name))
      },
      () => keepSecrets(secretsPath, ownSecrets(readSecrets(secretsPath))),
    ),
  )
}

/**
 * Brings a database of somebody else's server to the code's schema. The demo shop goes in only when asked for.
 * @param {string} checkout
 * @param {import('./place.js').Place} place
 * @param {string} url
 * @param {import('./flags.js').StartFlags['shop']} wanted
 * @returns {Promise<ReadyDatabase>}
 */
export async function outsideShop(checkout, place, url, wanted) {
  const secretsPath = outsideSecrets(place, url)
  const secrets = readSecrets(secretsPath)
  await migrated(checkout, url)
  if (wanted !== 'demo') return readyAt(url, secretsPath, secrets)
  const { shop, people } = await stateOf(url)
  if (shop === 'own' || (shop === 'none' && people > 0)) {
    throw new Trouble(
      'The database of DATABASE_URL holds a shop already, so the demo shop is not put in. Start without --demo.',
    )
  }
  if (shop === 'demo') return readyAt(url, secretsPath, secrets)
  return readyAt(url, secretsPath, await loadDemo(checkout, { url, secretsPath, secrets }))
}

/** Each outside database has secrets of its own. @param {import('./place.js').Place} place @param {string} url */
function outsideSecrets(place, url) {
  const { hostname, port, pathname } = new URL(url)
  return join(place.inside, `secrets-${hashOf(`${hostname}:${port || 5432}${pathname}`).slice(0, 12)}.json`)
}

/** @param {string} checkout @param {string} url */
async function migrated(checkout, url) {
  const sql = await openDatabase(url)
  try {
    const migrations = readMigrations(join(checkout, 'prisma/migrations'))
    await longStep('Bringing the database to the current schema', () => applyMigrations(sql, migrations))
  } finally {
    await sql.end({ timeout: 2 })
  }
}

/** @param {string} url */
async function stateOf(url) {
  const sql = await openDatabase(url)
  try {
    return await shopState(sql)
  } finally {
    await sql.end({ timeout: 2 })
  }
}

/** The same, null where the tables are not there yet. @param {string} url */
async function stateIfAny(url) {
  try {
    return await stateOf(url)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === '42P01') return null
    throw error
  }
}

/**
 * While nobody can sign in yet, a code for the first lead is kept; afterwards it is forgotten.
 * @param {string} url @param {string} secretsPath @param {Secrets} secrets
 * @returns {Promise<ReadyDatabase>}
 */
async function readyAt(url, secretsPath, secrets) {
  const state = await stateOf(url)
  const { firstLeadCode, ...rest } = secrets
  const due = state.people === 0 ? { ...rest, firstLeadCode: firstLeadCode ?? readableCode() } : rest
  return { url, secretsPath, secrets: keepSecrets(secretsPath, due), state }
}
