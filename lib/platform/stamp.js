// @ts-check
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

/** A stamp is the hash of what a step was last done for, kept beside what the step made. */

/** @param {string} path */
export function readStamp(path) {
  try {
    return readFileSync(path, 'utf8').trim()
  } catch {
    return null
  }
}

/** @param {string} path @param {string} hash */
export function writeStamp(path, hash) {
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, `${hash}\n`)
}
