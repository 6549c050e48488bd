// @ts-check
import {
  chownSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { runQuietly } from './child.js'
import { program } from './embedded-binaries.js'
import { dataOfOtherVersion, Trouble } from './messages.js'

/**
 * @typedef {object} DatabaseHome
 * @property {string} folder the database is folder/database
 * @property {string} binaries
 * @property {string} major Postgres' major version that the binaries are
 * @property {import('./account.js').Account | undefined} account who runs it
 * @property {{ keeperPassword: string, databasePassword: string }} secrets
 * @property {string} log
 * @property {boolean} durable false only for a server that is thrown away
 */

/** The administrator's role and the role that the app connects as. */
export const keeperRole = 'keeper'
export const appRole = 'mouldwright'

/** @param {{ readonly folder: string }} home */
export const databaseFolder = ({ folder }) => join(folder, 'database')

/**
 * Makes the data folder when there is none. It is made aside and moved into place when it is whole, so a start that
 * is killed in the middle leaves nothing behind that looks like a database.
 * @param {DatabaseHome} home
 * @returns {Promise<void>}
 * @throws {Trouble} when initdb fails, or another Postgres wrote the data
 */
export async function ensureDatabaseFolder(home) {
  const data = databaseFolder(home)
  if (existsSync(join(data, 'PG_VERSION'))) {
    const found = readFileSync(join(data, 'PG_VERSION'), 'utf8').trim()
    if (found !== home.major) throw new Trouble(dataOfOtherVersion(found, home.major, data))
    return
  }
  for (const name of readdirSync(home.folder)) {
    if (name.startsWith(makingName))
      rmSync(join(home.folder, name), { recursive: true, force: true, maxRetries: 5 })
  }
  const making = mkdtempSync(join(home.folder, makingName))
  const password = join(making, 'password')
  writeFileSync(password, home.secrets.keeperPassword, { mode: 0o600 })
  giveTo(home, making, password)
  const words = ['--pgdata', join(making, 'data'), '--username', keeperRole, '--pwfile', password]
  const locale = ['--encoding=UTF8', '--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8']
  const sync = home.durable ? [] : ['--no-sync']
  await runQuietly(program(home.binaries, 'initdb'), [...words, ...locale, '--auth=scram-sha-256', ...sync], {
    cwd: making,
    env: postgresEnvironment(),
    failure: 'The database folder could not be made',
    ...home.account,
  })
  renameSync(join(making, 'data'), data)
  rmSync(making, { recursive: true, force: true })
}

const makingName = 'database-in-the-making-'

/** @param {DatabaseHome} home @param {readonly string[]} paths */
function giveTo(home, ...paths) {
  if (home.account === undefined) return
  for (const path of paths) chownSync(path, home.account.uid, home.account.gid)
}

/**
 * Sets the administrator's password anew in single-user mode: the way back in when the secrets file is lost.
 * @param {DatabaseHome} home the server must not be running
 */
export async function resetKeeperPassword(home) {
  await runQuietly(program(home.binaries, 'postgres'), ['--single', '-D', databaseFolder(home), 'postgres'], {
    cwd: databaseFolder(home),
    env: postgresEnvironment(),
    input: `alter role ${keeperRole} password '${home.secrets.keeperPassword}'\n`,
    failure: 'The password of the built-in database could not be set anew',
    ...home.account,
  })
}

/** Nothing of the surroundings (PGDATA, PGPORT, locale) may change what the server does. @returns {NodeJS.ProcessEnv} */
export function postgresEnvironment() {
  const kept = ['PATH', 'SystemRoot', 'TEMP', 'TMP'].flatMap((name) => {
    const value = process.env[name]
    return value === undefined ? [] : [[name, value]]
  })
  return /** @type {NodeJS.ProcessEnv} */ ({ ...Object.fromEntries(kept), LC_ALL: 'C', TZ: 'UTC' })
}
