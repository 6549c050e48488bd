// @ts-check
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { setTimeout as pause } from 'node:timers/promises'

/**
 * Process numbers are given out again after a restart, so a number alone may name a stranger. A process is
 * known by its number and its mark: the moment when it began.
 * @typedef {{ readonly pid: number, readonly mark: string }} KnownProcess
 */

/**
 * The mark of a living process, or null. A zombie (ended, not yet collected by its parent, common in
 * containers without an init) counts as ended.
 * @param {number} pid
 * @returns {string | null}
 */
export function processMark(pid) {
  if (process.platform === 'linux') return linuxMark(pid)
  if (process.platform === 'win32') {
    return spoken('powershell', ['-NoProfile', '-Command', `(Get-Process -Id ${pid}).StartTime.Ticks`])
  }
  const line = spoken('ps', ['-o', 'stat=,lstart=', '-p', String(pid)])
  return line === null || line.startsWith('Z') ? null : line.replace(/^\S+\s+/, '')
}

/** @param {number} pid */
function linuxMark(pid) {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
    const [state, startTicks] = [fields[0], fields[19]]
    if (state === 'Z' || state === 'X') return null
    return `${bootId()}:${startTicks}`
  } catch {
    return null
  }
}

function bootId() {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()
  } catch {
    return 'boot'
  }
}

/** @param {string} command @param {readonly string[]} args */
function spoken(command, args) {
  const { status, stdout } = spawnSync(command, [...args], { encoding: 'utf8', windowsHide: true })
  const text = status === 0 ? stdout.trim() : ''
  return text === '' ? null : text
}

/**
 * @param {number} pid a living process
 * @returns {KnownProcess}
 */
export function known(pid) {
  return { pid, mark: processMark(pid) ?? 'ended' }
}

/** @param {KnownProcess | undefined} one */
export function lives(one) {
  return one !== undefined && processMark(one.pid) === one.mark
}

/**
 * Waits until the condition holds.
 * @param {() => boolean | Promise<boolean>} condition
 * @param {number} withinMs
 * @returns {Promise<boolean>} false when it didn't hold in time
 */
export async function waitUntil(condition, withinMs, everyMs = 25) {
  const end = Date.now() + withinMs
  while (!(await condition())) {
    if (Date.now() > end) return false
    await pause(everyMs)
  }
  return true
}

/**
 * Ends a process that is not a child of ours, by ever harder signals.
 * @param {KnownProcess} one
 * @param {readonly (readonly [NodeJS.Signals, number])[]} steps signal and how long to wait, ms
 */
export async function endProcess(one, steps) {
  for (const [signal, waitMs] of steps) {
    if (!lives(one)) return
    try {
      process.kill(one.pid, signal)
    } catch {
      // ended between the look and the signal
    }
    if (await waitUntil(() => !lives(one), waitMs)) return
  }
}
