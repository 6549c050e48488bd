// @ts-check
import { spawnSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { Trouble } from './messages.js'
import { isRoot } from './place.js'
import { say } from './progress.js'

/** @typedef {{ readonly uid: number, readonly gid: number }} Account */

const ownName = 'mouldwright'

/**
 * The account that runs Postgres: undefined means "this one". Postgres refuses root, so for root it is the account
 * that owns the data already, else one of our own, else an unprivileged one that the system has.
 * @param {string} database the data folder, which may not be there yet
 * @returns {Account | undefined}
 */
export function databaseAccount(database) {
  if (!isRoot()) return undefined
  if (existsSync(database)) {
    const { uid, gid } = statSync(database)
    if (uid !== 0) return { uid, gid }
  }
  const account = lookUp(ownName) ?? make() ?? lookUp('postgres') ?? lookUp('nobody')
  if (account === undefined) {
    throw new Trouble(
      `Postgres refuses to run as root, and no unprivileged account could be found or made. Make one ("useradd --system ${ownName}"), or run npm start as an ordinary user.`,
    )
  }
  return account
}

/** @param {string} name @returns {Account | undefined} */
function lookUp(name) {
  const [uid, gid] = ['-u', '-g'].map((flag) => {
    const said = spawnSync('id', [flag, name], { encoding: 'utf8' })
    return said.status === 0 ? Number(said.stdout.trim()) : Number.NaN
  })
  if (
    uid === undefined ||
    gid === undefined ||
    !Number.isInteger(uid) ||
    !Number.isInteger(gid) ||
    uid === 0
  ) {
    return undefined
  }
  return { uid, gid }
}

function make() {
  const ways = [
    [
      'useradd',
      '--system',
      '--user-group',
      '--no-create-home',
      '--home-dir',
      '/nonexistent',
      '--shell',
      '/bin/false',
      ownName,
    ],
    ['adduser', '-S', '-D', '-H', '-s', '/bin/false', ownName],
  ]
  for (const [command, ...words] of ways) {
    if (command !== undefined && spawnSync(command, words, { stdio: 'ignore' }).status === 0) {
      say(`Made the system account "${ownName}": Postgres refuses to run as root, so it runs as that.`)
      return lookUp(ownName)
    }
  }
  return undefined
}
