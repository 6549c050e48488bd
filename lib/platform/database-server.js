// @ts-check
import { spawn, spawnSync } from 'node:child_process'
import { closeSync, openSync, readFileSync, statSync, truncateSync } from 'node:fs'
import { setTimeout as pause } from 'node:timers/promises'
import { databaseFolder, postgresEnvironment } from './database-folder.js'
import { program } from './embedded-binaries.js'
import { freePort } from './free-port.js'
import { Trouble } from './messages.js'
import { endOrphan, readPostmaster } from './postmaster.js'
import { known, waitUntil } from './process-mark.js'

/**
 * A running embedded server.
 * @typedef {object} DatabaseServer
 * @property {number} port on 127.0.0.1
 * @property {import('./process-mark.js').KnownProcess} process
 * @property {Promise<void>} ended settles when the process has ended, for whatever reason
 * @property {() => Promise<void>} stop ends connections, writes everything out
 * @property {() => void} force ends at once; the next start recovers from the write-ahead log
 */

/**
 * Starts Postgres on a data folder, after ending whatever was left on it.
 * @param {import('./database-folder.js').DatabaseHome} home
 * @param {number} [wantedPort] the port to come back on; without it a free one
 * @returns {Promise<DatabaseServer>}
 * @throws {Trouble} when it doesn't come up, with the end of its log
 */
export async function startDatabaseServer(home, wantedPort) {
  await endOrphan(databaseFolder(home))
  shorten(home.log)
  const tries = wantedPort === undefined ? 5 : 40
  for (let attempt = 1; ; attempt += 1) {
    const server = await launch(home, wantedPort ?? (await freePort()))
    if (typeof server !== 'string') return server
    // The port was snatched, or children of a killed server still hold the shared memory: both pass.
    const passing = /could not bind|Address already in use|pre-existing shared memory|lock file/i.test(server)
    if (!passing || attempt === tries) {
      throw new Trouble(`The built-in database did not start. The end of ${home.log}:\n${server}`)
    }
    await pause(250)
  }
}

/**
 * @param {import('./database-folder.js').DatabaseHome} home
 * @param {number} port
 * @returns {Promise<DatabaseServer | string>} or what it said when it ended early
 */
async function launch(home, port) {
  const data = databaseFolder(home)
  const log = openSync(home.log, 'a', 0o600)
  const from = statSync(home.log).size
  const settings = [
    `port=${port}`,
    'listen_addresses=127.0.0.1',
    'unix_socket_directories=',
    'timezone=UTC',
    'log_timezone=UTC',
    'max_connections=60',
    `fsync=${home.durable ? 'on' : 'off'}`,
    'log_min_messages=warning',
  ]
  const child = spawn(
    program(home.binaries, 'postgres'),
    ['-D', data, ...settings.flatMap((setting) => ['-c', setting])],
    {
      cwd: data,
      env: postgresEnvironment(),
      // A group of its own: Ctrl-C in the terminal must reach the launcher alone, which stops things in order.
      detached: process.platform !== 'win32',
      stdio: ['ignore', log, log],
      windowsHide: true,
      ...home.account,
    },
  )
  closeSync(log)
  let over = false
  /** @type {Promise<void>} */
  const ended = new Promise((resolve) => {
    const end = () => {
      over = true
      resolve()
    }
    child.on('exit', end)
    child.on('error', end)
  })
  const pid = child.pid
  const ready = () => {
    const state = readPostmaster(data)
    return over || (state !== null && state.pid === pid && state.ready)
  }
  // Recovery after a crash may take long; as long as the process lives it is at work.
  await waitUntil(ready, 600_000)
  if (over || pid === undefined) return readFileSync(home.log, 'utf8').slice(from).trim().slice(-2000)
  return {
    port,
    process: known(pid),
    ended,
    stop: async () => {
      if (over) return
      if (process.platform === 'win32') fastStop(home, data)
      else child.kill('SIGINT')
      const calm = await waitUntil(() => over, 30_000)
      if (!calm) child.kill('SIGQUIT')
      await ended
    },
    force: () => {
      if (!over) child.kill('SIGQUIT')
    },
  }
}

/** Windows has no signals that Postgres could catch. @param {import('./database-folder.js').DatabaseHome} home @param {string} data */
function fastStop(home, data) {
  spawnSync(program(home.binaries, 'pg_ctl'), ['stop', '-D', data, '-m', 'fast', '-w'], { windowsHide: true })
}

/** Keeps the log from growing for ever. @param {string} log */
function shorten(log) {
  try {
    if (statSync(log).size > 5_000_000) truncateSync(log, 0)
  } catch {
    // none yet
  }
}
