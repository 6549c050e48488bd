// @ts-check
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { childEnvironment, runQuietly } from './child.js'
import { Trouble, told } from './messages.js'
import { isRoot } from './place.js'
import { longStep, say } from './progress.js'

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
]

const usualPlaces = [
  '/usr/lib/chromium/chromium',
  '/snap/bin/chromium',
  '/opt/google/chrome/chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((variable) => {
    const base = process.env[variable]
    return base === undefined ? [] : [join(base, 'Google/Chrome/Application/chrome.exe')]
  }),
]

/**
 * An installed Chromium or Chrome, or null.
 * @param {Readonly<Record<string, string | undefined>>} env
 * @returns {string | null}
 * @throws {Trouble} when CHROMIUM_PATH names nothing that can be run
 */
export function installedChromium(env) {
  const given = env.CHROMIUM_PATH?.trim()
  if (given) {
    if (!runs(given)) throw new Trouble(`CHROMIUM_PATH is ${given}, and there is no program to run there.`)
    return given
  }
  const endings = process.platform === 'win32' ? ['.exe'] : ['']
  const onPath = (env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => names.flatMap((name) => endings.map((ending) => join(folder, name + ending))))
  return [...onPath, ...usualPlaces].find(runs) ?? null
}

/** @param {string} path */
function runs(path) {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/**
 * A Chromium for the browser tests: one that is installed, else the test tool's own download, else Debian's package
 * when we are root.
 * @param {string} checkout
 * @returns {Promise<string>}
 * @throws {Trouble} when none can be had
 */
export async function findChromium(checkout) {
  return (
    installedChromium(process.env) ??
    (await downloadedChromium(checkout)) ??
    (await packagedChromium()) ??
    giveUp()
  )
}

/** @param {string} checkout @returns {Promise<string | null>} */
async function downloadedChromium(checkout) {
  const { chromium } = await import('playwright-core')
  const path = chromium.executablePath()
  if (existsSync(path)) return path
  const tool = join(checkout, 'node_modules/playwright-core/cli.js')
  try {
    await longStep('No Chromium here: downloading one for the browser tests', () =>
      runQuietly(process.execPath, [tool, 'install', '--no-shell', 'chromium'], {
        cwd: checkout,
        env: childEnvironment(),
        failure: 'Chromium could not be downloaded',
        timeoutMs: 300_000,
      }),
    )
  } catch (error) {
    say(firstLine(error))
  }
  return existsSync(path) ? path : null
}

/** @returns {Promise<string | null>} */
async function packagedChromium() {
  if (!isRoot() || !existsSync('/usr/bin/apt-get')) return null
  const env = childEnvironment({ DEBIAN_FRONTEND: 'noninteractive' })
  const failure = "Debian's chromium package could not be installed"
  try {
    await longStep("Installing Debian's chromium for the browser tests", async () => {
      await runQuietly('apt-get', ['update'], { cwd: '/', env, failure })
      await runQuietly('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], {
        cwd: '/',
        env,
        failure,
      })
    })
  } catch (error) {
    say(firstLine(error))
  }
  return installedChromium(process.env)
}

/** A failed way is worth a line; the next way follows. @param {unknown} error */
function firstLine(error) {
  return told(error).split('\n')[0] ?? ''
}

/** @returns {never} */
function giveUp() {
  throw new Trouble(
    'No Chromium or Chrome for the browser tests. Install one ("apt-get install chromium"), or say where it is: CHROMIUM_PATH=/path/to/chrome npm test',
  )
}
