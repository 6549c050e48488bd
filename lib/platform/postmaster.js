// @ts-check
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync, readlinkSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { endProcess, known, lives, processMark, waitUntil } from './process-mark.js'

/**
 * What Postgres itself notes in its data folder while it runs.
 * @typedef {{ pid: number, port: number, ready: boolean }} Postmaster
 */

/**
 * Reads the text of postmaster.pid (one fact a line: pid, folder, start, port, socket folder, address, memory key, state).
 * @param {string} text
 * @returns {Postmaster | null} null while the first lines are still being written
 */
export function parsePostmaster(text) {
  const lines = text.split('\n').map((line) => line.trim())
  const [pid, port] = [Number(lines[0]), Number(lines[3])]
  if (!Number.isInteger(pid) || pid <= 0) return null
  return { pid, port: Number.isInteger(port) ? port : 0, ready: lines[7] === 'ready' }
}

/** @param {string} data @returns {Postmaster | null} */
export function readPostmaster(data) {
  try {
    return parsePostmaster(readFileSync(join(data, 'postmaster.pid'), 'utf8'))
  } catch {
    return null
  }
}

/** SIGINT is Postgres' fast stop, SIGQUIT its immediate one (the next start recovers from the write-ahead log). */
const stopSteps = /** @type {const} */ ([
  ['SIGINT', 30_000],
  ['SIGQUIT', 10_000],
  ['SIGKILL', 5_000],
])

/**
 * Ends whatever a killed launcher left on a data folder, and takes away a postmaster.pid that would keep Postgres
 * from starting though its process is gone.
 * @param {string} data
 * @returns {Promise<boolean>} whether a server was running
 */
export async function endOrphan(data) {
  const found = readPostmaster(data)
  const running = found !== null && isServerOf(found.pid, data)
  if (running) await endProcess(known(found.pid), stopSteps)
  await waitUntil(() => processesIn(data).length === 0, 10_000)
  for (const pid of processesIn(data)) await endProcess(known(pid), [['SIGKILL', 5_000]])
  const left = readPostmaster(data)
  // Postgres clears a pid file whose process is gone, but not one whose number is a zombie's or by now a stranger's.
  if (left !== null && !isServerOf(left.pid, data)) rmSync(join(data, 'postmaster.pid'), { force: true })
  return running
}

/** Whether a living process is the Postgres server of this folder. @param {number} pid @param {string} data */
function isServerOf(pid, data) {
  if (processMark(pid) === null) return false
  if (process.platform === 'linux') return workingFolder(pid) === data
  if (process.platform === 'win32')
    return said('tasklist', ['/FI', `PID eq ${pid}`, '/NH']).includes('postgres')
  return said('ps', ['-o', 'command=', '-p', String(pid)]).includes(data)
}

/**
 * Every living process that works in a data folder: after its server was killed, the server's children live on
 * for a moment. Known on Linux only; elsewhere Postgres' own check of its shared memory has to do.
 * @param {string} data
 * @returns {number[]}
 */
function processesIn(data) {
  if (process.platform !== 'linux') return []
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((pid) => workingFolder(pid) === data && commandOf(pid) === 'postgres' && lives(known(pid)))
}

/** @param {number} pid */
function workingFolder(pid) {
  try {
    return readlinkSync(`/proc/${pid}/cwd`)
  } catch {
    return null
  }
}

/** @param {number} pid */
function commandOf(pid) {
  try {
    return basename(readFileSync(`/proc/${pid}/comm`, 'utf8').trim())
  } catch {
    return null
  }
}

/** @param {string} command @param {readonly string[]} words */
function said(command, words) {
  return spawnSync(command, [...words], { encoding: 'utf8', windowsHide: true }).stdout ?? ''
}
