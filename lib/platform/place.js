// @ts-check
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { shopBelongsToAccount, shopBelongsToRoot, Trouble } from './messages.js'

/**
 * Where a checkout keeps its shop.
 * @typedef {object} Place
 * @property {string} folder holds the database and `inside`
 * @property {string} inside this account's alone: secrets, run file, logs
 * @property {string} secrets
 * @property {string} run
 */

/** For root: readable by the unprivileged account that runs Postgres, whatever folder the checkout is in. */
const systemFolder = '/var/lib/mouldwright'

export function isRoot() {
  return process.getuid?.() === 0
}

/** @param {string} checkout */
function placeKey(checkout) {
  return createHash('sha256').update(checkout).digest('hex').slice(0, 16)
}

/**
 * Finds or makes the place: `.mouldwright/` of the checkout, and for root a system folder keyed by the checkout's
 * path. Another account's shop is refused rather than a second one begun beside it.
 * @param {string} checkout
 * @returns {Place}
 */
export function dataPlace(checkout) {
  const near = join(checkout, '.mouldwright')
  return isRoot() ? rootPlace(checkout, near) : ordinaryPlace(near)
}

/** Where the run file of a checkout is, if it was ever started; makes nothing. @param {string} checkout */
export function runFileOf(checkout) {
  const folder = isRoot() ? join(systemFolder, placeKey(checkout)) : join(checkout, '.mouldwright')
  return join(folder, 'inside/run.json')
}

/** @param {string} near */
function ordinaryPlace(near) {
  const elsewhere = readWhere(near)
  if (elsewhere !== null) throw new Trouble(shopBelongsToRoot(elsewhere.folder))
  mkdirSync(near, { recursive: true, mode: 0o700 })
  return placeIn(near)
}

/** @param {string} checkout @param {string} near */
function rootPlace(checkout, near) {
  const owner = accountOf(join(near, 'database'))
  if (owner !== null) throw new Trouble(shopBelongsToAccount(owner, near))
  const folder = join(systemFolder, placeKey(checkout))
  const before = readWhere(near)
  const moved = before !== null && before.checkout !== checkout && !existsSync(before.checkout)
  openSystemFolder()
  if (moved && existsSync(before.folder) && !existsSync(folder)) renameSync(before.folder, folder)
  mkdirSync(folder, { recursive: true })
  chmodSync(folder, 0o711)
  mkdirSync(near, { recursive: true })
  writeFileSync(join(near, 'where.json'), `${JSON.stringify({ checkout, folder }, null, 2)}\n`)
  return placeIn(folder)
}

/** Makes the system folder such that other accounts can pass through it, whatever umask root has. */
export function openSystemFolder() {
  mkdirSync(systemFolder, { recursive: true })
  chmodSync(systemFolder, 0o755)
  return systemFolder
}

/** @param {string} folder @returns {Place} */
function placeIn(folder) {
  const inside = join(folder, 'inside')
  mkdirSync(inside, { recursive: true, mode: 0o700 })
  chmodSync(inside, 0o700)
  return { folder, inside, secrets: join(inside, 'secrets.json'), run: join(inside, 'run.json') }
}

/** @param {string} near @returns {{ checkout: string, folder: string } | null} */
function readWhere(near) {
  try {
    return JSON.parse(readFileSync(join(near, 'where.json'), 'utf8'))
  } catch {
    return null
  }
}

/** The name of the account that owns a folder, null when there is none or it is root's. @param {string} folder */
function accountOf(folder) {
  if (!existsSync(folder)) return null
  const { uid } = statSync(folder)
  if (uid === 0) return null
  const said = spawnSync('id', ['-un', String(uid)], { encoding: 'utf8' })
  return said.status === 0 ? said.stdout.trim() : `number ${uid}`
}
