// @ts-check
import { readFileSync } from 'node:fs'
import { nodeTooOld } from './messages.js'

/**
 * Whether a version comes before the least one. Both as "20.9" or "v20.9.1"; missing parts count as 0.
 * @param {string} version
 * @param {string} least
 */
export function isOlder(version, least) {
  const left = parts(version)
  const right = parts(least)
  for (const place of [0, 1, 2]) {
    const difference = (left[place] ?? 0) - (right[place] ?? 0)
    if (difference !== 0) return difference < 0
  }
  return false
}

/** @param {string} version */
function parts(version) {
  return version
    .replace(/^[^0-9]*/, '')
    .split('.')
    .map((part) => Number.parseInt(part, 10) || 0)
}

/**
 * Whether this Node is new enough, by package.json's engines. If not, says so and lets the process fail.
 * @param {string} checkout
 */
export function tellNodeVersion(checkout) {
  const { engines } = JSON.parse(readFileSync(`${checkout}/package.json`, 'utf8'))
  const least = String(engines.node).replace('>=', '').trim()
  const fit = !isOlder(process.versions.node, least)
  if (!fit) {
    console.error(nodeTooOld(process.versions.node, least))
    process.exitCode = 1
  }
  return fit
}
