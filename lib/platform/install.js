// @ts-check
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { childEnvironment, runQuietly } from './child.js'
import { missingPackages } from './lockfile.js'
import { longStep } from './progress.js'
import { hashOf } from './source-hash.js'
import { readStamp, writeStamp } from './stamp.js'

/**
 * Installs the packages of package-lock.json unless they are there. Install scripts are left out: nothing here
 * needs them but the embedded database, whose links we make ourselves (embedded-binaries.js).
 * @param {string} checkout
 * @throws {import('./messages.js').Trouble} when npm fails
 */
export async function installPackages(checkout) {
  const lockText = readFileSync(join(checkout, 'package-lock.json'), 'utf8')
  const stamp = join(checkout, 'node_modules/.mouldwright/install')
  const wanted = hashOf(lockText)
  if (readStamp(stamp) === wanted) return
  if (!installedAlready(checkout, lockText)) {
    await longStep('Installing packages (about half a minute the first time)', () => install(checkout))
  }
  writeStamp(stamp, wanted)
}

/** Somebody may have run npm themselves. @param {string} checkout @param {string} lockText */
function installedAlready(checkout, lockText) {
  const record = join(checkout, 'node_modules/.package-lock.json')
  if (!existsSync(record)) return false
  return missingPackages(JSON.parse(lockText), JSON.parse(readFileSync(record, 'utf8'))).length === 0
}

/** @param {string} checkout */
function install(checkout) {
  const npmScript = process.env.npm_execpath
  const [command, before] = npmScript?.endsWith('.js') ? [process.execPath, [npmScript]] : ['npm', []]
  const words = ['ci', '--ignore-scripts', '--include=dev', '--include=optional', '--no-audit', '--no-fund']
  return runQuietly(command, [...before, ...words], {
    cwd: checkout,
    env: childEnvironment(),
    failure:
      'The packages could not be installed. npm needs to reach its registry, and to write to node_modules',
  })
}
