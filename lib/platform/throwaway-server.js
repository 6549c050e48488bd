// @ts-check
import { randomBytes } from 'node:crypto'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkout } from './checkout.js'
import { databaseFolder } from './database-folder.js'
import { databaseHome, embeddedUrl, startEmbedded } from './embedded-shop.js'
import { isRoot, openSystemFolder } from './place.js'
import { endOrphan } from './postmaster.js'
import { endProcess, known, lives } from './process-mark.js'

/**
 * A server of its own for tests and for developers' commands, gone without a trace when it is stopped.
 * @typedef {object} Throwaway
 * @property {string} url of its `postgres` database, as a role that may make databases
 * @property {import('./database-folder.js').DatabaseHome} home
 * @property {import('./database-server.js').DatabaseServer} server
 * @property {() => Promise<void>} stop
 */

/**
 * @param {{ durable?: boolean }} [how] durable: writes reach the disk before they are acknowledged, as in a shop
 * @returns {Promise<Throwaway>}
 */
export async function startThrowaway({ durable = false } = {}) {
  const folder = await throwawayFolder('server')
  const password = () => randomBytes(18).toString('base64url')
  const secrets = { keeperPassword: password(), databasePassword: password() }
  const home = databaseHome(checkout, { folder, log: join(folder, 'database.log'), durable, secrets })
  const server = await startEmbedded(home)
  return {
    url: embeddedUrl(home, server, 'postgres'),
    home,
    server,
    stop: async () => {
      await server.stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/**
 * A new folder that the next test run removes, should this one be killed. A web server noted in it (web.json) and a
 * database in it are ended then.
 * @param {string} purpose
 */
export async function throwawayFolder(purpose) {
  const base = baseFolder()
  await sweep(base)
  const folder = mkdtempSync(join(base, `${purpose}-`))
  // The account that runs Postgres must get through to the data in it.
  chmodSync(folder, 0o711)
  writeFileSync(join(folder, 'owner.json'), JSON.stringify(known(process.pid)))
  return folder
}

function baseFolder() {
  const account = process.getuid?.() ?? 'user'
  const base = isRoot()
    ? join(openSystemFolder(), 'throwaway')
    : join(realpathSync(tmpdir()), `mouldwright-${account}`)
  mkdirSync(base, { recursive: true })
  chmodSync(base, isRoot() ? 0o711 : 0o700)
  return base
}

/** Ends and removes what killed test runs left behind. @param {string} base */
async function sweep(base) {
  for (const name of readdirSync(base)) {
    const folder = join(base, name)
    if (ownerLives(folder)) continue
    const web = readKnown(join(folder, 'web.json'))
    if (web !== null)
      await endProcess(web, [
        ['SIGTERM', 2_000],
        ['SIGKILL', 2_000],
      ])
    if (existsSync(join(folder, 'database'))) await endOrphan(databaseFolder({ folder }))
    rmSync(folder, { recursive: true, force: true })
  }
}

/** @param {string} folder */
function ownerLives(folder) {
  const owner = readKnown(join(folder, 'owner.json'))
  // One that is being made at this moment has no owner noted yet.
  return owner === null ? Date.now() - statSync(folder).mtimeMs < 60_000 : lives(owner)
}

/** @param {string} path @returns {import('./process-mark.js').KnownProcess | null} */
function readKnown(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return null
  }
}
