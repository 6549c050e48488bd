// @ts-check
import { spawn } from 'node:child_process'
import { Trouble } from './messages.js'

/** Commands under way, so that a stop ends them too. @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set()

/** @type {(pid: number) => void} */
let tell = () => {}

/**
 * Hears the process number of each command that is started, so that a start that is killed leaves word of it.
 * @param {(pid: number) => void} listener
 */
export function onCommand(listener) {
  tell = listener
}

/** @param {import('node:child_process').ChildProcess} child */
function note(child) {
  running.add(child)
  if (child.pid !== undefined) tell(child.pid)
}

export function endCommands() {
  for (const child of running) child.kill('SIGTERM')
}

/**
 * The environment without what npm adds to it, so that a child behaves the same by whatever way we were started.
 * Registry, proxy and certificate settings stay.
 * @param {Readonly<Record<string, string | undefined>>} changes undefined takes a variable away
 * @returns {NodeJS.ProcessEnv}
 */
export function childEnvironment(changes = {}) {
  const noise = /^npm_(lifecycle|package|command|config_(empty|lan|demo|loglevel|argv|local_prefix)$)/
  const kept = Object.entries({ ...process.env, ...changes }).filter(
    ([name, value]) => value !== undefined && !noise.test(name),
  )
  return /** @type {NodeJS.ProcessEnv} */ (Object.fromEntries(kept))
}

/**
 * Runs a command quietly. Its output is shown only when it fails.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd: string, env?: NodeJS.ProcessEnv, failure: string, uid?: number, gid?: number, input?: string, timeoutMs?: number }} options
 *   failure: the sentence to begin with when it fails
 * @returns {Promise<string>} what it wrote
 */
export function runQuietly(command, args, options) {
  const { failure, input, timeoutMs, ...rest } = options
  return new Promise((resolve, reject) => {
    const child = spawn(command, [...args], { ...rest, stdio: 'pipe', windowsHide: true })
    note(child)
    let output = ''
    /** @param {Buffer} chunk */
    const keep = (chunk) => {
      output = (output + chunk).slice(-40_000)
    }
    child.stdout.on('data', keep)
    child.stderr.on('data', keep)
    child.stdin.on('error', () => {})
    child.stdin.end(input ?? '')
    const limit = timeoutMs && setTimeout(() => child.kill('SIGKILL'), timeoutMs)
    child.on('error', (error) => {
      running.delete(child)
      reject(new Trouble(`${failure} (${command}: ${error.message})`))
    })
    child.on('close', (code, signal) => {
      running.delete(child)
      clearTimeout(limit || undefined)
      if (code === 0) resolve(output)
      else reject(new Trouble(`${failure} (${signal ?? `exit code ${code}`})\n${output.trimEnd()}`))
    })
  })
}

/**
 * Runs a command whose output is shown as it comes.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd: string, env: NodeJS.ProcessEnv }} options
 * @returns {Promise<number>} exit code; 1 when it was ended by a signal or could not be started
 */
export function runShown(command, args, options) {
  return new Promise((resolve) => {
    const child = spawn(command, [...args], { ...options, stdio: ['ignore', 'inherit', 'inherit'] })
    note(child)
    /** @param {number | null} code */
    const end = (code) => {
      running.delete(child)
      resolve(code ?? 1)
    }
    child.on('close', end)
    child.on('error', () => end(1))
  })
}
