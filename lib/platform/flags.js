// @ts-check
import { Trouble } from './messages.js'

/** @typedef {{ shop: 'own' | 'demo' | 'as before', lan: boolean, port: number, help: boolean }} StartFlags */

export const startHelp = `npm start -- [--empty | --demo] [--lan]

  --empty   an empty shop of your own instead of the demo shop (kept apart, and remembered)
  --demo    the demo shop, into an empty database of its own (with DATABASE_URL: into that one, if empty)
  --lan     let other devices on this network in (plain http)

  PORT=3001 npm start            another port (default 3000)
  DATABASE_URL=postgres://...    a Postgres server of yours instead of the built-in one
  APP_URL=https://...            the address that people type, if a proxy stands in front`

/**
 * Reads the flags of `npm start`. npm swallows options given without " -- " before them and leaves
 * npm_config_<name>=true in the environment: those count too.
 * @param {readonly string[]} argv
 * @param {Readonly<Record<string, string | undefined>>} env
 * @returns {StartFlags}
 * @throws {Trouble} for an unknown flag, contradicting flags or a bad PORT
 */
export function readStartFlags(argv, env) {
  const known = ['--empty', '--demo', '--lan', '--help']
  const stranger = argv.find((word) => !known.includes(word))
  if (stranger !== undefined) {
    throw new Trouble(`npm start doesn't know "${stranger}". It knows: ${known.join(', ')}`)
  }
  /** @param {string} name */
  const given = (name) => argv.includes(`--${name}`) || env[`npm_config_${name}`] === 'true'
  if (given('empty') && given('demo')) throw new Trouble('Give --empty or --demo, not both.')
  return {
    shop: given('empty') ? 'own' : given('demo') ? 'demo' : 'as before',
    lan: given('lan'),
    port: readPort(env.PORT),
    help: argv.includes('--help'),
  }
}

/** @param {string | undefined} text */
function readPort(text) {
  if (text === undefined || text.trim() === '') return 3000
  const port = Number(text)
  if (!Number.isInteger(port) || port < 1 || port > 65535) {
    throw new Trouble(
      `PORT must be a whole number from 1 to 65535, and it is "${text}". For example: PORT=3001 npm start`,
    )
  }
  return port
}

const roles = /** @type {const} */ (['lead', 'laminator', 'viewer'])

/**
 * Reads the flags of `npm run token`.
 * @param {readonly string[]} argv
 * @returns {{ name: string, role: (typeof roles)[number] }}
 */
export function readTokenFlags(argv) {
  const usage = `Use: npm run token -- --name "spreadsheet" --role ${roles.join('|')}`
  /** @type {Record<string, string>} */
  const values = {}
  for (let at = 0; at < argv.length; at += 1) {
    const [flag, inline] = (argv[at] ?? '').split(/=(.*)/s)
    if (flag !== '--name' && flag !== '--role') throw new Trouble(`"${argv[at]}" is not known here. ${usage}`)
    const value = inline ?? argv[++at]
    if (value === undefined || value.trim() === '') throw new Trouble(`${flag} needs a value. ${usage}`)
    values[flag] = value.trim()
  }
  const name = values['--name']
  const role = roles.find((known) => known === values['--role'])
  if (name === undefined) throw new Trouble(`The token needs a name that says what it is for. ${usage}`)
  if (role === undefined) throw new Trouble(`The token needs a role: ${roles.join(', ')}. ${usage}`)
  return { name, role }
}

export const defaultKinds = /** @type {const} */ (['core', 'reference', 'store', 'browser', 'faults'])
const allKinds = /** @type {const} */ ([...defaultKinds, 'long', 'bench'])

/** @typedef {(typeof allKinds)[number]} Kind */

/**
 * Reads the words after `node lib/platform/test.js`: a kind, then words that narrow down the test files.
 * @param {readonly string[]} argv
 * @returns {{ kinds: readonly Kind[], whole: boolean, only: readonly string[] }} whole: nothing was left out
 */
export function readTestFlags(argv) {
  const [word, ...only] = argv
  if (word === undefined) return { kinds: defaultKinds, whole: true, only: [] }
  const kind = allKinds.find((known) => known === word)
  if (kind === undefined) {
    throw new Trouble(`There is no kind of test called "${word}". Kinds: ${allKinds.join(', ')}`)
  }
  return { kinds: [kind], whole: false, only }
}
