// @ts-check
import { spawn } from 'node:child_process'
import { closeSync, openSync, readFileSync, statSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { childEnvironment } from './child.js'
import { Trouble } from './messages.js'
import { known, waitUntil } from './process-mark.js'

/**
 * @typedef {object} WebServer
 * @property {import('./process-mark.js').KnownProcess} process
 * @property {Promise<void>} ended settles when the process has ended, for whatever reason
 * @property {() => Promise<void>} stop lets requests finish, for a while
 * @property {() => void} force
 */

/**
 * Starts the built app and waits until it answers.
 * @param {string} checkout
 * @param {{ host: string, port: number, log: string, env: Readonly<Record<string, string>>, onProcess: (one: import('./process-mark.js').KnownProcess) => void }} options
 *   onProcess: hears of the process before it answers, so that word of it is left if we are killed
 * @returns {Promise<WebServer>}
 * @throws {Trouble} when it ends or doesn't answer, with the end of its log
 */
export async function startWebServer(checkout, { host, port, log, env, onProcess }) {
  shorten(log)
  const out = openSync(log, 'a', 0o600)
  const from = statSync(log).size
  const next = join(checkout, 'node_modules/next/dist/bin/next')
  const child = spawn(process.execPath, [next, 'start', '-H', host, '-p', String(port)], {
    cwd: checkout,
    env: childEnvironment({ ...env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' }),
    // A group of its own: Ctrl-C in the terminal must reach the launcher alone, which stops things in order.
    detached: process.platform !== 'win32',
    stdio: ['ignore', out, out],
    windowsHide: true,
  })
  closeSync(out)
  if (child.pid !== undefined) onProcess(known(child.pid))
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
  const answers = await waitUntil(async () => over || (await answer(port)), 60_000, 50)
  if (over || !answers || child.pid === undefined) {
    child.kill('SIGKILL')
    const said = readFileSync(log, 'utf8').slice(from).trim().slice(-3000)
    throw new Trouble(
      `The web server ${over ? 'ended at once' : 'does not answer'}. The end of ${log}:\n${said}`,
    )
  }
  return {
    process: known(child.pid),
    ended,
    stop: async () => {
      if (over) return
      child.kill('SIGTERM')
      // Open live-refresh streams would hold it for ever.
      if (!(await waitUntil(() => over, 3_000))) child.kill('SIGKILL')
      await ended
    },
    force: () => {
      if (!over) child.kill('SIGKILL')
    },
  }
}

/** @param {number} port */
async function answer(port) {
  try {
    const response = await fetch(`http://127.0.0.1:${port}/api/health`, {
      signal: AbortSignal.timeout(5_000),
    })
    return response.status < 500
  } catch {
    return false
  }
}

/** Keeps the log from growing for ever. @param {string} log */
function shorten(log) {
  try {
    if (statSync(log).size > 10_000_000) truncateSync(log, 0)
  } catch {
    // none yet
  }
}
