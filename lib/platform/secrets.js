// @ts-check
import { randomBytes, randomInt } from 'node:crypto'
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { secretsUnreadable, Trouble } from './messages.js'

/**
 * @typedef {{ name: string, email: string, role: string, password: string }} DemoPassword
 * @typedef {object} Secrets
 * @property {string} authSecret signs sessions
 * @property {string} actionsKey 32 bytes, base64: encrypts what server actions carry
 * @property {string} keeperPassword the embedded server's administrator
 * @property {string} databasePassword the role that the app connects as
 * @property {'own' | 'demo'} [shop] which database of the embedded server is shown
 * @property {boolean} [demoLoading] true while the demo shop is being put in: a start that finds it begins anew
 * @property {readonly DemoPassword[]} [demoPasswords]
 * @property {readonly DemoPassword[]} [formerDemoPasswords] of a demo shop that was left: they hold until they are changed
 * @property {string} [firstLeadCode] lets the first lead of an empty shop in, once
 */

/** @returns {Secrets} */
function fresh() {
  return {
    authSecret: randomBytes(32).toString('base64url'),
    actionsKey: randomBytes(32).toString('base64'),
    keeperPassword: randomBytes(24).toString('base64url'),
    databasePassword: randomBytes(24).toString('base64url'),
  }
}

/**
 * Reads the secrets, making what is missing.
 * @param {string} path
 * @returns {Secrets}
 * @throws {Trouble} when the file is there but can't be understood
 */
export function readSecrets(path) {
  const made = fresh()
  if (!existsSync(path)) return keepSecrets(path, made)
  /** @type {Partial<Secrets>} */
  let kept
  try {
    kept = JSON.parse(readFileSync(path, 'utf8'))
  } catch (error) {
    throw new Trouble(secretsUnreadable(path, error instanceof Error ? error.message : String(error)))
  }
  const whole = { ...made, ...kept }
  return Object.keys(made).every((name) => name in kept) ? whole : keepSecrets(path, whole)
}

/**
 * Writes the secrets, readable by this account alone. The file is replaced whole, never half-written.
 * @param {string} path
 * @param {Secrets} secrets
 * @returns {Secrets} the same
 */
export function keepSecrets(path, secrets) {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
  const next = `${path}.${process.pid}`
  writeFileSync(next, `${JSON.stringify(secrets, null, 2)}\n`, { mode: 0o600 })
  chmodSync(next, 0o600)
  renameSync(next, path)
  return secrets
}

/**
 * A code that can be read aloud and typed: four groups of four letters and digits without look-alikes (77 bits).
 * @param {(below: number) => number} draw a whole number from 0 to below - 1
 */
export function readableCode(draw = randomInt) {
  const letters = 'abcdefghjkmnpqrstuvwxyz23456789'
  const group = () => Array.from({ length: 4 }, () => letters[draw(letters.length)]).join('')
  return [group(), group(), group(), group()].join('-')
}
