// @ts-check
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** @param {string | Buffer} content */
export function hashOf(content) {
  return createHash('sha256').update(content).digest('hex')
}

/**
 * One hash over files and folders: names and contents. Missing ones count as missing, so taking a file away
 * changes the hash; times and permissions do not count, so a fresh clone gives the same hash.
 * @param {string} root
 * @param {readonly string[]} paths files or folders, relative to root
 * @param {(path: string) => boolean} skip paths (relative, with /) that don't matter
 */
export function sourceHash(root, paths, skip = () => false) {
  const hash = createHash('sha256')
  for (const path of paths.flatMap((start) => filesUnder(root, start, skip)).sort()) {
    hash.update(`${path}\0${hashOf(readFileSync(join(root, path)))}\n`)
  }
  return hash.digest('hex')
}

/**
 * @param {string} root
 * @param {string} path
 * @param {(path: string) => boolean} skip
 * @returns {string[]}
 */
function filesUnder(root, path, skip) {
  const full = join(root, path)
  if (skip(path) || !existsSync(full)) return []
  if (!statSync(full).isDirectory()) return [path]
  return readdirSync(full).flatMap((name) => filesUnder(root, `${path}/${name}`, skip))
}
