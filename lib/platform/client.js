// @ts-check
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { childEnvironment, runQuietly } from './child.js'
import { sourceHash } from './source-hash.js'
import { readStamp, writeStamp } from './stamp.js'

const sources = ['prisma/schema.prisma', 'prisma/prisma.config.ts', 'package-lock.json']

/**
 * Writes the database client (lib/store/generated) anew when the schema has changed. Prisma's command line
 * wants its native schema engine before any command, and would download it; `generate` never runs it, so any
 * executable stands in for it. The variable goes to this child alone: with it Prisma's migrate commands would do
 * nothing and report success.
 * @param {string} checkout
 */
export async function generateClient(checkout) {
  const stamp = join(checkout, 'node_modules/.mouldwright/client')
  const wanted = sourceHash(checkout, sources)
  if (readStamp(stamp) === wanted && existsSync(join(checkout, 'lib/store/generated/client.ts'))) return
  const prisma = join(checkout, 'node_modules/prisma/build/index.js')
  await runQuietly(process.execPath, [prisma, 'generate', '--config', 'prisma/prisma.config.ts'], {
    cwd: checkout,
    env: childEnvironment({
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
      CHECKPOINT_DISABLE: '1',
    }),
    failure: 'The database client could not be written from prisma/schema.prisma',
  })
  writeStamp(stamp, wanted)
}
