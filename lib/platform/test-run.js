// @ts-check
import { buildApp, buildIsFresh } from './build.js'
import { checkout } from './checkout.js'
import { generateClient } from './client.js'
import { readTestFlags } from './flags.js'
import { installPackages } from './install.js'
import { Trouble, told } from './messages.js'
import { runFileOf } from './place.js'
import { lives } from './process-mark.js'
import { say } from './progress.js'
import { readRun } from './run-file.js'
import { shutdown } from './shutdown.js'
import { add, nothing, oneFailed, verdict } from './test-counts.js'
import { runChecks, runKind } from './test-kinds.js'

const stopping = shutdown({ codeWhenStopped: 130 })
/** Runs the tests, says how they went in its last line, and ends the process. @param {readonly string[]} argv */
export async function runTests(argv) {
  const counts = await attempt('set-up', () => run(argv))
  if (stopping.begun()) return
  if (counts.skipped > 0) say(`\n${counts.skipped} skipped`)
  if (counts.failures.length > 0) say(`\nFailed:\n${counts.failures.map((name) => `  ${name}`).join('\n')}`)
  const clean = counts.failed === 0 && counts.passed > 0
  await stopping.end(clean ? 0 : 1, { lastWords: `\n${verdict(counts)}` })
}

/** @param {readonly string[]} argv @returns {Promise<import('./test-counts.js').Counts>} */
async function run(argv) {
  const { kinds, whole, only } = readTestFlags(argv)
  await installPackages(checkout)
  await generateClient(checkout)
  let sum = whole ? await runChecks(checkout) : nothing
  /** @type {Record<string, string>} */
  const env = {}
  const needsServer = kinds.some((kind) => kind !== 'core' && kind !== 'reference')
  if (needsServer) env.TEST_DATABASE_URL = await startServer()
  for (const kind of kinds) {
    await stopping.calm()
    sum = add(
      sum,
      await attempt(kind, async () => {
        if (['browser', 'faults', 'bench'].includes(kind)) await ensureBuilt()
        if (kind === 'browser')
          env.CHROMIUM_PATH = await (await import('./chromium.js')).findChromium(checkout)
        return runKind(checkout, kind, only, env)
      }),
    )
  }
  return sum
}

/**
 * @param {string} what
 * @param {() => Promise<import('./test-counts.js').Counts>} work
 */
async function attempt(what, work) {
  try {
    return await work()
  } catch (error) {
    if (!stopping.begun()) say(`\n${told(error)}`)
    return oneFailed(what)
  }
}

async function startServer() {
  const { startThrowaway } = await import('./throwaway-server.js')
  const starting = startThrowaway()
  stopping.add({
    stop: async () => (await starting).stop(),
    force: () => void starting.then(({ server }) => server.force()),
  })
  return (await starting).url
}

/** Builds the screens, unless that would pull them away under a running shop. */
async function ensureBuilt() {
  const running = readRun(runFileOf(checkout))
  if (running !== null && lives(running.launcher) && !buildIsFresh(checkout)) {
    throw new Trouble(
      'The screens must be built anew for these tests, and a shop is running from this folder on the old ones. Stop it first (Ctrl-C where npm start runs).',
    )
  }
  await buildApp(checkout)
}
