// @ts-check
import { readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { childEnvironment, runQuietly, runShown } from './child.js'
import { told } from './messages.js'
import { longStep, say } from './progress.js'
import { add, countsOf, oneFailed, onePassed } from './test-counts.js'

/** @typedef {import('./test-counts.js').Counts} Counts */

/**
 * Runs one kind of test.
 * @param {string} checkout
 * @param {string} kind
 * @param {readonly string[]} only words that narrow down the files
 * @param {Readonly<Record<string, string>>} env
 * @returns {Promise<Counts>}
 */
export async function runKind(checkout, kind, only, env) {
  say(`\n== ${kind}`)
  const file = join(tmpdir(), `mouldwright-${kind}-${process.pid}.json`)
  const runner = join(checkout, 'node_modules/vitest/vitest.mjs')
  const config = ['--config', 'tests/vitest.config.ts', '--root', '.', '--project', kind]
  const reports = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const exitCode = await runShown(process.execPath, [runner, 'run', ...config, ...reports, ...only], {
    cwd: checkout,
    env: childEnvironment({ ...env, ...plain, DATABASE_URL: undefined, NODE_ENV: 'test' }),
  })
  const report = readReport(file)
  rmSync(file, { force: true })
  return countsOf(kind, report, exitCode, checkout)
}

/** Colours are for a terminal, not for a build machine's log. */
const plain = process.stdout.isTTY ? {} : { NO_COLOR: '1', FORCE_COLOR: undefined }

/** @param {string} file */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return null
  }
}

/**
 * Format and lint, then types: each counts as one.
 * @param {string} checkout
 * @returns {Promise<Counts>}
 */
export async function runChecks(checkout) {
  /** @param {string} script @param {readonly string[]} words @param {string} failure */
  const run = (script, words, failure) =>
    runQuietly(process.execPath, [join(checkout, 'node_modules', script), ...words], {
      cwd: checkout,
      env: childEnvironment({ NEXT_TELEMETRY_DISABLED: '1', DATABASE_URL: undefined }),
      failure,
    })
  say('\n== check')
  const style = await counted('format and lint (npx biome check)', () =>
    run(
      '@biomejs/biome/bin/biome',
      ['check', '--max-diagnostics=50', '.'],
      'biome has objections; "npm run format" cures most',
    ),
  )
  const types = await counted('types (npx tsc --noEmit)', async () => {
    await run('next/dist/bin/next', ['typegen'], "The routes' types could not be written")
    await run('typescript/bin/tsc', ['--noEmit'], 'The types do not fit')
  })
  return add(style, types)
}

/**
 * Does one thing and counts it: passed, or failed with its sentence shown.
 * @param {string} what
 * @param {() => Promise<unknown>} work
 * @returns {Promise<Counts>}
 */
export async function counted(what, work) {
  try {
    await longStep(`Checking ${what}`, work)
    return onePassed
  } catch (error) {
    say(told(error))
    return oneFailed(what)
  }
}
