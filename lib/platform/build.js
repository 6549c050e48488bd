// @ts-check
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { childEnvironment, runQuietly } from './child.js'
import { longStep } from './progress.js'
import { hashOf, sourceHash } from './source-hash.js'
import { readStamp, writeStamp } from './stamp.js'

/** Made from the schema, which counts itself. @param {string} path */
const immaterial = (path) => path === 'lib/store/generated'

/**
 * The hash of everything that the built screens are made of.
 * @param {string} checkout
 */
function buildHash(checkout) {
  const configs = readdirSync(checkout).filter(
    (name) => /\.(js|mjs|cjs|ts|mts|json)$/.test(name) && name !== 'next-env.d.ts' && name !== 'biome.json',
  )
  return sourceHash(checkout, ['app', 'lib', 'public', 'prisma/schema.prisma', ...configs], immaterial)
}

/** The stamp also names the build that it was given for, so that a build made by hand doesn't pass for ours. @param {string} checkout @param {string} sources */
function stampFor(checkout, sources) {
  return hashOf(`${sources} ${readStamp(join(checkout, '.next/BUILD_ID'))}`)
}

/** @param {string} checkout */
const stampPath = (checkout) => join(checkout, '.next/mouldwright-build')

/** @param {string} checkout */
export function buildIsFresh(checkout) {
  return readStamp(stampPath(checkout)) === stampFor(checkout, buildHash(checkout))
}

/**
 * Builds the screens when their sources have changed.
 * @param {string} checkout
 * @throws {import('./messages.js').Trouble} with the compiler's words
 */
export async function buildApp(checkout) {
  if (buildIsFresh(checkout)) return
  const sources = buildHash(checkout)
  await longStep('Building the screens (about a minute the first time)', () =>
    runQuietly(process.execPath, [join(checkout, 'node_modules/next/dist/bin/next'), 'build'], {
      cwd: checkout,
      env: childEnvironment({
        NODE_ENV: 'production',
        NEXT_TELEMETRY_DISABLED: '1',
        DATABASE_URL: undefined,
      }),
      failure: 'The screens could not be built',
    }),
  )
  writeStamp(stampPath(checkout), stampFor(checkout, sources))
}
