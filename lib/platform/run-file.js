// @ts-check
import { randomUUID } from 'node:crypto'
import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { alreadyRunning, Trouble } from './messages.js'
import { known, lives } from './process-mark.js'

/**
 * The run file says who runs this shop and where. It is also the lock that keeps a second start away.
 * @typedef {import('./process-mark.js').KnownProcess} KnownProcess
 * @typedef {object} Run
 * @property {KnownProcess} launcher
 * @property {string} [address] where the app answers
 * @property {string} [databaseUrl] the database in use
 * @property {KnownProcess} [web]
 * @property {KnownProcess} [command] what was being run last: npm, a build, initdb
 */

/**
 * @param {string} path
 * @returns {Run | null}
 */
export function readRun(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return null
  }
}

/**
 * Takes the run file for this process.
 * @param {string} path
 * @returns {{ before: Run | null, note: (more: Partial<Run>) => void, release: () => void }}
 *   before: what a start that was killed left behind
 * @throws {Trouble} when another start holds it
 */
export function takeRun(path) {
  /** @type {Run} */
  let run = { launcher: known(process.pid) }
  const before = readRun(path)
  if (before !== null && lives(before.launcher)) refuse(before)
  moveAway(path, before)
  claim(path, run)
  return {
    before,
    note: (more) => {
      run = { ...run, ...more }
      const next = `${path}.${randomUUID()}`
      writeFileSync(next, `${JSON.stringify(run, null, 2)}\n`, { mode: 0o600 })
      renameSync(next, path)
    },
    release: () => rmSync(path, { force: true }),
  }
}

/** @param {Run} other @returns {never} */
function refuse(other) {
  throw new Trouble(alreadyRunning(other.launcher.pid, other.address))
}

/**
 * Of two starts that both see a dead one's file only one can move it away. If what was moved turns out to be the
 * quicker one's new file, it is put back.
 * @param {string} path @param {Run | null} before
 */
function moveAway(path, before) {
  const aside = `${path}.${randomUUID()}`
  try {
    renameSync(path, aside)
  } catch {
    return
  }
  const moved = readRun(aside)
  const quicker = moved !== null && moved.launcher.mark !== before?.launcher.mark && lives(moved.launcher)
  if (quicker) renameSync(aside, path)
  else rmSync(aside)
  if (quicker) refuse(moved)
}

/** A link is made whole or not at all, and never over another's file. @param {string} path @param {Run} run */
function claim(path, run) {
  const draft = `${path}.${randomUUID()}`
  writeFileSync(draft, JSON.stringify(run), { mode: 0o600 })
  try {
    linkSync(draft, path)
  } catch (error) {
    const other = readRun(path)
    if (other !== null) refuse(other)
    const code = error instanceof Error && 'code' in error ? error.code : error
    throw new Trouble(
      `${path} could not be made (${code}). Is the folder writable, and on a disk that knows links?`,
    )
  } finally {
    rmSync(draft, { force: true })
  }
}
